// The page's module and the program write the same letters, byte for byte.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { before, describe, test } from 'node:test';
import { probe } from '../built.mjs';
import { allCases, fullModule } from './engines.mjs';

const cases = allCases().filter(({ name }, i) => name.startsWith('examples/') || i % 7 === 0);
const questions = cases.flatMap(({ name, text, today }) =>
  [{}, { language: 'es' }, { kind: 'small-claims-sheet' }, { kind: 'itemized-statement', language: 'es' }, { kind: 'after-deadline', off: ['sums'] }]
    .map((options) => ({ name, text, today, options })));

describe('the page and the program write the same letters', () => {
  let engine;
  let native;
  before(async () => {
    engine = await fullModule();
    const input = questions.map(({ text, today, options }) => JSON.stringify({ case: JSON.parse(text), today, options })).join('\n') + '\n';
    const run = spawnSync(probe('letter'), { input, maxBuffer: 1 << 30 });
    assert.equal(run.status, 0, run.error?.message ?? run.stderr.toString());
    native = run.stdout.toString().trimEnd().split('\n');
  });
  test('there are letters to compare', () => assert.ok(questions.length > 100 && native.length === questions.length, `${native.length} of ${questions.length}`));
  test('byte for byte', () => {
    questions.forEach(({ name, text, today, options }, i) => {
      const letter = engine.letter(text, today, JSON.stringify(options));
      assert.equal(letter, native[i], `${name} ${JSON.stringify(options)}`);
      assert.deepEqual(JSON.parse(letter).errors, [], name);
    });
  });
});

test('a kind that does not exist is refused alike, with the nearest name', async () => {
  const engine = await fullModule();
  const { errors } = JSON.parse(engine.letter('{"wearline":1,"lines":[]}', '2026-09-01', '{"kind":"demnd"}'));
  assert.equal(errors[0].code, 'unknown-kind');
  assert.equal(errors[0].near, 'demand');
});
