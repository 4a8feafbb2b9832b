// The examples: each is judged as its expected result says, and its statement reads as its charges.
//
//   node tests/reference/check-examples.mjs           compares; 'N passed, N failed', exit code 1 on failure
//   node tests/reference/check-examples.mjs --write   writes examples/<name>.expected.json anew: go through every change by hand then
//
// Checked by hand against the packs and tables that each step names: every last day, every award, and the sums of the carpet, the counter,
// the smoke alarm and the rent (amount x damaged part x life left). The rest was read through and is held as it was.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { program, ROOT } from '../built.mjs';

const EXAMPLES = path.join(ROOT, 'examples');
const TODAY = '2026-11-25';

function run(...args) {
  const { stdout, stderr, status } = spawnSync(program(), args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (status !== 0) throw new Error(`wearline ${args.join(' ')}: ${stderr || stdout}`);
  return JSON.parse(stdout);
}

const figures = ({ low, likely, high }) => [low, likely, high];

/** What a person would check first: verdict and range of each charge, the sums, the days, what does not add up. */
function result(file) {
  const a = run('check', '--json', '--today', TODAY, file);
  return {
    today: TODAY,
    lines: a.lines.map((l) => ({ id: l.id, verdict: l.verdict, fair: figures(l.fair) })),
    totals: { claimed: a.totals.claimed, fair: figures(a.totals.fair), fairRefund: figures(a.totals.fairRefund), shortfall: figures(a.totals.shortfall) },
    dates: a.dates.map((d) => ({ id: d.id, last: d.last && [d.last.earliest, d.last.latest], state: d.state })),
    audit: a.audit.map((n) => n.code),
    award: [a.remedies.least, a.remedies.most],
  };
}

const amounts = (lines) => lines.map((l) => l.amount).sort();
const names = fs.readdirSync(EXAMPLES).filter((f) => f.endsWith('.json') && !f.endsWith('.expected.json')).map((f) => path.basename(f, '.json'));

const writing = process.argv.includes('--write');
const checks = names.flatMap((name) => {
  const at = (ending) => path.join(EXAMPLES, `${name}.${ending}`);
  const found = JSON.stringify(result(at('json')), null, 1);
  if (writing) fs.writeFileSync(at('expected.json'), `${found}\n`);
  const expected = fs.existsSync(at('expected.json')) ? JSON.stringify(JSON.parse(fs.readFileSync(at('expected.json'), 'utf8')), null, 1) : 'no such file';
  const charged = amounts(JSON.parse(fs.readFileSync(at('json'), 'utf8')).lines);
  // A home that is still lived in has no statement yet.
  const read = charged.length ? amounts(run('read', '--json', at('txt')).lines) : [];
  return [
    { what: `${name} is judged as expected`, difference: found === expected ? '' : firstDifference(found, expected) },
    { what: `${name}: the statement reads as its charges`, difference: String(read) === String(charged) ? '' : `read ${read}, charged ${charged}` },
  ];
});

function firstDifference(found, expected) {
  const [a, b] = [found.split('\n'), expected.split('\n')];
  const at = a.findIndex((line, i) => line !== b[i]);
  return `line ${at + 1}: found ${a[at]?.trim()}, expected ${b[at]?.trim()}`;
}

for (const { what, difference } of checks) console.log(difference ? `FAIL ${what}: ${difference}` : `ok   ${what}`);
const failed = checks.filter((c) => c.difference).length;
console.log(`${checks.length - failed} passed, ${failed} failed`);
process.exitCode = failed ? 1 : 0;
