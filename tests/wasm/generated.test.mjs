// The module and the program agree on generated cases, letters and statements; the long form is tests/run differential.
import assert from 'node:assert/strict';
import { before, describe, test } from 'node:test';
import { compare } from './differential.mjs';
import { generator } from './generated.mjs';

const CASES = 500;

describe('on 500 generated cases, a letter of each, and 500 statements', () => {
  let result;
  before(async () => { result = await compare(CASES, 20261130); });
  test('every answer is the same, byte for byte', () => {
    assert.equal(result.asked, 3 * CASES);
    assert.deepEqual(result.different.slice(0, 3), []);
  });
  test('most are answered, not refused', () => assert.ok(result.answered > 0.85 * result.asked, `${result.answered} of ${result.asked}`));
});

test('a seed gives the same questions every time, another one others', () => {
  const first = generator(7)();
  assert.deepEqual(generator(7)(), first);
  assert.notDeepEqual(generator(8)(), first);
});
