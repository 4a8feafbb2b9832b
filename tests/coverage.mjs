// What the engine's tests reach, from the counters that tests/run coverage left: lines and branches, room by room.
//   node tests/coverage.mjs [--missed [ROOM]]     with the lines and branches that nothing reached
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '..');
const FOLDER = path.join(ROOT, 'build/coverage'), SOURCES = path.join(ROOT, 'engine/src');
const PROGRAM = path.join(FOLDER, 'tests/engine/engine_tests'), DATA = path.join(FOLDER, 'engine.profdata');
const RAW = path.join(FOLDER, 'raw');

function run(command, args) {
  const done = spawnSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 30 });
  if (done.status !== 0) throw done.error ?? new Error(done.stderr);
  return done.stdout;
}

run('llvm-profdata-14', ['merge', '-sparse', ...fs.readdirSync(RAW).map((file) => path.join(RAW, file)), '-o', DATA]);
const missed = process.argv.includes('--missed');
const [{ files }] = JSON.parse(run('llvm-cov-14', ['export', PROGRAM, `-instr-profile=${DATA}`, '-skip-expansions', ...(missed ? [] : ['-summary-only']), SOURCES])).data;

const rooms = new Map();
for (const { filename, summary } of files) {
  const room = path.relative(SOURCES, path.resolve(filename)).split('/').slice(0, -1)[0] ?? 'engine.cpp';
  if (room === '..') continue; // the tests themselves
  for (const key of [room, 'all']) {
    const sum = rooms.get(key) ?? { lines: [0, 0], branches: [0, 0] };
    for (const what of ['lines', 'branches']) {
      sum[what][0] += summary[what].covered;
      sum[what][1] += summary[what].count;
    }
    rooms.set(key, sum);
  }
}
const share = ([covered, count]) => `${((100 * covered) / Math.max(1, count)).toFixed(1).padStart(5)} % of ${String(count).padStart(6)}`;
for (const [room, { lines, branches }] of [...rooms].sort(([a], [b]) => (a === 'all') - (b === 'all') || a.localeCompare(b)))
  console.log(`  ${room.padEnd(10)} lines ${share(lines)}   branches ${share(branches)}`);

if (missed) {
  const wanted = process.argv[process.argv.indexOf('--missed') + 1];
  for (const { filename, segments, branches } of files) {
    const name = path.relative(SOURCES, filename);
    if (wanted && !name.startsWith(wanted)) continue;
    const never = new Set();
    segments.forEach(([line, , count, has], i) => {
      if (has && count === 0) for (let at = line; at <= (segments[i + 1]?.[0] ?? line); ++at) never.add(at);
    });
    const turns = branches.filter(([, , , , yes, no]) => (yes === 0) !== (no === 0)).map(([line, column, , , yes]) => `${line}:${column}${yes === 0 ? ' never true' : ' never false'}`);
    if (never.size) console.log(`${name}: lines ${[...never].join(' ')}`);
    if (turns.length) console.log(`${name}: branches ${turns.join(', ')}`);
  }
}
