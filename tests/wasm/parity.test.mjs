// The page's module and the program give the same bytes for every case in this repository.
import assert from 'node:assert/strict';
import { before, describe, test } from 'node:test';
import { allCases, fullModule, native, nativeAll } from './engines.mjs';

let engine;
before(async () => { engine = await fullModule(); });

describe('the page and the program agree', () => {
  const cases = allCases();
  const answers = nativeAll(cases);
  test('there are cases to compare', () => assert.ok(cases.length >= 5, `${cases.length} cases`));
  for (const [i, { name, text, today }] of cases.entries())
    test(name, () => {
      assert.equal(engine.assess(text, today), answers[i]);
      assert.deepEqual(JSON.parse(answers[i]).errors, [], 'a case of this repository is read without errors');
    });
});

test('the same version', () => {
  assert.equal(JSON.parse(native('{"wearline":1,"lines":[]}', '2026-09-01').text).engine, engine.version());
});
