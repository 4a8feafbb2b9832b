// What letters must say and must not say: 120 letters of 56 invented cases and some variants (tests/reference/letters), all written by one
// process (tests/engine/probe/letter_probe.cpp).
//   node tests/reference/check-letters.mjs            'N passed, N failed', exit code 1 on failure
//   node tests/reference/check-letters.mjs --print 06  the letters of the cases whose names begin so

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../../', import.meta.url);
const here = new URL('letters/', import.meta.url);
const probe = ['build/native/tests/engine/wearline_letter_probe', 'build/tests/engine/wearline_letter_probe']
  .map((path) => fileURLToPath(new URL(path, root))).find((path) => existsSync(path));
if (!probe) throw new Error('wearline_letter_probe is not built: cmake --build <build folder> --target wearline_letter_probe');

const caseOf = (name) => JSON.parse(readFileSync(new URL(`cases/${name}.json`, here), 'utf8'));
const { never, proposals, letters } = JSON.parse(readFileSync(new URL('letters.json', here), 'utf8'));
// Cases without a line of their own are written as the engine proposes: they must be readable and say nothing of what is never said.
const named = new Set(letters.map((one) => one.case));
const others = readdirSync(new URL('cases/', here)).map((file) => file.replace(/\.json$/, '')).filter((name) => !named.has(name))
  .map((name) => ({ case: name, kind: 'question-charges', today: '2026-09-15', language: 'en' }));

const questions = [
  ...[...letters, ...others].map((one) => ({ one, options: { kind: one.kind, language: one.language } })),
  ...proposals.map((one) => ({ one, options: {} })),
];
const run = spawnSync(probe, {
  input: questions.map(({ one, options }) => JSON.stringify({ case: caseOf(one.case), today: one.today, options })).join('\n') + '\n',
  maxBuffer: 1 << 28,
});
if (run.status !== 0) throw new Error(`the probe ended with ${run.status}: ${run.stderr}`);
const answers = run.stdout.toString().trimEnd().split('\n').map((line) => JSON.parse(line));

/** The words of a letter in the language that is asked for. */
const textOf = (answer, language) => (answer.language === language || !answer.copy ? answer.text : answer.copy.text);

function problems({ one, options }, answer) {
  if (answer.errors.length) return [answer.errors[0].text];
  if (!options.kind) {
    if (one.none) return answer.proposed.length || answer.noLetter?.code !== one.none ? [`proposes ${answer.proposed.map((p) => p.kind)}, not none (${one.none})`] : [];
    return answer.proposed[0]?.kind === one.first ? [] : [`proposes ${answer.proposed[0]?.kind} first, not ${one.first}`];
  }
  const text = textOf(answer, one.language);
  return [
    ...(one.must ?? []).filter((words) => !text.includes(words)).map((words) => `does not say "${words}"`),
    ...[...(one.mustNot ?? []), ...never].filter((words) => text.includes(words)).map((words) => `says "${words}"`),
  ];
}

const shown = process.argv.includes('--print') ? process.argv[process.argv.indexOf('--print') + 1] : undefined;
let failed = 0;
questions.forEach((question, i) => {
  const { one, options } = question;
  const name = `${one.case} ${options.kind ?? 'proposed'} ${one.today} ${one.language ?? ''}`;
  if (shown !== undefined && one.case.startsWith(shown) && options.kind) console.log(`=== ${name}\n${textOf(answers[i], one.language)}`);
  const found = problems(question, answers[i]);
  if (found.length) console.log([`FAIL ${name}`, ...found.map((p) => `     ${p}`)].join('\n'));
  failed += found.length > 0;
});
console.log(`${questions.length - failed} passed, ${failed} failed`);
process.exitCode = failed ? 1 : 0;
