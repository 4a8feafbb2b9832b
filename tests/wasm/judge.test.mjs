// The module of the first load and the program give the same bytes for every case without words; where a charge has words,
// the judge leaves open what they say, and the page brings in the whole engine (tests/browser/first-load.test.mjs).
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { allCases, bundle, freshModule, fullModule, judgeModule, nativeAll, rulesIndex } from './engines.mjs';

/** The case without the words of its charges, which only the whole engine reads (site/src/engine/judge.ts). */
function wordless(text) {
  const subject = JSON.parse(text);
  for (const line of subject.lines ?? []) delete line.text;
  return JSON.stringify(subject);
}

const [judge, whole] = [await judgeModule(), await fullModule()];

describe('the judge and the program agree where no words are left to read', () => {
  const cases = allCases().map((one) => ({ ...one, text: wordless(one.text) }));
  test('there are cases to compare', () => assert.ok(cases.length >= 50, `${cases.length} cases`));
  const answers = nativeAll(cases);
  for (const [i, { name, text, today }] of cases.entries())
    test(name, () => {
      const answer = judge.assess(text, today);
      assert.equal(answer, answers[i]);
      assert.deepEqual(JSON.parse(answer).errors, []);
    });
});

test('what there is to choose from is the same in both modules', () => {
  for (const language of ['en', 'es']) assert.equal(judge.catalogue(language), whole.catalogue(language));
  assert.equal(judge.version(), whole.version());
});

test('a charge that names no thing stays open with the judge, and is named by the whole engine', () => {
  const text = JSON.stringify({ wearline: 1, lines: [{ id: '1', text: 'Replace bedroom carpet', amount: '900.00' }] });
  assert.equal(JSON.parse(judge.assess(text, '2026-09-01')).lines[0].element, null);
  assert.equal(JSON.parse(whole.assess(text, '2026-09-01')).lines[0].element, 'carpet');
});

test('the judge refuses the words for reading instead of leaving them unread', async () => {
  const fresh = await freshModule('judge');
  const { errors } = JSON.parse(fresh.load(bundle(rulesIndex().reading)));
  assert.ok(errors.some(({ code }) => code === 'unknown-file'), JSON.stringify(errors.slice(0, 3)));
});
