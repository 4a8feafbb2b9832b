// The npm package as someone else meets it: packed, installed into an empty folder without a network, and the lines of its README run.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, nativeAll, readJson } from './engines.mjs';

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-npm-'));
after(() => fs.rmSync(folder, { recursive: true, force: true }));

function run(command, args, options = {}) {
  const done = spawnSync(command, args, { encoding: 'utf8', cwd: folder, maxBuffer: 1 << 26, ...options });
  assert.equal(done.status, 0, `${command} ${args.join(' ')}\n${done.stdout}\n${done.stderr}`);
  return done.stdout;
}
const js = (source) => run(process.execPath, ['--input-type=module', '-e', source]);

before(() => {
  const tgz = run(process.execPath, [path.join(ROOT, 'wasm/npm/pack.mjs'), folder]).trim();
  fs.writeFileSync(path.join(folder, 'package.json'), '{"private":true}');
  run('npm', ['install', '--offline', '--no-audit', '--no-fund', tgz]);
});

test('the lines of the README run', () => {
  const readme = fs.readFileSync(path.join(folder, 'node_modules/wearline/README.md'), 'utf8');
  assert.match(js(/```js\n(.*?)```/s.exec(readme)[1]), /^Replace bedroom carpet, stained .+ 0\.00 \d+\.\d\d$/m);
});

test('it answers as the program does', () => {
  const example = path.join(ROOT, 'examples/twelve-charges.json');
  const answer = js(`import fs from 'node:fs'; import { open } from 'wearline';
    console.log(JSON.stringify(await (await open()).assess(fs.readFileSync(${JSON.stringify(example)}), { today: '2026-11-25' })));`);
  const [program] = nativeAll([{ text: JSON.stringify(readJson('examples/twelve-charges.json')), today: '2026-11-25' }]);
  assert.deepEqual(JSON.parse(answer), JSON.parse(program));
});

test('it reads a statement, writes a letter in Spanish too, and says what is wrong with a case', () => {
  const said = JSON.parse(js(`import { open } from 'wearline';
    const w = await open();
    const reading = await w.read('Carpet cleaning $120.00\\nTotal $120.00');
    const subject = { wearline: 1, jurisdiction: 'US-WA', tenancy: { began: '2021-09-01', ended: '2026-08-31', possessionReturned: '2026-08-31' },
      deposits: [{ kind: 'security', amount: '900.00' }], lines: [{ id: '1', text: 'Carpet worn', amount: '120.00' }] };
    const letters = await Promise.all(['en', 'es'].map((language) => w.letter(subject, { today: '2026-11-01', language })));
    const wrong = await w.assess('{"wearline":1}');
    console.log(JSON.stringify({ reading, letters, wrong, places: w.jurisdictions.length }));`));
  assert.equal(said.reading.case?.lines?.[0]?.amount ?? said.reading.lines?.[0]?.amount, '120.00', JSON.stringify(said.reading).slice(0, 300));
  for (const letter of said.letters) assert.deepEqual(letter.errors, []);
  assert.notEqual(JSON.stringify(said.letters[0]), JSON.stringify(said.letters[1]));
  assert.equal(said.wrong.errors[0].code, 'missing-member');
  assert.ok(said.places > 50);
});

test('its types hold for those lines', () => {
  const readme = fs.readFileSync(path.join(folder, 'node_modules/wearline/README.md'), 'utf8');
  assert.match(fs.readFileSync(path.join(folder, 'node_modules/wearline/index.d.ts'), 'utf8'), /export function open\(\): Promise<Wearline>/);
  for (const [, name] of readme.matchAll(/`(\w+)\(/g))
    assert.match(fs.readFileSync(path.join(folder, 'node_modules/wearline/index.d.ts'), 'utf8'), new RegExp(`\\b${name}\\(`), name);
});
