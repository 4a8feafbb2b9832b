// The published schemas of answers (engine/rules/schema): every answer of the engine over all cases and statements of the tree fits the one
// of its kind, which names every member there is, and the page's types are made from them.
//
//   node tests/reference/check-schemas.mjs           'N passed, N failed', exit code 1 on failure
//   node tests/reference/check-schemas.mjs --write   writes site/src/case/answers.ts anew

import Ajv from 'ajv/dist/2020.js';
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import * as built from '../built.mjs';
import { answerTypes } from './answer-types.mjs';
import { caseInVersion2 } from './version-1.mjs';
import { check, end } from './tally.mjs';

const root = new URL('../../', import.meta.url);
const schema = (name) => JSON.parse(readFileSync(new URL(`engine/rules/schema/${name}.schema.json`, root), 'utf8'));

// --- the page's types
const types = new URL('site/src/case/answers.ts', root);
const made = await answerTypes();
if (process.argv.includes('--write')) writeFileSync(types, made);
check(existsSync(types) && readFileSync(types, 'utf8') === made, 'site/src/case/answers.ts is not what the schemas make: run node tests/reference/check-schemas.mjs --write');

// --- the schemas themselves: nothing in them is left open or untold
const kinds = ['assessment', 'letter', 'reading', 'recognition', 'catalogue'];
const all = { common: schema('common'), ...Object.fromEntries(kinds.map((k) => [k, schema(k)])) };
function look(at, value) {
  if (Array.isArray(value)) return value.forEach((v, i) => look(`${at}/${i}`, v));
  if (typeof value !== 'object' || value === null) return undefined;
  if (value.type === 'object') check('additionalProperties' in value, `${at} takes any member`);
  for (const [member, inner] of Object.entries(value.properties ?? {})) {
    const told = inner.description ?? inner.$ref ?? inner.enum ?? inner.items?.$ref;
    check(told, `${at}/${member} says nothing of itself`);
  }
  return Object.entries(value).forEach(([key, v]) => ['if', 'then', 'else'].includes(key) || look(`${at}/${key}`, v));
}
for (const [name, document] of Object.entries(all)) look(name, document);

// --- the answers
const ajv = new Ajv({ strict: true, allErrors: false, strictRequired: false, strictTypes: false });
ajv.addSchema(all.common);
const fits = Object.fromEntries(kinds.map((k) => [k, ajv.compile(all[k])]));

function filesUnder(folder, endings) {
  const here = new URL(folder, root);
  if (!existsSync(here)) return [];
  return readdirSync(here, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(`${folder}${entry.name}/`, endings) : endings.some((e) => entry.name.endsWith(e)) ? [new URL(entry.name, here)] : []);
}
const cases = [];
const collect = (value) => {
  if (Array.isArray(value)) return value.forEach(collect);
  if (typeof value !== 'object' || value === null) return undefined;
  if ('wearline' in value && Array.isArray(value.lines)) return cases.push(value);
  return Object.values(value).forEach(collect);
};
for (const folder of ['examples/', 'tests/reference/law/', 'tests/reference/letters/', 'tests/reference/decided-dates/', 'tests/reference/version-1/', 'tests/bench/'])
  for (const file of filesUnder(folder, ['.json'])) if (!file.pathname.endsWith('.expected.json')) collect(JSON.parse(readFileSync(file, 'utf8')));
const texts = ['tests/reference/reading/', 'tests/reference/corpus/', 'tests/reference/corpus2/', 'tests/reference/corpus3/', 'examples/'].flatMap((folder) => filesUnder(folder, ['.txt', '.csv']));

const calls = [];
const ask = (kind, call) => calls.push({ kind, call: { ...call, format: 2 } });
const day = '2026-11-25';
cases.forEach((given, i) => {
  const subject = given.wearline === 1 ? JSON.parse(caseInVersion2(JSON.stringify(given))) : given;
  ask('assessment', { text: JSON.stringify({ ...subject, showMethods: i % 3 === 0 }), today: day });
  ask('letter', { text: JSON.stringify(subject), today: day, options: JSON.stringify({ language: i % 2 ? 'en' : 'es' }) });
});
for (const kind of ['question-charges', 'request-documents', 'after-deadline', 'reply-to-demand', 'accept-and-claim-rest', 'second-letter', 'objection', 'forwarding-address', 'demand', 'inspection-request', 'itemized-statement', 'late-statement', 'cover-note', 'adviser-note', 'small-claims-sheet'])
  for (const file of filesUnder('examples/', ['.json']))
    if (!file.pathname.endsWith('.expected.json')) ask('letter', { text: readFileSync(file, 'utf8'), today: day, options: JSON.stringify({ kind, language: 'es' }) });
for (const file of texts) ask('reading', { text: readFileSync(file, 'utf8'), language: 'en' });
const words = new Set(cases.flatMap((c) => c.lines.map((l) => l.text ?? '')));
for (const file of texts) for (const line of readFileSync(file, 'utf8').split('\n').slice(0, 12)) words.add(line.trim());
for (const line of words) ask('recognition', { text: line, recognize: true });
for (const language of ['en', 'es']) ask('catalogue', { catalogue: language });
for (const text of ['{', '{"wearline":2,"lines":[{"amont":"1"}]}', '{"wearline":3,"lines":[]}']) ask('assessment', { text, today: day });
ask('assessment', { text: '{"wearline":2,"lines":[]}', today: 'yesterday' });
ask('letter', { text: '{"wearline":2,"lines":[]}', today: day, options: '{"kind":"poem"}' });

const probe = spawnSync(built.probe('ask'), [], { input: calls.map(({ call }) => JSON.stringify(call)).join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 30 });
const answers = (probe.stdout ?? '').trimEnd().split('\n');
check(probe.status === 0 && answers.length === calls.length, `${answers.length} answers to ${calls.length} calls`);
const counted = Object.fromEntries(kinds.map((k) => [k, 0]));
let unfit = 0;
answers.forEach((text, i) => {
  const { kind, call } = calls[i];
  counted[kind] += 1;
  const validate = fits[kind];
  if (validate(JSON.parse(text))) return;
  unfit += 1;
  const { instancePath, message, params } = validate.errors.at(0);
  if (unfit <= 12) console.log(`${kind} ${instancePath} ${message} ${JSON.stringify(params)}: ${JSON.stringify(call).slice(0, 120)}`);
});
check(unfit === 0, `${unfit} answers fit no schema`);
for (const [kind, count] of Object.entries(counted)) check(count > (kind === 'catalogue' ? 1 : 100), `only ${count} answers of the kind ${kind}`);
console.log(Object.entries(counted).map(([kind, count]) => `${kind} ${count}`).join(', '));
end();
