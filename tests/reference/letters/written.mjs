// The letters of the cases in cases/, all written by one process (tests/engine/probe/letter_probe.cpp).
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { probe } from '../../built.mjs';

export const caseOf = (name) => JSON.parse(readFileSync(new URL(`cases/${name}.json`, import.meta.url), 'utf8'));
export const list = () => JSON.parse(readFileSync(new URL('letters.json', import.meta.url), 'utf8'));

/** `questions`: { one: { case, today }, options }, or with the case itself as `file`; an answer for each. */
export function written(questions) {
  const run = spawnSync(probe('letter'), {
    input: questions.map(({ one, file, options }) => JSON.stringify({ case: file ?? caseOf(one.case), today: one.today, options })).join('\n') + '\n',
    maxBuffer: 1 << 28,
  });
  if (run.status !== 0) throw new Error(`the probe ended with ${run.status}: ${run.stderr}`);
  return run.stdout.toString().trimEnd().split('\n').map((line) => JSON.parse(line));
}

/** The paragraphs that go out, in the language that was asked for; in either version's names. */
export function paragraphsOf(answer, language) {
  const copy = answer.readingCopy ?? answer.copy;
  return (answer.language === language || !copy ? answer.paragraphs : copy.paragraphs)
    .filter((p) => (p.included ?? p.on) && p.role !== 'caution').map((p) => ({ ...p, cites: p.citations ?? p.cites }));
}
