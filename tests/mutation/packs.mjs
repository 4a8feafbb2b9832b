// How many small changes to law packs their checks notice:
//   node tests/mutation/packs.mjs [COUNT] [SEED]      build/mutation/packs-SEED.json holds what was tried
// A number, a day, a condition, a name from a list or a source is changed in a copy of the tree; the pack's own checks and the engine's
// tests (the worked cases among them) are shown the result. Prints the share caught and each survivor.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { random } from '../wasm/generated.mjs';
import { BUILD, TREE, copyTree, run } from './tree.mjs';

const LAW = path.join(TREE, 'engine/rules/law');
/** What is said and never judged by. */
const PROSE = new Set(['text', 'ifMissedText', 'ifMissingText', 'whenText', 'note', 'check', 'checkThis', 'notFound', 'question', 'url', 'title', 'publisher', 'id', 'sources', 'help', 'guide', 'name',
  'currency', 'reviewed', 'weak', 'jurisdiction', 'exempt', 'facts', 'events']);
const DAY = /^\d{4}-\d\d-\d\d$/;

/** Every leaf that can be changed: [{ kind, path, holder, key, where }]; `names`: what stands under each key anywhere. */
function leaves(pack, names, visit) {
  const walk = (holder, where) => {
    for (const [key, value] of Object.entries(holder)) {
      const name = Array.isArray(holder) ? where.at(-1) : key;
      if (!Array.isArray(holder) && PROSE.has(key)) continue;
      const at = [...where, Array.isArray(holder) ? where.at(-1) : key];
      const leaf = (kind) => visit({ kind, holder, key, name, at: [...where, key].filter((part, i, all) => part !== all[i - 1]).join('/') });
      if (value && typeof value === 'object') {
        if (!Array.isArray(holder) && ['any', 'all'].includes(key) && value.length > 1) leaf('condition');
        walk(value, at);
      } else if (name === 'source') leaf('source');
      else if (typeof value === 'number' || /^\d+(\.\d+)?$/.test(value ?? '')) leaf('number');
      else if (DAY.test(value ?? '')) leaf('day');
      else if (typeof value === 'boolean') leaf('condition');
      else if (typeof value === 'string') { (names[name] ??= new Set()).add(value); leaf('name'); }
    }
  };
  for (const [key, value] of Object.entries(pack)) if (Array.isArray(value) && !PROSE.has(key)) value.forEach((rule) => walk(rule, [key, rule.id ?? '']));
}

function change({ kind, holder, key, name }, pack, names, dice) {
  const was = holder[key];
  if (kind === 'number') holder[key] = typeof was === 'number' ? was + dice.pick([1, -1]) : was.includes('.') && Number(was) < 10 ? (Number(was) * 1.5).toFixed(was.split('.')[1].length) : was.replace(/^\d+/, (n) => `${Number(n) + (Number(n) > 99 ? 100 : 1)}`);
  else if (kind === 'day') holder[key] = new Date(Date.parse(was) + 86400000 * dice.pick([1, -1, 365, -365])).toISOString().slice(0, 10);
  else if (kind === 'source') holder[key] = dice.pick(Object.keys(pack.sources).filter((id) => id !== was).concat('no-such-source'));
  else if (kind === 'name') holder[key] = dice.pick([...names[name]].filter((other) => other !== was).sort().concat(names[name].size < 2 ? ['other'] : []));
  else if (typeof was === 'boolean') holder[key] = !was;
  else {
    const members = Object.entries(holder).map(([k, v]) => [k === key ? (key === 'any' ? 'all' : 'any') : k, v]);
    for (const k of Object.keys(holder)) delete holder[k];
    Object.assign(holder, Object.fromEntries(members));
    return `${key} -> ${key === 'any' ? 'all' : 'any'}`;
  }
  return holder[key] === was ? null : `${JSON.stringify(was)} -> ${JSON.stringify(holder[key])}`;
}

const CHECKS = [
  ['check-packs', (code) => run('node', ['tests/reference/check-packs.mjs', code], { cwd: TREE })],
  ['worked cases', () => run(path.join(BUILD, 'tests/engine/engine_tests'), ['-a', '[law]'])],
  ['engine tests', () => run(path.join(BUILD, 'tests/engine/engine_tests'), ['-a', '~No letter has a gap*'])],
];

const [count = '60', seed = '1'] = process.argv.slice(2);
copyTree();
if (spawnSync('ninja', ['-C', BUILD, 'engine_tests'], { stdio: ['ignore', 'ignore', 'inherit'] }).status !== 0) throw new Error('the tests cannot be built');
const files = fs.readdirSync(LAW).filter((file) => /^[A-Z]{2}-[A-Z]{2}\.json$/.test(file)).sort();
const names = {};
for (const file of files) leaves(JSON.parse(fs.readFileSync(path.join(LAW, file), 'utf8')), names, () => {});
const dice = random(Number(seed));
const KINDS = ['number', 'day', 'condition', 'source', 'name'];
const tried = [];
while (tried.length < Number(count)) {
  const file = dice.pick(files), full = path.join(LAW, file), original = fs.readFileSync(full, 'utf8');
  const pack = JSON.parse(original), found = [];
  leaves(pack, {}, (leaf) => found.push(leaf));
  const one = dice.pick(found.filter(({ kind }) => kind === KINDS[tried.length % KINDS.length]).concat(null));
  const what = one && change(one, pack, names, dice);
  if (!what) continue;
  fs.writeFileSync(full, JSON.stringify(pack, null, 1));
  let by = '';
  try {
    for (const [check, passes] of CHECKS) if (!by && passes(file.slice(0, -5)).status !== 0) by = check;
  } finally {
    fs.writeFileSync(full, original);
  }
  tried.push({ file, kind: one.kind, at: one.at, what, by });
  console.log(`${tried.length} ${by ? `caught by ${by}` : 'SURVIVES'}: ${file} ${one.at} ${one.kind}: ${what}`);
  fs.writeFileSync(path.join(TREE, `../packs-${seed}.json`), JSON.stringify(tried, null, 1));
}
for (const kind of [...KINDS, null]) {
  const own = tried.filter((one) => !kind || one.kind === kind), caught = own.filter(({ by }) => by).length;
  console.log(`${kind ?? 'all'}: ${caught} of ${own.length} (${Math.round((100 * caught) / own.length)} %)${kind ? '' : `, seed ${seed}`}`);
}
