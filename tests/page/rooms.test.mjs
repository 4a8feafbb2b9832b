// The page's sources stand in rooms; what a module imports at once stands in its own room or in one below it, and never in a circle.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const SRC = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../site/src');
// Lowest first. What only names the types of another module is no import of it.
const rooms = ['generated', 'case', 'say', 'engine', 'app', 'parts', 'pictures', 'out', 'sections', ''];
const files = fs.readdirSync(SRC, { recursive: true }).map((f) => f.split(path.sep).join('/')).filter((f) => f.endsWith('.ts') && !f.endsWith('.d.ts') && !f.startsWith('generated/'));

const isTypeOnly = (what) => /^\s*type\b/.test(what) || /^\s*\{(?:\s*type [^,}]+,?)+\s*\}\s*$/.test(what);
function importsOf(file) {
  const text = fs.readFileSync(path.join(SRC, file), 'utf8');
  const found = [...text.matchAll(/^(?:import|export)\b([^;'"]*?)\bfrom '(\.[^']*)';/gm)].filter(([, what]) => !isTypeOnly(what)).map(([, , from]) => from);
  return found.map((from) => path.posix.join(path.posix.dirname(file), from)).map((at) => [at, `${at}.ts`, `${at}/index.ts`].find((f) => files.includes(f))).filter(Boolean);
}
const roomOf = (file) => (file.includes('/') ? file.split('/')[0] : '');
const graph = new Map(files.map((f) => [f, importsOf(f)]));

test('imports point one way', () => {
  const up = [...graph].flatMap(([f, all]) => all.filter((g) => rooms.indexOf(roomOf(g)) > rooms.indexOf(roomOf(f))).map((g) => `${f} -> ${g}`));
  assert.deepEqual(up, []);
  assert.deepEqual([...new Set(files.map(roomOf))].filter((r) => !rooms.includes(r) && r !== 'styles'), []);
});

test('no module imports itself by way of others', () => {
  const done = new Set();
  const circles = [];
  const go = (f, way) => {
    if (way.includes(f)) return void circles.push([...way.slice(way.indexOf(f)), f].join(' -> '));
    if (done.has(f)) return;
    graph.get(f).forEach((g) => go(g, [...way, f]));
    done.add(f);
  };
  files.forEach((f) => go(f, []));
  assert.deepEqual(circles, []);
});
