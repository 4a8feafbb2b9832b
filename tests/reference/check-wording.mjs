// Wording: every language has the same sentences, the code and the files name the same keys, and English stays short.
//   node tests/reference/check-wording.mjs     one line a check, 'N passed, N failed', exit code 1 on failure
import { readCatalogue, readJson, RULES } from './wordcheck/catalogue.mjs';
import { placeholders, sentences, words } from './wordcheck/sentences.mjs';
import { compareWithCode, readCode } from './wordcheck/used-keys.mjs';
import path from 'node:path';

const LONGEST = 25; // words in an English sentence; the owner's limit
const SHOWN = 15;

const difference = (a, b) => a.filter((x) => !b.includes(x));

export function sameKeys(catalogue) {
  const problems = [];
  for (const [language, files] of Object.entries(catalogue))
    for (const [file, sentencesOf] of Object.entries(catalogue.en)) {
      const keys = Object.keys(files[file] ?? {});
      for (const key of difference(Object.keys(sentencesOf), keys)) problems.push(`${language}/${file} has no ${key}`);
      for (const key of difference(keys, Object.keys(sentencesOf))) problems.push(`${language}/${file} has ${key}, English has not`);
    }
  for (const [language, files] of Object.entries(catalogue))
    for (const file of difference(Object.keys(files), Object.keys(catalogue.en))) problems.push(`${language}/${file} has no English file`);
  return problems;
}

export function samePlaceholders(catalogue) {
  return Object.entries(catalogue).flatMap(([language, files]) => Object.entries(files).flatMap(([file, all]) =>
    Object.entries(all).filter(([key, said]) => String([...new Set(placeholders(said))]) !== String([...new Set(placeholders(catalogue.en[file]?.[key] ?? said))]))
      .map(([key]) => `${language}/${file} ${key}: its placeholders are not those of the English sentence`)));
}

/** A sentence is never empty, has no stray space, and no language stands in for another. */
export function soundSentences(catalogue) {
  const same = (file, key, said) => said === catalogue.en[file]?.[key] && words(said.replace(/\{\w+\}/g, '')).filter((w) => /\p{L}{4}/u.test(w)).length > 1;
  return Object.entries(catalogue).flatMap(([language, files]) => Object.entries(files).flatMap(([file, all]) => Object.entries(all).flatMap(([key, said]) => [
    ...(typeof said === 'string' && said.trim() === said && said !== '' && !said.includes('  ') ? [] : [`${language}/${file} ${key}: "${said}"`]),
    ...(language !== 'en' && same(file, key, said) ? [`${language}/${file} ${key} is still English`] : []),
  ])));
}

const inEnglish = (said) => (typeof said === 'string' ? said : said?.en ?? '');

/** The English of the catalogue and of the registries of facts, duties and papers. */
function englishTexts(catalogue) {
  const out = Object.entries(catalogue.en).flatMap(([file, all]) => Object.entries(all).map(([key, said]) => [`${file} ${key}`, said]));
  for (const file of ['facts.json', 'duties.json', 'papers.json'])
    for (const list of Object.values(readJson(path.join(RULES, file))).filter(Array.isArray))
      for (const entry of list) out.push([`${file} ${entry.id}`, inEnglish(entry.question ?? entry.label)]);
  return out;
}

export const longSentences = (texts) => texts.flatMap(([where, said]) =>
  sentences(said).filter((s) => words(s).length > LONGEST).map((s) => `${where}: ${words(s).length} words: ${s}`));

function main() {
  const catalogue = readCatalogue();
  const keys = Object.values(catalogue.en).flatMap(Object.keys);
  const { missing, unused } = compareWithCode(keys, readCode());
  const checks = [
    ['every language has the same keys', sameKeys(catalogue)],
    ['a sentence has the same placeholders in every language', samePlaceholders(catalogue)],
    ['sentences are whole and in their own language', soundSentences(catalogue)],
    ['no key is asked for that no file holds', missing],
    ['no file holds a key that nobody asks for', unused],
    [`no English sentence has more than ${LONGEST} words`, longSentences(englishTexts(catalogue))],
  ];
  for (const [name, problems] of checks) {
    console.log(`${problems.length ? 'FAIL' : 'ok  '} ${name}`);
    for (const p of problems.slice(0, SHOWN)) console.log(`     ${p}`);
    if (problems.length > SHOWN) console.log(`     and ${problems.length - SHOWN} more`);
  }
  const failed = checks.filter(([, problems]) => problems.length).length;
  console.log(`${keys.length} sentences in ${Object.keys(catalogue).length} languages`);
  console.log(`${checks.length - failed} passed, ${failed} failed`);
  return failed ? 1 : 0;
}

if (process.argv[1]?.endsWith('check-wording.mjs')) process.exitCode = main();
