// Compares the engine's counting of days with date-fns over generated periods: for each, the day the count reaches and the last day
// after weekends and legal holidays. The engine answers through the native program wearline_probe; the other side adds days, weeks,
// months and years, and finds business days, with date-fns. Holidays are the engine's own here (check-holidays.mjs compares those).
//
//   node tests/reference/check-counting.mjs [path of wearline_probe]

import { spawnSync } from 'node:child_process';
import { addBusinessDays, addDays, addMonths, addWeeks, addYears, format, isSaturday, isSunday } from 'date-fns';
import { probe as built } from '../built.mjs';

const CASES = 240_000;
const PLACES = ['US-WA', 'US-OH', 'US-TX', 'CA-BC', '-'];
const UNITS = ['calendar-day', 'calendar-day', 'calendar-day', 'week', 'month', 'year', 'business-day', 'hour'];
const SETS = ['-', 'u', 'uh', 'su', 'suh', 'h'];
const FIRST_YEAR = 2000;
const LAST_YEAR = 2040;

const probe = process.argv[2] ?? built();
const ask = (lines) => {
  const run = spawnSync(probe, { input: lines.join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(run.stderr || `${probe} did not run`);
  return run.stdout.trimEnd().split('\n');
};

// A small generator of numbers (mulberry32), so that every run asks the same.
let seed = 20260831;
const random = () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
};
const below = (n) => Math.floor(random() * n);
const pick = (list) => list[below(list.length)];

const iso = (day) => format(day, 'yyyy-MM-dd');
const holidays = new Map(PLACES.filter((p) => p !== '-').map((place) => {
  const [answer] = ask([`holidays ${place} ${FIRST_YEAR - 2} ${LAST_YEAR + 12}`]);
  return [place, new Set(answer.split('; ').filter(Boolean).map((entry) => entry.slice(0, 10)))];
}));

const inSet = (set, day, place) =>
  (set.includes('s') && isSaturday(day)) || (set.includes('u') && isSunday(day)) || (set.includes('h') && place !== '-' && holidays.get(place).has(iso(day)));

/// n days that are not in the set, counted from the day after the first (or from the first, where it is counted).
function step(from, n, sign, set, place, excludeFirst) {
  if (sign === 1 && excludeFirst && (set === 'su' || (set === 'suh' && place === '-'))) return addBusinessDays(from, n);
  let day = from;
  let counted = !excludeFirst && !inSet(set, day, place) ? 1 : 0;
  while (counted < n) {
    day = addDays(day, sign);
    if (!inSet(set, day, place)) counted += 1;
  }
  return day;
}

function reached(q) {
  const sign = q.direction === 'before' ? -1 : 1;
  const back = q.excludeFirst ? 0 : -sign;
  if (q.n === 0) return q.from;
  switch (q.unit) {
    case 'week': return addDays(addWeeks(q.from, sign * q.n), back);
    case 'month': return addDays(addMonths(q.from, sign * q.n), back);
    case 'year': return addDays(addYears(q.from, sign * q.n), back);
    case 'hour': return addDays(q.from, sign * Math.ceil(q.n / 24));
    case 'business-day': return step(q.from, q.n, sign, q.skip, q.place, q.excludeFirst);
    default: return q.n < q.shortUnder ? step(q.from, q.n, sign, q.skip, q.place, q.excludeFirst) : addDays(q.from, sign * q.n + back);
  }
}

function expected(q) {
  const end = reached(q);
  let last = end;
  if (q.direction === 'after' && q.n > 0 && q.unit !== 'hour') while (inSet(q.roll, last, q.place)) last = addDays(last, 1);
  return `${iso(end)} ${iso(last)}`;
}

const questions = Array.from({ length: CASES }, () => {
  const unit = pick(UNITS);
  const most = { week: 30, month: 40, year: 10, hour: 200, 'business-day': 40 }[unit] ?? 120;
  return {
    from: new Date(FIRST_YEAR + below(LAST_YEAR - FIRST_YEAR), below(12), 1 + below(31)),
    n: below(most + 1), unit, direction: random() < 0.2 ? 'before' : 'after', roll: pick(SETS),
    skip: unit === 'business-day' ? pick(['su', 'suh', 'u', 'uh']) : pick(SETS), excludeFirst: random() < 0.85,
    shortUnder: pick([0, 0, 7, 11]), place: pick(PLACES),
  };
});
const answers = ask(questions.map((q) => `count ${iso(q.from)} ${q.n} ${q.unit} ${q.direction} ${q.roll} ${q.skip} ${q.excludeFirst ? 1 : 0} ${q.shortUnder} ${q.place}`));
let wrong = answers.length === questions.length ? 0 : 1;
questions.forEach((q, i) => {
  const wanted = expected(q);
  if (answers[i] === wanted) return;
  wrong += 1;
  if (wrong <= 10) console.error(`${JSON.stringify({ ...q, from: iso(q.from) })}: engine ${answers[i]}, date-fns ${wanted}`);
});
console.log(`counting: ${questions.length} periods compared with date-fns, ${wrong} differ`);
console.log(`${questions.length - wrong} passed, ${wrong} failed`);
process.exit(wrong === 0 ? 0 : 1);
