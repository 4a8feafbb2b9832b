// Which questions are shown, and in which order, while a person answers them.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { goOn } = await source('case/questions.ts');
const q = (asks) => ({ asks, id: null, code: asks, text: asks, effect: '1.00', line: null });
const names = (shown) => shown.map((a) => (a.answered ? `(${a.question.asks})` : a.question.asks));
const never = () => false;

test('nothing answered: the order of the engine, so many and no more', () => {
  assert.deepEqual(names(goOn([], ['a', 'b', 'c'].map(q), 2, never, false)), ['a', 'b']);
  const before = goOn([], ['a', 'b'].map(q), 5, never, false);
  assert.deepEqual(names(goOn(before, ['b', 'a'].map(q), 5, never, false)), ['b', 'a']);
});

test('an answered one stays in its place, and one more open one comes in at the end', () => {
  const before = goOn([], ['a', 'b', 'c'].map(q), 2, never, false);
  const after = goOn(before, ['c', 'b'].map(q), 2, (x) => x.asks === 'a', false);
  assert.deepEqual(names(after), ['(a)', 'b', 'c']);
  assert.deepEqual(names(goOn(after, ['c', 'b', 'a'].map(q), 2, never, true)), ['a', 'b', 'c'], 'taken back');
});

test('one that is neither asked nor answered any more goes', () => {
  const before = goOn([], ['a', 'b'].map(q), 5, never, false);
  assert.deepEqual(names(goOn(before, ['b'].map(q), 5, never, true)), ['b']);
});

test('while somebody is at them the order holds', () => {
  const before = goOn([], ['a', 'b'].map(q), 5, never, false);
  assert.deepEqual(names(goOn(before, ['c', 'b', 'a'].map(q), 5, never, true)), ['a', 'b', 'c']);
});
