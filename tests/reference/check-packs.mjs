// Checks every law pack and its case files: JSON Schema 2020-12, then the cross checks a schema cannot say.
//   node tests/reference/check-packs.mjs [US-WA ...]      one line a pack, exit code 1 on failure
//   node tests/reference/check-packs.mjs --coverage       table of topics by jurisdiction
//   node tests/reference/check-packs.mjs --write-coverage the same, into engine/rules/law/README.md
import fs from 'node:fs';
import path from 'node:path';
import { CASES, jsonFiles, readJson, RULES, schemaProblems, schemaValidator, sharedWorld, withOwn } from './packcheck/world.mjs';
import { checkReferences } from './packcheck/references.mjs';
import { checkSections } from './packcheck/sections.mjs';
import { checkSpoken } from './packcheck/spoken.mjs';
import { checkVariants } from './packcheck/variants.mjs';
import { allLayers, asPack, calledUnknown, fits, laidOver, ownProblems, uncovered } from './packcheck/layers.mjs';
import { checkCase, checkCited, LEAST_CASES } from './packcheck/cases.mjs';
import { checkWeak, coverageTable, replaceBetweenMarkers } from './packcheck/coverage.mjs';

function casesOf(jurisdiction, pack, world, problem) {
  const dir = path.join(CASES, jurisdiction);
  const files = jsonFiles(dir);
  for (const name of files) {
    const here = (text) => problem(`case ${name}: ${text}`);
    try { checkCase(readJson(path.join(dir, name)), pack, world, here); } catch (e) { here(e.message); }
  }
  checkCited(pack, files.map((name) => readJson(path.join(dir, name))), problem);
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
      checkSpoken(pack, problem);
      checkWeak(pack, problem);
      checkSections(pack, problem);
      // A case may stand in a town with rules of its own, or in a home under a federal program.
      const all = allLayers().filter(({ layer }) => fits(layer, pack)).reduce((below, { layer }) => laidOver(below, layer, problem), pack);
      cases = casesOf(jurisdiction, all, withOwn(shared, all, problem), problem);
    }
  } catch (e) { problem(e.message); }
  return { jurisdiction, pack, problems, cases };
}

// A layer is checked as it lies over the packs it belongs to (the federal one: over one of them, as nothing in it names a rule of a state).
function checkLayer({ file, layer }, packs, cases, validate, shared) {
  const problems = [...ownProblems({ file, layer }), ...uncovered(layer, cases)];
  const problem = (text) => problems.push(text);
  const below = packs.filter((pack) => fits(layer, pack)).slice(0, 1);
  if (!below.length) problem(`no pack of ${layer.jurisdiction}`);
  for (const pack of below) problems.push(...calledUnknown(layer, pack));
  for (const pack of problems.length ? [] : below) {
    problems.push(...schemaProblems(validate, asPack(layer, pack)));
    const whole = laidOver(pack, layer, problem);
    const world = withOwn(shared, whole, problem);
    if (!problems.length) { checkReferences(whole, world, problem); checkVariants(whole, world.facts, problem); }
  }
  return { jurisdiction: file, problems, cases: 0, layer: true };
}

// The table in the README must say what the packs say.
function staleCoverage(packs) {
  const readme = fs.readFileSync(path.join(RULES, 'law/README.md'), 'utf8');
  return replaceBetweenMarkers(readme, coverageTable(packs)) === readme ? [] : ['engine/rules/law/README.md: the table of coverage is old, run check-packs.mjs --write-coverage'];
}

const caseFolders = () => (fs.existsSync(CASES) ? fs.readdirSync(CASES).filter((d) => fs.statSync(path.join(CASES, d)).isDirectory()) : []);
const allCases = () => caseFolders().flatMap((d) => jsonFiles(path.join(CASES, d)).map((f) => readJson(path.join(CASES, d, f))));

function orphanCases(packs) {
  return caseFolders().filter((d) => !packs.includes(d)).map((d) => `tests/reference/law/${d} has no pack`);
}

function main(args) {
  const wanted = args.filter((a) => !a.startsWith('--'));
  const validate = schemaValidator();
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
  const packs = files.map((f) => readJson(path.join(RULES, 'law', f)));
  const cases = allCases();
  results.push(...allLayers().filter(({ layer }) => !wanted.length || wanted.some((w) => fits(layer, { jurisdiction: w }))).map((l) => checkLayer(l, packs, cases, validate, shared)));
  for (const r of results) {
    console.log(`${r.problems.length ? 'FAIL' : 'ok  '} ${r.jurisdiction} ${r.problems.length ? `${r.problems.length} problems` : r.layer ? 'layer' : `${r.cases} cases`}`);
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
