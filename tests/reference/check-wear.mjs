// Wear catalogue, useful lives and weights: schemas, cross checks, published guides and tables, the trade's list, decided disputes.
//   node tests/reference/check-wear.mjs     one line a check, 'N passed, N failed', exit code 1 on failure
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv2020 from 'ajv/dist/2020.js';
import { catalogueRules } from './wearcheck/catalogue-rules.mjs';
import { livesRules } from './wearcheck/lives-rules.mjs';
import { decided, guides, guidesCitedOnlyWhereTheySpeak, practice, tables } from './wearcheck/outside.mjs';
import { askRules, weightsRules } from './wearcheck/weights-rules.mjs';
import { faults } from './wearcheck/broken.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const read = (...parts) => JSON.parse(fs.readFileSync(path.join(HERE, ...parts), 'utf8'));
const rules = (name) => read('../../engine/rules', name);
const SHOWN = 12;

const papers = rules('papers.json');
const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
const schemas = { wear: ajv.compile(rules('schema/wear-catalogue.schema.json')), lives: ajv.compile(rules('schema/lives.schema.json')), weights: ajv.compile(rules('schema/weights.schema.json')), ask: ajv.compile(rules('schema/ask-for.schema.json')) };
const against = (validate, data) => (validate(data) ? [] : validate.errors.map((e) => `${e.instancePath || '/'} ${e.message}`));

const data = { guide: read('data/wear-guide.json'), table: read('data/useful-life.json'), other: read('data/other-facts.json'), practice: read('data/common-practice.json'), decided: read('data/decided.json') };
const map = { guide: read('wearcheck/guide-rows.json'), classes: read('wearcheck/life-classes.json'), sources: read('wearcheck/life-sources.json'), practice: read('wearcheck/practice-rows.json'), decided: read('wearcheck/decided-lines.json') };

// A check that stumbles over broken data has found a problem too.
function problemsOf(check, ...args) {
  try { return check(...args); } catch (e) { return [e.message]; }
}

// Every check as [name, problems, how many things it looked at].
function allChecks(catalogue, lives, weights, ask) {
  const outside = (name, { problems, count }) => [name, count ? problems : ['nothing was checked'], count];
  return [
    ['wear: schema', against(schemas.wear, catalogue)],
    ['lives: schema', against(schemas.lives, lives)],
    ['weights: schema', against(schemas.weights, weights)],
    ['ask for: schema', against(schemas.ask, ask)],
    ...catalogueRules.map(([name, check]) => [name, problemsOf(check, catalogue, lives)]),
    ...livesRules.map(([name, check]) => [name, problemsOf(check, lives, catalogue)]),
    ...weightsRules.map(([name, check]) => [name, problemsOf(check, weights, catalogue, papers)]),
    ...askRules.map(([name, check]) => [name, problemsOf(check, ask, catalogue)]),
    outside('published guides', guides(catalogue, data.guide, map.guide)),
    outside('guides are cited only where they speak', guidesCitedOnlyWhereTheySpeak(catalogue, data.guide, data.other, map.guide)),
    outside('published tables', tables(lives, data.table, map.classes, (s) => map.sources[s.id])),
    outside('the trade\'s list', practice(catalogue, lives, data.practice, map.practice)),
    outside('decided disputes', decided(catalogue, data.decided, map.decided))
  ];
}

// Each fault must be noticed by the check it is meant for.
function blindSpots(...data) {
  return faults.flatMap(([name, spoil], i) => {
    const copies = data.map((x) => structuredClone(x));
    spoil(...copies);
    const seen = allChecks(...copies).some(([check, problems]) => check === name && problems.length);
    return seen ? [] : [`fault ${i} (${name}) goes unnoticed`];
  });
}

function main() {
  const data = [rules('wear/catalogue.json'), rules('lives/lives.json'), rules('wear/weights.json'), rules('wear/ask-for.json')];
  const results = [...allChecks(...data), ['the checks above can fail', blindSpots(...data), faults.length]];
  for (const [name, problems, count] of results) {
    console.log(`${problems.length ? 'FAIL' : 'ok  '} ${name}${count ? ` (${count})` : ''}`);
    for (const p of problems.slice(0, SHOWN)) console.log(`     ${p}`);
    if (problems.length > SHOWN) console.log(`     and ${problems.length - SHOWN} more`);
  }
  const failed = results.filter(([, problems]) => problems.length).length;
  console.log(`${results.length - failed} passed, ${failed} failed`);
  return failed ? 1 : 0;
}

process.exitCode = main();
