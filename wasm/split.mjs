// Takes the page's module apart: `first.wasm` holds what answers the first charges, `rest.wasm` all other code. The page fetches the first
// before the rules and the other behind them (site/src/engine/two-parts.ts). What the first charges need is found by running them: a copy of
// the module that counts the functions it enters is asked what the page asks at the beginning. The code is the same, only its place changes.
//
//   node wasm/split.mjs     after the module and the bundles of rules are built
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '../site');
const ENGINE = path.join(SITE, 'src/generated/engine');
const RULES = path.join(SITE, 'public/generated/rules');
const INDEX = path.join(SITE, 'src/generated/rules-index.json');
const WHOLE = path.join(ENGINE, 'wearline.wasm');
const PARTS = ['first.wasm', 'rest.wasm'].map((name) => path.join(ENGINE, name));
/** From what the parts beside it were made. */
const MADE_FROM = path.join(ENGINE, 'parts.sha256');

/** Charges in people's own words: those by which the reading of facts is tested. Other words may want a function of the rest; few do. */
const SPOKEN = ['own-lines', 'further-lines', 'later-lines', 'outside-a', 'outside-b'].map((name) => path.join(SITE, `../tests/reference/facts/${name}.json`));
const typed = SPOKEN.flatMap((file) => JSON.parse(fs.readFileSync(file, 'utf8')).map(({ text }) => text));

function wasmSplit(...given) {
  // Every browser that has modules in workers shares globals between modules.
  const run = spawnSync('wasm-split', [...given, '--enable-mutable-globals'], { encoding: 'utf8' });
  if (run.error) throw run.error;
  if (run.status !== 0) throw new Error(`wasm-split: ${run.stderr}`);
}

/** Starts the module in `file`: its calls, and the instance behind them. */
async function start(file) {
  const { default: create } = await import(path.join(ENGINE, 'wearline.mjs'));
  let instance;
  const module = await create({
    instantiateWasm: (imports, receive) => {
      instance = new WebAssembly.Instance(new WebAssembly.Module(fs.readFileSync(file)), imports);
      receive(instance);
      return instance.exports;
    },
  });
  return { instance, module };
}

/** What the page asks from its opening to the first answers: without rules for reading, then with them, one charge and several. */
function ask(module) {
  const index = JSON.parse(fs.readFileSync(INDEX, 'utf8'));
  const errorsOf = (answer) => {
    const { errors } = JSON.parse(answer);
    if (errors.length > 0) throw new Error(`the first answers: ${JSON.stringify(errors[0])}`);
  };
  const load = (file) => errorsOf(module.load(fs.readFileSync(path.join(RULES, file))));
  const assess = (lines, side = 'tenant') => errorsOf(module.assess(JSON.stringify({ wearline: 2, side, lines, language: 'en' }), '2026-09-01', 2));
  const lines = typed.map((text, i) => ({ id: String(i + 1), text, amount: `${75 + i}.00` }));
  module.version();
  load(index.shared);
  const { elements } = JSON.parse(module.catalogue('en', 2));
  // And each thing with each thing that befalls it, in the words of the page.
  for (const { label, findings = [] } of elements)
    for (const { label: what } of findings) lines.push({ id: String(lines.length + 1), text: `${label}: ${what}`, amount: '120.00' });
  assess([]);
  assess([{ id: '1', text: 'Ca' }]);
  load(index.reading);
  for (const line of lines) assess([line]);
  for (const side of ['tenant', 'adviser', 'landlord']) assess(lines, side);
}

/** Which functions were entered, as wasm-split wants to be told. */
function profileOf({ exports }) {
  const memory = Object.values(exports).find((one) => one instanceof WebAssembly.Memory);
  const room = 1 << 20;
  const at = memory.grow(room >> 16) << 16;
  const length = exports.__write_profile(at, room);
  if (length > room) throw new Error(`the profile needs ${length} bytes`);
  return Buffer.from(memory.buffer, at, length);
}

/** All that the parts follow from. The index names the bundles by their content. */
function basis() {
  const hash = createHash('sha256');
  for (const file of [fileURLToPath(import.meta.url), WHOLE, INDEX, ...SPOKEN]) hash.update(fs.readFileSync(file));
  return hash.digest('hex');
}

async function split(folder) {
  const counting = path.join(folder, 'counting.wasm');
  const profile = path.join(folder, 'profile');
  wasmSplit('--instrument', WHOLE, '-o', counting);
  const { instance, module } = await start(counting);
  ask(module);
  fs.writeFileSync(profile, profileOf(instance));
  wasmSplit('--split', `--profile=${profile}`, WHOLE, '-o1', PARTS[0], '-o2', PARTS[1]);
  console.log([WHOLE, ...PARTS].map((file) => `${path.basename(file)} ${Math.round(gzipSync(fs.readFileSync(file), { level: 9 }).length / 1000)} KB`).join(', '));
}

const from = basis();
if (![...PARTS, MADE_FROM].every((file) => fs.existsSync(file)) || fs.readFileSync(MADE_FROM, 'utf8') !== from) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-split-'));
  try {
    await split(folder);
    fs.writeFileSync(MADE_FROM, from);
  } finally {
    fs.rmSync(folder, { recursive: true });
  }
}
