// The page's words are plain enough to read when upset. That they are whole in every language: tests/reference/check-wording.mjs.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { readingEase, wordsOf } from '../reference/reading-ease.mjs';
import { ROOT } from './harness.mjs';

const words = (language) => {
  const folder = path.join(ROOT, 'engine/rules/wording', language);
  const files = fs.readdirSync(folder).filter((f) => /^page(-\w+)?\.json$/.test(f));
  return Object.assign({}, ...files.map((f) => JSON.parse(fs.readFileSync(path.join(folder, f), 'utf8'))));
};
const [english, spanish] = [words('en'), words('es')];
const shown = (catalogue) =>
  Object.entries(catalogue)
    .filter(([key]) => !key.startsWith('page.date.words'))
    .flatMap(([, s]) => s.replace(/\{\w+\}/g, 'x').split(/(?<=[.?!:])\s+/))
    .filter((s) => wordsOf(s).length > 2);

test('the English reads at grade 8 or below, no sentence over 25 words', () => {
  const sentences = shown(english);
  assert.deepEqual(sentences.filter((s) => wordsOf(s).length > 25), []);
  const { grade, average } = readingEase(sentences, 'en');
  assert.ok(grade <= 8, `grade ${grade}`);
  assert.ok(average <= 15, `${average} words a sentence`);
});

test('the Spanish reads as easily', () => {
  const { ease, average } = readingEase(shown(spanish), 'es');
  assert.ok(ease >= 65, `ease ${ease}`);
  assert.ok(average <= 15, `${average} words a sentence`);
});
