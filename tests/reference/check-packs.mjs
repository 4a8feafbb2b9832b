// Checks every law pack and its case files: JSON Schema 2020-12, then the cross checks a schema cannot say.
//   node tests/reference/check-packs.mjs [US-WA ...]      one line a pack, exit code 1 on failure
//   node tests/reference/check-packs.mjs --coverage       table of topics by jurisdiction
//   node tests/reference/check-packs.mjs --write-coverage the same, into engine/rules/law/README.md
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv2020 from 'ajv/dist/2020.js';
import { checkReferences } from './packcheck/references.mjs';
import { checkVariants } from './packcheck/variants.mjs';
import { checkCase, LEAST_CASES } from './packcheck/cases.mjs';
import { coverageTable, replaceBetweenMarkers } from './packcheck/coverage.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const RULES = path.join(HERE, '../../engine/rules');
const CASES = path.join(HERE, 'law');

const readJson = (file) => JSON.parse(fs.readFileSync(file, 'utf8'));
const jsonFiles = (dir) => (fs.existsSync(dir) ? fs.readdirSync(dir).filter((f) => f.endsWith('.json')).sort() : []);
const byId = (list) => new Map(list.map((x) => [x.id, x]));

// States at move-in that a line may have.
function statesAtMoveIn() {
  return new Set(jsonFiles(path.join(RULES, 'wear')).flatMap((f) => readJson(path.join(RULES, 'wear', f)).atMoveIn ?? []).map((s) => s.id));
}

// The wear catalogue: element -> findings; null until there is one.
function catalogue() {
  const found = new Map();
  for (const file of jsonFiles(path.join(RULES, 'wear'))) for (const e of readJson(path.join(RULES, 'wear', file)).elements ?? [])
    found.set(e.element ?? e.id, new Set((e.findings ?? []).map((f) => f.finding ?? f.id)));
  return found.size ? found : null;
}

function sharedWorld() {
  const { facts, events } = readJson(path.join(RULES, 'facts.json'));
  const holidays = jsonFiles(path.join(RULES, 'holidays')).map((f) => f.replace(/\.json$/, ''));
  return {
    facts: byId(facts), events: byId(events), duties: byId(readJson(path.join(RULES, 'duties.json')).duties),
    papers: byId(readJson(path.join(RULES, 'papers.json')).papers), catalogue: catalogue(), atMoveIn: statesAtMoveIn(), holidays: holidays.length ? new Set(holidays) : null
  };
}

function withOwn(world, pack, problem) {
  for (const f of pack.facts ?? []) if (world.facts.has(f.id)) problem(`fact ${f.id} is a shared one already`);
  for (const e of pack.events ?? []) if (world.events.has(e.id)) problem(`event ${e.id} is a shared one already`);
  return { ...world, facts: new Map([...world.facts, ...byId(pack.facts ?? [])]), events: new Map([...world.events, ...byId(pack.events ?? [])]) };
}

function schemaProblems(validate, pack) {
  if (validate(pack)) return [];
  const deep = validate.errors.filter((e) => e.keyword !== 'oneOf' && e.keyword !== 'if');
  return (deep.length ? deep : validate.errors).map((e) => `${e.instancePath || '/'} ${e.message}${e.params.additionalProperty ?? e.params.unevaluatedProperty ? `: ${e.params.additionalProperty ?? e.params.unevaluatedProperty}` : ''}`);
}

function casesOf(jurisdiction, pack, world, problem) {
  const dir = path.join(CASES, jurisdiction);
  const files = jsonFiles(dir);
  for (const name of files) {
    const here = (text) => problem(`case ${name}: ${text}`);
    try { checkCase(readJson(path.join(dir, name)), pack, world, here); } catch (e) { here(e.message); }
  }
  if (files.length < LEAST_CASES) problem(`${files.length} case files, at least ${LEAST_CASES} are needed`);
  return files.length;
}

function checkPack(file, validate, shared) {
  const problems = [];
  const problem = (text) => problems.push(text);
  const jurisdiction = file.replace(/\.json$/, '');
  let pack = null;
  let cases = 0;
  try {
    pack = readJson(path.join(RULES, 'law', file));
    problems.push(...schemaProblems(validate, pack));
    if (pack.jurisdiction !== jurisdiction) problem(`jurisdiction ${pack.jurisdiction} is not the file's name`);
    if (!problems.length) {
      const world = withOwn(shared, pack, problem);
      checkReferences(pack, world, problem);
      checkVariants(pack, world.facts, problem);
      cases = casesOf(jurisdiction, pack, world, problem);
    }
  } catch (e) { problem(e.message); }
  return { jurisdiction, pack, problems, cases };
}

// The table in the README must say what the packs say.
function staleCoverage(packs) {
  const readme = fs.readFileSync(path.join(RULES, 'law/README.md'), 'utf8');
  return replaceBetweenMarkers(readme, coverageTable(packs)) === readme ? [] : ['engine/rules/law/README.md: the table of coverage is old, run check-packs.mjs --write-coverage'];
}

function orphanCases(packs) {
  if (!fs.existsSync(CASES)) return [];
  return fs.readdirSync(CASES).filter((d) => fs.statSync(path.join(CASES, d)).isDirectory() && !packs.includes(d)).map((d) => `tests/reference/law/${d} has no pack`);
}

function main(args) {
  const wanted = args.filter((a) => !a.startsWith('--'));
  const validate = new Ajv2020({ allErrors: true, strict: true, strictTypes: false, strictRequired: false, allowUnionTypes: true }).compile(readJson(path.join(RULES, 'schema/law-pack.schema.json')));
  const files = jsonFiles(path.join(RULES, 'law'));
  const shared = sharedWorld();
  if (args.includes('--coverage') || args.includes('--write-coverage')) {
    const table = coverageTable(files.map((f) => readJson(path.join(RULES, 'law', f))));
    if (args.includes('--coverage')) console.log(table);
    const readme = path.join(RULES, 'law/README.md');
    if (args.includes('--write-coverage')) fs.writeFileSync(readme, replaceBetweenMarkers(fs.readFileSync(readme, 'utf8'), table));
    return 0;
  }
  const missing = wanted.filter((w) => !files.includes(`${w}.json`));
  const results = files.filter((f) => !wanted.length || wanted.includes(f.replace(/\.json$/, ''))).map((f) => checkPack(f, validate, shared));
  for (const r of results) {
    console.log(`${r.problems.length ? 'FAIL' : 'ok  '} ${r.jurisdiction} ${r.problems.length ? `${r.problems.length} problems` : `${r.cases} cases`}`);
    for (const p of r.problems) console.log(`     ${p}`);
  }
  const orphans = wanted.length ? missing.map((w) => `no pack ${w}`) : [...orphanCases(files.map((f) => f.replace(/\.json$/, ''))), ...staleCoverage(results.map((r) => r.pack).filter(Boolean))];
  for (const o of orphans) console.log(`FAIL ${o}`);
  if (!shared.catalogue) console.log('note: no wear catalogue yet, elements and findings were not checked');
  if (!shared.holidays) console.log('note: no holiday files yet, their names were not checked');
  const failed = results.filter((r) => r.problems.length).length + orphans.length;
  console.log(`${results.length - results.filter((r) => r.problems.length).length} passed, ${failed} failed`);
  return failed || !results.length ? 1 : 0;
}

process.exitCode = main(process.argv.slice(2));
