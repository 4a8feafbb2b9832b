// The same answers, byte for byte, from every build of the engine, on generated cases, letters and statements:
//   node tests/wasm/differential.mjs [COUNT] [SEED] [PROBE]...
// The page's module against each probe (tests/engine/probe/ask_probe.cpp; by default that of build/native).
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import * as built from '../built.mjs';
import { fullModule, ROOT } from './engines.mjs';
import { generator } from './generated.mjs';

const AT_ONCE = 400;

function probed(probe, questions) {
  const input = questions.map((question) => `${JSON.stringify(question)}\n`).join('');
  const run = spawnSync(probe, { input, maxBuffer: 1 << 30 });
  if (run.status !== 0) throw run.error ?? new Error(`${probe} ended with ${run.status}: ${run.stderr}`);
  return run.stdout.toString('utf8').split('\n').slice(0, -1);
}

const moduleSays = (engine, { text, today, options, language }) =>
  language ? engine.readStatement(text, language) : options ? engine.letter(text, today, options) : engine.assess(text, today);

/** { asked, answered (without faults), different: [{ probe, question, at, there, here }] } */
export async function compare(count, seed, probes = [built.probe('ask')], report = () => {}) {
  const engine = await fullModule();
  const next = generator(seed);
  const result = { asked: 0, answered: 0, different: [] };
  for (let done = 0; done < count; done += AT_ONCE) {
    const questions = Array.from({ length: Math.min(AT_ONCE, count - done) }, next).flat();
    const own = questions.map((question) => moduleSays(engine, question));
    result.asked += own.length;
    result.answered += own.filter((answer) => !answer.includes('"errors":[{')).length;
    for (const probe of probes) {
      const theirs = probed(probe, questions);
      if (theirs.length !== own.length) throw new Error(`${probe}: ${theirs.length} answers to ${own.length} questions`);
      own.forEach((answer, i) => {
        if (answer === theirs[i]) return;
        const at = [...answer].findIndex((c, n) => c !== theirs[i][n]);
        result.different.push({ probe: path.relative(ROOT, probe), question: questions[i], at, there: theirs[i].slice(Math.max(0, at - 80), at + 120), here: answer.slice(Math.max(0, at - 80), at + 120) });
      });
    }
    report(result);
  }
  return result;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [count = '20000', seed = '1', ...probes] = process.argv.slice(2);
  const { asked, answered, different } = await compare(Number(count), Number(seed), probes.length ? probes.map((p) => path.resolve(p)) : undefined,
    ({ asked: n, different: d }) => process.stderr.write(`\r${n} questions, ${d.length} answers differ`));
  process.stderr.write('\n');
  for (const one of different.slice(0, 5)) console.log(JSON.stringify({ ...one, question: undefined }));
  if (different.length) {
    const kept = path.join(ROOT, 'build/different.json');
    fs.writeFileSync(kept, JSON.stringify(different, null, 1));
    console.log(`all in ${kept}`);
  }
  console.log(`${asked} questions, ${answered} answered without faults, seed ${seed}`);
  console.log(`${asked - different.length} passed, ${different.length} failed`);
  process.exitCode = different.length ? 1 : 0;
}
