// Runs the wearline program on a case held in memory.
import { spawnSync } from 'node:child_process';
import { program } from '../../built.mjs';

const TODAY = '2026-11-25'; // the answers must not change with the day of the run

// The assessment of a case; a case that cannot be read ends the run, for then nothing was measured.
export function assess(document) {
  const { stdout, status, error } = spawnSync(program(), ['check', '--json', '--today', TODAY, '-'], { input: JSON.stringify(document), encoding: 'utf8', maxBuffer: 1 << 26 });
  if (error) throw error;
  const result = JSON.parse(stdout);
  if (status !== 0 || result.errors.length) throw new Error(`${JSON.stringify(document)}: ${JSON.stringify(result.errors)}`);
  return result;
}

// "1240.5" or 1240.5 -> 124050, exact.
export function cents(amount) {
  const [whole, part = ''] = String(amount).split('.');
  return Number(whole) * 100 + Number(`${part}00`.slice(0, 2));
}

export const money = (c) => `${Math.floor(c / 100)}.${String(c % 100).padStart(2, '0')}`;
