// A day typed as numbers alone that could be read the other way round.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { otherDay } = await source('case/typed-date.ts');

test('only two numbers that may both be months leave a second reading', () => {
  assert.equal(otherDay('5/10/2026', '2026-05-10'), '2026-10-05');
  assert.equal(otherDay('5.10.26', '2026-05-10'), '2026-10-05');
  for (const [typed, day] of [['31/7/2026', '2026-07-31'], ['7/31/2026', '2026-07-31'], ['5/5/2026', '2026-05-05'], ['10 de mayo de 2026', '2026-05-10'], ['5/10/2026', '5/10/2026']])
    assert.equal(otherDay(typed, day), undefined, typed);
});
