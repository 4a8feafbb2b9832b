// The page's words: the same sentences in every language, none missing, none idle, plain enough to read when upset.
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
const placeholders = (s) => (s.match(/\{\w+\}/g) ?? []).sort();

const sourceFiles = (folder) =>
  fs.readdirSync(folder, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? (e.name === 'generated' ? [] : sourceFiles(path.join(folder, e.name))) : /\.(ts|html)$/.test(e.name) ? [path.join(folder, e.name)] : [],
  );
const code = [...sourceFiles(path.join(ROOT, 'site/src')), path.join(ROOT, 'site/index.html')].map((f) => fs.readFileSync(f, 'utf8')).join('\n');

test('both languages hold the same sentences with the same gaps', () => {
  assert.deepEqual(Object.keys(spanish).sort(), Object.keys(english).sort());
  for (const [key, sentence] of Object.entries(english)) assert.deepEqual(placeholders(spanish[key]), placeholders(sentence), key);
});

test('every sentence the code asks for is there', () => {
  const asked = [...code.matchAll(/(?:say|canSay)\(\s*'(page\.[\w.-]+)'/g), ...code.matchAll(/%(page\.[\w.]+)%/g)].map((m) => m[1]);
  assert.ok(asked.length > 100);
  assert.deepEqual(asked.filter((key) => !(key in english)), []);
});

test('no sentence lies idle', () => {
  const literal = new Set([...code.matchAll(/['"`%](page\.[\w.-]+)['"`%]/g)].map((m) => m[1]));
  // Keys put together from parts: `page.days.who.${...}`; every literal part must be found in the key, in order.
  const patterns = [...code.matchAll(/`(page\.[^`]*\$\{[^`]*)`/g)].map(
    (m) => new RegExp(`^${m[1].replace(/\$\{(?:[^{}]|\{[^}]*\})*\}/g, '\u0000').replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\u0000/g, '.+')}$`),
  );
  const narrow = patterns.filter((p) => !/^\^page\\?\.\.\+/.test(p.source));
  const listed = (key) => /^page\.(how|kind|depositKind|tenancyKind|nature|remedy|severity)\./.test(key) || /^page\.field\./.test(key);
  const idle = Object.keys(english).filter((key) => !literal.has(key) && !listed(key) && !narrow.some((p) => p.test(key)));
  assert.deepEqual(idle, []);
});

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
