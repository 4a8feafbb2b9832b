// The engine twice: the program built for this machine, and the page's module with the bundles the page would fetch.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { program, ROOT } from '../built.mjs';

export { ROOT };
const SITE = path.join(ROOT, 'site');

export const read = (file) => fs.readFileSync(path.join(ROOT, file));
export const readJson = (file) => JSON.parse(read(file));

/** A module without rules. It is made for browsers: Node brings fetch, URL and TextDecoder, the bytes are handed over. */
export async function freshModule() {
  const { default: create } = await import(path.join(SITE, 'src/generated/engine/wearline.mjs'));
  return create({ wasmBinary: fs.readFileSync(path.join(SITE, 'src/generated/engine/wearline.wasm')) });
}

export const rulesIndex = () => JSON.parse(fs.readFileSync(path.join(SITE, 'src/generated/rules-index.json')));
export const bundle = (file) => fs.readFileSync(path.join(SITE, 'public/generated/rules', file));

/** Gives a module every bundle. */
export function loadAll(engine) {
  const { shared, reading, letters, languages, packs } = rulesIndex();
  for (const file of [shared, reading, letters, ...Object.values(languages), ...Object.values(packs).flatMap((pack) => [pack.file, ...Object.values(pack.words)])]) {
    const { errors } = JSON.parse(engine.load(bundle(file)));
    if (errors.length) throw new Error(`${file}: ${JSON.stringify(errors[0])}`);
  }
}

/** The module holding every bundle, as the single file does. */
export async function fullModule() {
  const engine = await freshModule();
  loadAll(engine);
  return engine;
}

/** What the program prints for a case given as bytes or text, and its exit status. */
export function native(input, today) {
  const run = spawnSync(program(), ['check', '--json', '--today', today, '-'], { input, maxBuffer: 1 << 28 });
  if (run.error) throw run.error;
  return { text: run.stdout.toString('utf8').replace(/\n$/, ''), status: run.status, complaint: run.stderr.toString() };
}

/** What the program says of many cases of one line each, [{ text, today }]: it is started once a day, not once a case. */
export function nativeAll(cases) {
  const answers = new Array(cases.length);
  for (const today of new Set(cases.map((one) => one.today))) {
    const places = cases.flatMap((one, i) => (one.today === today ? [i] : []));
    const input = places.map((i) => `${JSON.stringify(JSON.parse(cases[i].text))}\n`).join('');
    const run = spawnSync(program(), ['batch', '--today', today, '-'], { input, maxBuffer: 1 << 30 });
    if (run.error) throw run.error;
    const lines = run.stdout.toString('utf8').split('\n').slice(0, -1);
    if (lines.length !== places.length) throw new Error(`${lines.length} answers to ${places.length} cases: ${run.stderr}`);
    places.forEach((i, n) => { answers[i] = lines[n]; });
  }
  return answers;
}

function filesUnder(folder) {
  const full = path.join(ROOT, folder);
  if (!fs.existsSync(full)) return [];
  return fs.readdirSync(full, { withFileTypes: true }).flatMap((entry) => {
    const inside = path.join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(inside) : [inside];
  }).sort();
}

/** Every case this repository holds: { name, text, today }. */
export function allCases() {
  const examples = filesUnder('examples').filter((file) => file.endsWith('.json') && !file.endsWith('.expected.json'))
    .map((name) => ({ name, text: read(name).toString(), today: '2026-09-01' }))
    .filter(({ text }) => 'wearline' in JSON.parse(text));
  const worked = filesUnder('tests/reference').filter((file) => file.endsWith('.json'))
    .map((name) => [name, readJson(name)]).filter(([, document]) => document?.case?.wearline)
    .map(([name, document]) => ({ name, text: JSON.stringify(document.case), today: document.today ?? '2026-09-01' }));
  return [...examples, ...worked];
}
