// Includes of the engine point one way: a room takes from its own and from the rooms below it, and what is public stands below all.
// No two headers define a type of one name.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SRC = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../engine/src');
/** Bottom to top, in the order of the flow. */
const ROOMS = ['values', 'json', 'format', 'case', 'wear', 'law', 'reading', 'judging', 'wording', 'rulebook', 'assess', 'letters', 'output'];

const sources = fs.readdirSync(SRC, { recursive: true }).filter((file) => /\.(h|cpp)$/.test(file)).sort();
const includes = sources.flatMap((file) =>
  fs.readFileSync(path.join(SRC, file), 'utf8').split('\n').flatMap((line, i) => {
    const to = line.match(/^#include "([^"]+)"/)?.[1];
    return to && !to.startsWith('wearline/') ? [{ file, line: i + 1, to }] : [];
  }));
const room = (file) => (file.includes('/') ? file.split('/')[0] : 'engine');
const height = (file) => (room(file) === 'engine' ? ROOMS.length : ROOMS.indexOf(room(file)));

/** Inside a room: the includes that close a circle of headers. */
function circles() {
  const next = new Map();
  for (const { file, to } of includes) if (file.endsWith('.h')) next.set(file, [...(next.get(file) ?? []), to]);
  const found = [], state = new Map();
  const visit = (file, trail) => {
    if (state.get(file) === 'done') return;
    if (state.get(file) === 'open') return found.push([...trail.slice(trail.indexOf(file)), file].join(' -> '));
    state.set(file, 'open');
    for (const to of next.get(file) ?? []) visit(to, [...trail, file]);
    state.set(file, 'done');
  };
  for (const file of next.keys()) visit(file, []);
  return found;
}

/** Names at the outermost of a header: two types of one name in one namespace break the rule of one definition, and linking mixes them up. */
function namesakes() {
  const where = new Map();
  for (const file of sources.filter((f) => f.endsWith('.h')))
    for (const [, name] of fs.readFileSync(path.join(SRC, file), 'utf8').matchAll(/^(?:struct|class|enum class|enum) (\w+)(?: final)?(?: :[^{;]*)? \{/gm))
      where.set(name, [...(where.get(name) ?? []), file]);
  return [...where].filter(([, files]) => files.length > 1).map(([name, files]) => `two types are called ${name}: ${files.join(', ')}`);
}

const faults = [
  ...namesakes(),
  ...includes.filter(({ to }) => height(to) < 0).map(({ file, line, to }) => `engine/src/${file}:${line} includes "${to}", which is in no room of ${ROOMS.join(', ')}`),
  ...includes.filter(({ file, to }) => height(to) > height(file)).map(({ file, line, to }) => `engine/src/${file}:${line} includes "${to}": ${room(to)} stands above ${room(file)}`),
  ...circles().map((circle) => `a circle of headers: ${circle}`),
];
for (const fault of faults) console.log(fault);
console.log(`${includes.length - faults.length} passed, ${faults.length} failed`);
process.exitCode = faults.length || !includes.length ? 1 : 0;
