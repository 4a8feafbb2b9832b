// How easy the letters are to read: every kind of letter for every example and worked case, in English and Spanish.
//
// English: grade of Flesch and Kincaid (npm flesch-kincaid, syllables by npm syllable), at most 8; no sentence over 25 words; on average at
// most 15 words. Spanish: reading ease after Fernández Huerta (1959), 206.84 - 60 x syllables a word - 1.02 x words a sentence, whose
// table puts 70 to 80 at the seventh school year and 60 to 70 at the eighth and ninth (formula and table from memory): at least 65.
// Left out of the count, as nobody here can choose them: citations, fixed words of statutes, tables, addresses.
// --worst prints the hardest letters and the longest sentences.

import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import * as built from '../built.mjs';
import { readingEase, wordsOf } from './reading-ease.mjs';
import { caseInVersion2 } from './version-1.mjs';

const root = new URL('../../', import.meta.url);
const most = { grade: 8, longest: 25, average: 15 };
const leastEase = 65;
const showWorst = process.argv.includes('--worst');

const filesUnder = (folder) => readdirSync(new URL(folder, root), { withFileTypes: true })
  .flatMap((entry) => (entry.isDirectory() ? filesUnder(`${folder}${entry.name}/`) : [`${folder}${entry.name}`]))
  .filter((name) => name.endsWith('.json') && !name.endsWith('.expected.json'));
const read = (name) => JSON.parse(readFileSync(new URL(name, root), 'utf8'));

const cases = [
  ...filesUnder('examples/').map((name) => ({ name, case: read(name), today: '2026-11-25' })),
  ...filesUnder('tests/reference/law/').map((name) => ({ name, ...read(name) })),
].filter((one) => one.case?.wearline).map((one) => ({ ...one, case: JSON.parse(caseInVersion2(JSON.stringify(one.case))) }));

const kinds = ['question-charges', 'request-documents', 'after-deadline', 'reply-to-demand', 'accept-and-claim-rest', 'second-letter', 'objection',
  'forwarding-address', 'demand', 'inspection-request', 'itemized-statement', 'late-statement', 'cover-note', 'adviser-note', 'small-claims-sheet'];

// Every kind for the examples; for a worked case, which is about one rule, the kinds that fit and three that lean on the law.
const questions = [];
for (const one of cases)
  for (const kind of one.name.startsWith('examples/') ? kinds : [undefined, 'question-charges', 'after-deadline', 'small-claims-sheet', 'itemized-statement'])
    for (const language of ['en', 'es'])
      questions.push({ name: one.name, case: one.case, today: one.today, options: { language, ...(kind ? { kind } : {}) } });

const run = spawnSync(built.probe('letter'), { input: questions.map(({ name, ...q }) => JSON.stringify(q)).join('\n') + '\n', maxBuffer: 2 ** 31 - 1 });
if (run.status !== 0) throw new Error(`the probe ended with ${run.status}: ${run.stderr}`);
const answers = run.stdout.toString().trimEnd().split('\n').map((line) => JSON.parse(line));

/** A paragraph's text without its citations, the longest first, as one may begin like another. */
function withoutCites({ text, citations }) {
  let out = text;
  for (const cite of [...new Set(citations)].sort((a, b) => b.length - a.length)) out = out.replaceAll(cite, '§');
  return out.replace(/\((?:As I read|As we read|Así leo|Así leemos)? ?§(?:; §)*\.\)/g, ' ');
}

/** The words of a letter that are ours, as sentences. */
function sentencesOf(paragraphs) {
  const texts = paragraphs.filter((p) => p.included && !['address', 'date', 'table'].includes(p.role) && !p.id.startsWith('fixed-'))
    .flatMap((p) => [p, ...p.rows.map((row) => ({ text: row[0], citations: [] }))]).map(withoutCites);
  return texts.flatMap((text) => text
    .split(/\n+|(?<=[.?!])\s+(?=\S)|(?<=:)\s+(?=[A-ZÁÉÍÓÚÑ¿])/)
    .map((s) => s.trim()).filter((s) => /\p{L}/u.test(s)));
}

function measure(paragraphs, language) {
  const sentences = sentencesOf(paragraphs);
  const long = sentences.filter((sentence) => wordsOf(sentence).length > most.longest);
  return { ...readingEase(sentences, language), long };
}

const results = [];
answers.forEach((answer, i) => {
  const { name, options } = questions[i];
  if (answer.errors.length) throw new Error(`${name}: ${answer.errors[0].text}`);
  for (const letter of [answer, answer.readingCopy].filter(Boolean)) {
    if (letter.language !== options.language) continue; // the English of a Spanish reader was measured already
    if (letter.paragraphs.length === 0) continue; // none was needed
    results.push({ name, kind: answer.kind, language: letter.language, ...measure(letter.paragraphs, letter.language) });
  }
});

let passed = 0;
const faults = new Map();
const fault = (what, where) => faults.set(what, [...(faults.get(what) ?? []), where]);
for (const r of results) {
  const where = `${r.name} ${r.kind} ${r.language}`;
  const before = faults.size;
  for (const sentence of r.language === 'en' ? r.long : []) fault(`over ${most.longest} words: ${sentence}`, where);
  if (r.average > most.average) fault(`${r.average.toFixed(1)} words a sentence in ${where}`, where);
  if (r.language === 'en' && r.grade > most.grade) fault(`grade ${r.grade.toFixed(1)} in ${where}`, where);
  if (r.language === 'es' && r.ease < leastEase) fault(`ease ${r.ease.toFixed(1)} in ${where}`, where);
  if (faults.size === before) passed += 1;
}
const of = (language, member) => results.filter((r) => r.language === language).map((r) => r[member]);
const mean = (numbers) => (numbers.reduce((a, b) => a + b, 0) / numbers.length).toFixed(1);
for (const language of ['en', 'es'])
  console.log(`${language}: ${of(language, 'grade').length} letters; words a sentence ${mean(of(language, 'average'))} on average, ${Math.max(...of(language, 'average')).toFixed(1)} at most; ` +
    (language === 'en' ? `grade ${mean(of('en', 'grade'))} on average, ${Math.max(...of('en', 'grade')).toFixed(1)} at most` : `ease ${mean(of('es', 'ease'))} on average, ${Math.min(...of('es', 'ease')).toFixed(1)} at least`));
if (showWorst)
  for (const r of [...results].sort((a, b) => b.grade - a.grade).filter((x) => x.language === 'en').slice(0, 10)) console.log(`grade ${r.grade.toFixed(1)} ${r.name} ${r.kind}`);
for (const [what, where] of faults) console.log(`failed: ${what} (${where.length} times, first in ${where[0]})`);
console.log(`${passed} passed, ${faults.size} failed`);
process.exit(faults.size ? 1 : 0);
