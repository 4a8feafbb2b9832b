// The letters of the cases in cases/, all written by one process (tests/engine/probe/letter_probe.cpp).
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../../../', import.meta.url);

/** A program of tests/engine/probe, from the build of the program or of the tests. */
export function probe(name) {
  const found = ['build/native/tests/engine/', 'build/tests/engine/'].map((folder) => fileURLToPath(new URL(folder + name, root))).find((path) => existsSync(path));
  if (!found) throw new Error(`${name} is not built: cmake --build <build folder> --target ${name}`);
  return found;
}

export const caseOf = (name) => JSON.parse(readFileSync(new URL(`cases/${name}.json`, import.meta.url), 'utf8'));
export const list = () => JSON.parse(readFileSync(new URL('letters.json', import.meta.url), 'utf8'));

/** `questions`: { one: { case, today }, options }, or with the case itself as `file`; an answer for each. */
export function written(questions) {
  const run = spawnSync(probe('wearline_letter_probe'), {
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
