// The schemas of case files: they are up to date, and they and the engine's reader accept and refuse the same files, of both versions.
// --write rewrites engine/rules/schema/case.schema.json and case-1.schema.json from the rules.

import Ajv from 'ajv/dist/2020.js';
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import * as built from '../built.mjs';
import { caseSchema, caseSchemaOfVersion1 } from './case-schema.mjs';
import { check, end } from './tally.mjs';

const root = new URL('../../', import.meta.url);
const made = [['case', caseSchema()], ['case-1', caseSchemaOfVersion1()]].map(([name, schema]) => ({
  name,
  schema,
  file: new URL(`engine/rules/schema/${name}.schema.json`, root),
  text: JSON.stringify(schema, null, 1) + '\n',
}));
if (process.argv.includes('--write')) for (const { file, text } of made) writeFileSync(file, text);

for (const { name, file, text } of made)
  check(existsSync(file) && readFileSync(file, 'utf8') === text, `${name}.schema.json is not what the rules make: run node tests/reference/check-case-schema.mjs --write`);

const [present, older] = made.map(({ schema }) => new Ajv({ strict: false, multipleOfPrecision: 6 }).compile(schema));
/** What a file is checked by: the schema of the version it says; where it says none that is known, that of version 1, as the reader does. */
const schemaFor = (subject) => (subject?.wearline === 2 ? present : older);

// Every case of the repository, whole, and each of them changed in many small ways.
const files = [];
const collect = (folder, pick) => {
  const here = new URL(folder, root);
  if (!existsSync(here)) return;
  for (const entry of readdirSync(here, { withFileTypes: true })) {
    if (entry.isDirectory()) collect(`${folder}${entry.name}/`, pick);
    else if (entry.name.endsWith('.json') && !entry.name.endsWith('.expected.json')) {
      const found = pick(JSON.parse(readFileSync(new URL(entry.name, here), 'utf8')));
      if (found?.wearline) files.push(found);
    }
  }
};
collect('examples/', (x) => x);
collect('tests/reference/law/', (x) => x.case);
collect('tests/bench/', (x) => x);
check(files.length > 300, `only ${files.length} cases were found`);

/** A small generator of pseudo-random numbers (Lehmer, modulus 2^31-1): the same cases every time. */
let state = 20261125;
const below = (n) => {
  state = (state * 48271) % 2147483647;
  return state % n;
};
const pick = (list) => list[below(list.length)];

/** All places in a document that can be changed: [holder, key]. */
function places(value, out = []) {
  if (value && typeof value === 'object')
    for (const key of Object.keys(value)) {
      out.push([value, key]);
      places(value[key], out);
    }
  return out;
}
const values = ['', 'x', '12.50', '-1.00', '12345678901.00', '1,000.00', 'NaN', 12, 1.5, -3, 0, true, false, null, [], {}, [1], { a: 1 }, '2026', '2026-02', '2026~', '2026-06-15~', '../2026', '2026/..', '2026-13-01', 'US-WA', 'US-AZ', 'carpet', 'stains', 'tenant'];
function changed(document) {
  const copy = structuredClone(document);
  const [holder, key] = pick(places(copy));
  switch (below(4)) {
    case 0:
      holder[key] = structuredClone(pick(values));
      break;
    case 1:
      if (!Array.isArray(holder)) delete holder[key];
      break;
    case 2:
      if (!Array.isArray(holder)) {
        holder[`${key}x`] = holder[key];
        delete holder[key];
      }
      break;
    default:
      if (typeof holder[key] === 'string') holder[key] = holder[key].slice(0, -1) + pick(['', '0', '~', 'e', '9']);
  }
  return copy;
}

const cases = [...files];
for (const file of files) for (let i = 0; i < 40; i += 1) cases.push(changed(file));

const probe = spawnSync(built.probe('case'), { input: cases.map((c) => JSON.stringify(c)).join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 28 });
const answers = (probe.stdout ?? '').trimEnd().split('\n');
check(probe.status === 0 && answers.length === cases.length, `the reader answered ${answers.length} of ${cases.length} cases`);

/** Faults that say what a schema cannot. */
const beyond = new Set(['ends-before-it-begins', 'received-before-sent', 'parts-exceed-amount', 'more-damaged-than-charged', 'duplicate-id', 'bad-date', 'out-of-range']);
let accepted = 0;
let refused = 0;
let different = 0;
cases.forEach((subject, i) => {
  const faults = answers[i] === 'ok' ? [] : answers[i].trim().split(' ').map((f) => f.split('@')[0]);
  const validate = schemaFor(subject);
  const valid = validate(subject);
  // What the schema refuses, the reader refuses; what only the reader refuses must be beyond a schema.
  const same = valid ? faults.every((f) => beyond.has(f)) : faults.length > 0;
  if (valid && faults.length === 0) accepted += 1;
  if (!valid) refused += 1;
  if (!same && (different += 1) <= 10)
    console.log(`differs: schema ${valid ? 'accepts' : `refuses (${validate.errors.at(-1).instancePath} ${validate.errors.at(-1).message})`}, reader says ${answers[i]}`);
});
check(different === 0, `${different} of ${cases.length} cases are judged differently`);
check(accepted > 1000 && refused > 1000, `too few of a sort: ${accepted} accepted, ${refused} refused`);
console.log(`${cases.length} cases: ${accepted} accepted and ${refused} refused by both`);
end();
