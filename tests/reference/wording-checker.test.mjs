// Proof that the checks of wording and translation can fail: one fault put into a copy, and the words they must answer with.
import assert from 'node:assert/strict';
import test from 'node:test';
import { readCatalogue } from './wordcheck/catalogue.mjs';
import { longSentences, samePlaceholders, sameKeys, soundSentences } from './check-wording.mjs';
import { figures, sentences, words } from './wordcheck/sentences.mjs';
import { compareWithCode, readCode } from './wordcheck/used-keys.mjs';

const copy = () => structuredClone(readCatalogue());
const keysOf = (catalogue) => Object.values(catalogue.en).flatMap(Object.keys);

test('a key that one language lacks is named', () => {
  const catalogue = copy();
  delete catalogue.es['law.json']['law.cap'];
  assert.deepEqual(sameKeys(catalogue), ['es/law.json has no law.cap']);
});

test('a placeholder that a translation lost is named', () => {
  const catalogue = copy();
  catalogue.es['law.json']['law.cap'] = 'El depósito fue de {taken}.';
  assert.equal(samePlaceholders(catalogue).length, 1);
});

test('English left in Spanish is named', () => {
  const catalogue = copy();
  catalogue.es['law.json']['law.count.skipped'] = catalogue.en['law.json']['law.count.skipped'];
  assert.match(soundSentences(catalogue)[0], /still English/);
});

test('a key nobody asks for and a key nobody holds are named', () => {
  const code = readCode();
  const keys = keysOf(copy());
  assert.deepEqual(compareWithCode([...keys, 'law.award.spare', 'page.notice.spare'], code).unused, ['law.award.spare', 'page.notice.spare']);
  const asked = { ...code, engine: `${code.engine}\nspeech.say("law.award.ghost");` };
  assert.deepEqual(compareWithCode(keys, asked).missing, ['law.award.ghost']);
  assert.deepEqual(compareWithCode(keys.filter((k) => k !== 'event.tenant-demand'), code).missing, ['event.tenant-demand']);
});

test('a sentence of more than 25 words is named, and ends are found', () => {
  const long = Array.from({ length: 26 }, (_, i) => `word${i}`).join(' ');
  assert.equal(longSentences([['here', `${long}. Short one.`]]).length, 1);
  assert.equal(longSentences([['here', `${long.replace(' word12', '. Word12')}.`]]).length, 0);
  assert.deepEqual(sentences('Fue hace 2.5 años. ¿Cuándo? "Sí." Bien.'), ['Fue hace 2.5 años.', '¿Cuándo?', '"Sí."', 'Bien.']);
  assert.equal(words('It cost $1,200.50 on {day}, or less.').length, 7);
});

test('figures are read as numbers', () => assert.deepEqual(figures('$2,500.00 or 1/2, by 2025'), ['1', '2', '2025', '2500']));
