// Includes of the engine point one way: a room takes from its own and from the rooms below it, and what is public stands below all.
// Modules point one way too: a header and the sources that carry it out are one module, what one of them includes or only declares
// ("struct Rules;") its module needs, and no module may need itself. No two headers define a type of one name.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SRC = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../engine/src');
/** Bottom to top, in the order of the flow. */
const ROOMS = ['values', 'json', 'format', 'case', 'wear', 'law', 'reading', 'judging', 'wording', 'rulebook', 'assess', 'letters', 'output'];

const sources = fs.readdirSync(SRC, { recursive: true }).filter((file) => /\.(h|cpp)$/.test(file)).sort();
const text = new Map(sources.map((file) => [file, fs.readFileSync(path.join(SRC, file), 'utf8')]));
const includes = sources.flatMap((file) =>
  text.get(file).split('\n').flatMap((line, i) => {
    const to = line.match(/^#include "([^"]+)"/)?.[1];
    return to && !to.startsWith('wearline/') ? [{ file, line: i + 1, to }] : [];
  }));
const room = (file) => (file.includes('/') ? file.split('/')[0] : 'engine');
const height = (file) => (room(file) === 'engine' ? ROOMS.length : ROOMS.indexOf(room(file)));

const types = [...text].filter(([file]) => file.endsWith('.h')).flatMap(([file, source]) =>
  [...source.matchAll(/^(?:struct|class|enum class|enum) (\w+)(?: final)?(?: :[^{;]*)? \{/gm)].map(([, name]) => ({ name, file })));

/** A header and the source of its name; a source without a header of its name carries out the one it includes first, if that is of its room. */
function moduleOf(file) {
  const bare = file.replace(/\.(h|cpp)$/, '');
  if (file.endsWith('.h') || text.has(`${bare}.h`)) return bare;
  const first = text.get(file).match(/^#include "([^"]+)"/m)?.[1] ?? '';
  return text.has(first) && room(first) === room(file) ? first.slice(0, -2) : bare;
}

/** What each module needs of others, with the line that says so. */
function needs() {
  const found = new Map();
  const add = (file, line, to) => {
    const from = moduleOf(file), module = to.replace(/\.h$/, '');
    if (!found.has(from)) found.set(from, new Map());
    if (module !== from && !found.get(from).has(module)) found.get(from).set(module, `${file}:${line}`);
  };
  for (const { file, line, to } of includes) add(file, line, to);
  for (const [file, source] of text)
    source.split('\n').forEach((line, i) => {
      const name = line.match(/^(?:struct|class|enum class) (\w+)(?: : \w[\w:]*)?;/)?.[1];
      const defined = name && types.find((type) => type.name === name);
      if (defined) add(file, i + 1, defined.file);
    });
  return found;
}

/** Modules that need themselves, each as the path back to itself with the lines that lead there. */
function circles() {
  const next = needs(), found = [], state = new Map();
  const visit = (module, trail) => {
    if (state.get(module) === 'done') return;
    const again = trail.findIndex((step) => step.module === module);
    if (again >= 0) return found.push(trail.slice(again).map((step) => `${step.module} -(${step.by})-> `).join('') + module);
    for (const [to, by] of next.get(module) ?? []) visit(to, [...trail, { module, by }]);
    state.set(module, 'done');
  };
  for (const module of next.keys()) visit(module, []);
  return found;
}

/** Names at the outermost of a header: two types of one name in one namespace break the rule of one definition, and linking mixes them up. */
function namesakes() {
  const where = new Map();
  for (const { name, file } of types) where.set(name, [...(where.get(name) ?? []), file]);
  return [...where].filter(([, files]) => files.length > 1).map(([name, files]) => `two types are called ${name}: ${files.join(', ')}`);
}

const faults = [
  ...namesakes(),
  ...includes.filter(({ to }) => height(to) < 0).map(({ file, line, to }) => `engine/src/${file}:${line} includes "${to}", which is in no room of ${ROOMS.join(', ')}`),
  ...includes.filter(({ file, to }) => height(to) > height(file)).map(({ file, line, to }) => `engine/src/${file}:${line} includes "${to}": ${room(to)} stands above ${room(file)}`),
  ...circles().map((circle) => `a circle of modules: ${circle}`),
];
for (const fault of faults) console.log(fault);
console.log(`${includes.length - faults.length} passed, ${faults.length} failed`);
process.exitCode = faults.length || !includes.length ? 1 : 0;
