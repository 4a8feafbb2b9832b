// Agreement with published examples and decided disputes: measures, prints, and with --write keeps the result in README.md.
//   node tests/reference/measure-agreement.mjs [--write]     'N passed, N failed', exit code 1 on failure
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { figures, measureDecided } from './measure-agreement/decided.mjs';
import { blindMeasures, blindReport } from './measure-agreement/blind.mjs';
import { AIMS, report } from './measure-agreement/report.mjs';
import { measureWorked } from './measure-agreement/worked.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const read = (file) => JSON.parse(fs.readFileSync(path.join(HERE, file), 'utf8'));
const README = path.join(HERE, 'README.md');
const OF_THE_PAGE = path.join(HERE, '../../site/src/sections/cautions/measured.json');
const OF_THE_PROJECT = path.join(HERE, '../../README.md');

// Every parting of ways is explained, and no explanation is kept for a line on which both agree.
function unexplained(judged, explained) {
  const off = judged.filter((j) => !j.agrees || j.inside === false).map((j) => j.name);
  return [...off.filter((n) => !explained[n]).map((n) => `${n} differs and is not explained`), ...Object.keys(explained).filter((n) => !off.includes(n)).map((n) => `${n} no longer differs: drop its explanation`)];
}

function aimsMissed(f) {
  return [
    ...(f.agree / f.lines >= AIMS.agree ? [] : [`verdicts: ${f.agree} of ${f.lines}`]),
    ...(f.inside / f.sums >= AIMS.inside ? [] : [`sums inside: ${f.inside} of ${f.sums}`])
  ];
}

// What the second set must not fall below: the aims for lines never seen.
function blindMissed(seen) {
  const facts = seen.at(-1).figures, words = seen.at(-2).figures;
  return [
    ...(facts.right >= 0.8 ? [] : [`right among given: ${facts.right}`]), ...(facts.open / facts.lines < 0.4 ? [] : [`open: ${facts.open} of ${facts.lines}`]),
    ...seen.flatMap(({ name, figures: f }) => (f.inside / f.sums >= 0.9 ? [] : [`${name}: inside ${f.inside} of ${f.sums}`])),
    ...(facts.error <= 0.25 ? [] : [`mean error: ${facts.error}`]), ...(facts.error <= words.error && facts.right >= words.right ? [] : ['facts make it worse'])
  ];
}

// What the page and the project's README say of it: the lines that did not shape the rules, with every known fact given.
const told = ({ lines, open, agree, sums, inside }) => ({ lines, given: lines - open, right: agree, open, sums, inside });
const sentence = (m) =>
  `Of ${m.lines} charges that courts and tribunals decided, each judged as if its own decision had never been read, it gives a verdict on ${m.given}, ${m.right} of them as decided, and leaves ${m.open} open; ${m.inside} of ${m.sums} sums allowed lie inside its range.`;

// The figures the page shows and the README names are those measured now.
function stale(figures) {
  const kept = JSON.parse(fs.readFileSync(OF_THE_PAGE, 'utf8'));
  const readme = fs.readFileSync(OF_THE_PROJECT, 'utf8').replace(/\s+/g, ' ');
  return [
    ...(JSON.stringify(kept) === JSON.stringify(told(figures)) ? [] : [`measured.json is not what is measured: run with --write`]),
    ...(readme.includes(sentence(told(figures))) ? [] : [`README.md should say: ${sentence(told(figures))}`])
  ];
}

function main() {
  const worked = measureWorked(read('data/worked-examples.json'), read('worked-examples/rows.json'));
  const measured = measureDecided(read('data/decided.json'), read('decided/lines.json'));
  const explained = read('decided/differences.json').lines;
  const of = { all: figures(measured.judged), open: figures(measured.judged.filter((j) => !j.heldOut)), held: figures(measured.judged.filter((j) => j.heldOut)) };
  const seen = blindMeasures(read('data/decided.json'), read('data/decided-more.json'));
  const text = report(worked, measured, of, explained, blindReport(seen));
  if (process.argv.includes('--write')) {
    fs.writeFileSync(README, text);
    fs.writeFileSync(OF_THE_PAGE, `${JSON.stringify(told(seen.at(-1).figures), null, 2)}\n`);
  } else console.log(text);

  const checks = [
    ['worked examples', worked.filter((r) => r.state === 'broken').map((r) => `${r.id}: ${r.text}`)],
    ['decided lines with their own age and life', measured.own.filter((o) => !o.exact).map((o) => `${o.name}: ${o.worth} cents, the decision ${o.allowed}`)],
    ['every difference is explained', unexplained(measured.judged, explained)],
    ['aims over all decided lines', aimsMissed(of.all)],
    ['judged blind: no worse than the aims', blindMissed(seen)],
    ['what the page and the README say of it', stale(seen.at(-1).figures)]
  ];
  for (const [name, problems] of checks) {
    console.log(`${problems.length ? 'FAIL' : 'ok  '} ${name}`);
    for (const p of problems) console.log(`     ${p}`);
  }
  const failed = checks.filter(([, problems]) => problems.length).length;
  console.log(`${checks.length - failed} passed, ${failed} failed`);
  return failed ? 1 : 0;
}

process.exitCode = main();
