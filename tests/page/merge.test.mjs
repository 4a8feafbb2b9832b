// Two windows with the same cases: every order of changing, closing and adding, and no work is lost.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { merge } = await source('case/merge.ts');
const v = (text) => text.split(' ').filter(Boolean).map((t) => ({ id: t[0], version: t.slice(1) }));
const shown = (taken) => taken.map((t) => (t.take === 'mine' ? `m:${t.mine.id}${t.mine.version}` : `${t.take === 'apart' ? 'a' : 't'}:${t.theirs.id}${t.theirs.version}`)).join(' ');
const merged = (agreed, mine, theirs) => shown(merge(new Map(v(agreed).map((x) => [x.id, x.version])), v(mine), v(theirs)));

test('what one side changed is taken, whichever side it is', () => {
  assert.equal(merged('a1 b1', 'a1 b1', 'a2 b1'), 't:a2 m:b1');
  assert.equal(merged('a1 b1', 'a1 b2', 'a1 b1'), 'm:a1 m:b2');
});
test('what both changed is there twice', () => assert.equal(merged('a1', 'a2', 'a3'), 'm:a2 a:a3'));
test('what both changed alike is there once', () => assert.equal(merged('a1', 'a2', 'a2'), 'm:a2'));
test('what one side closed goes, unless the other changed it', () => {
  assert.equal(merged('a1 b1', 'a1 b1', 'a1'), 'm:a1');
  assert.equal(merged('a1 b1', 'a1 b2', 'a1'), 'm:a1 m:b2');
  assert.equal(merged('a1 b1', 'a1', 'a1 b1'), 'm:a1');
  assert.equal(merged('a1 b1', 'a1', 'a1 b2'), 'm:a1 t:b2');
});
test('what is new on either side is added', () => assert.equal(merged('a1', 'a1 c1', 'a1 b1'), 'm:a1 m:c1 t:b1'));
