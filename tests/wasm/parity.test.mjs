// The page's module and the program give the same bytes for every case in this repository.
import assert from 'node:assert/strict';
import { before, describe, test } from 'node:test';
import { allCases, fullModule, native } from './engines.mjs';

let engine;
before(async () => { engine = await fullModule(); });

describe('the page and the program agree', () => {
  const cases = allCases();
  test('there are cases to compare', () => assert.ok(cases.length >= 5, `${cases.length} cases`));
  for (const { name, text, today } of cases) {
    test(name, () => {
      const program = native(text, today);
      assert.equal(engine.assess(text, today), program.text);
      assert.deepEqual(JSON.parse(program.text).errors, [], 'a case of this repository is read without errors');
      assert.equal(program.status, 0);
    });
  }
});

test('the same version', () => {
  assert.equal(JSON.parse(native('{"wearline":1,"lines":[]}', '2026-09-01').text).engine, engine.version());
});
