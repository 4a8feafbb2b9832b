// Every step of a judgment says what it rests on, in the comment above it: a table of the rules, a statute (which the place's pack
// names), a decided case, the paper's own arithmetic, or common practice without a source.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SRC = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../engine/src');
const BASIS = /rules\/[a-z]|statute|CanLII|own arithmetic|arithmetic alone|common practice, no source/i;
/** Where steps stand, and how each begins. */
const STEPS = [
  ['judging/line_judgment.cpp', /^Record (\w+)\(/],
  ['judging/audit.cpp', /^void ((?:check|find)_\w+)\(/],
  ['judging/assessment.h', /^Totals (add_up)\(/],
  ['judging/precedents.h', /^ {2}(?:std::optional<Share>|Alike) (\w+)\(/],
  ['wear/wear.cpp', /^(?:std::optional<WearOpinion>|WearOpinion|void) ((?:by|judge)_(?!the)\w+|leaning\w*|open_to_facts)\(/],
  ['wear/wear.h', /^(?:WearOpinion|void) (judge_wear|weigh_proof)\(/],
  ...['deadlines', 'caps', 'documents', 'interest', 'remedies', 'permission'].map((name) => [`law/${name}.h`, /^[\w:<>]+ (judge_\w+|permissions)\(/]),
];

let passed = 0;
const faults = [];
for (const [file, begins] of STEPS) {
  const lines = fs.readFileSync(path.join(SRC, file), 'utf8').split('\n');
  let here = 0;
  lines.forEach((line, i) => {
    const step = line.match(begins)?.[1];
    // What a header says is not said again where it is carried out.
    if (!step || (file.endsWith('.cpp') && step === 'judge_wear')) return;
    here += 1;
    let first = i;
    while (first > 0 && /^\s*\/\/\//.test(lines[first - 1])) first -= 1;
    const said = lines.slice(first, i).map((row) => row.replace(/^\s*\/\/\/ ?/, '')).join(' ');
    if (BASIS.test(said)) passed += 1;
    else faults.push(`engine/src/${file}:${i + 1} ${step} does not say what it rests on`);
  });
  if (!here) faults.push(`engine/src/${file} has no such step any more`);
}
for (const fault of faults) console.log(fault);
console.log(`${passed} passed, ${faults.length} failed`);
process.exitCode = faults.length ? 1 : 0;
