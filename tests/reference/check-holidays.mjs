// Compares the engine's legal holidays of each place with the npm library date-holidays, 2020 to 2035. Every difference must stand,
// explained, in holiday-differences.json; one that is not listed fails, and so does a listed one that is gone.
//
//   node tests/reference/check-holidays.mjs [path of wearline_probe] [--list]      --list prints the differences as they are

import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import Holidays from 'date-holidays';
import { probe as built } from '../built.mjs';

const FROM = 2020;
const TO = 2035;
const here = new URL('.', import.meta.url);
const args = process.argv.slice(2);
const list = args.includes('--list');
const probe = args.find((a) => !a.startsWith('--')) ?? built();

const places = readdirSync(new URL('../../engine/rules/holidays/', here)).filter((f) => f.endsWith('.json')).map((f) => f.slice(0, -5)).sort();
const run = spawnSync(probe, { input: places.map((p) => `holidays ${p} ${FROM} ${TO}`).join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 26 });
if (run.status !== 0) throw new Error(run.stderr || `${probe} did not run`);
const answers = run.stdout.trimEnd().split('\n');

/// Day to name, of the engine. Sundays are left out on both sides: no counting rule needs them to be holidays.
const isSunday = (iso) => new Date(`${iso}T00:00:00Z`).getUTCDay() === 0;
const ours = new Map(places.map((place, i) => [place, new Map(answers[i].split('; ').filter(Boolean).map((e) => [e.slice(0, 10), e.slice(11)]).filter(([day]) => !isSunday(day)))]));

/// Days on which public offices and banks close, by the library.
function theirs(place) {
  const [country, state] = place.split('-');
  const calendar = new Holidays(country, state, { types: ['public', 'bank'] });
  const days = new Map();
  for (let year = FROM; year <= TO; year += 1)
    for (const h of calendar.getHolidays(year, 'en') ?? []) {
      const day = h.date.slice(0, 10);
      if (day >= `${FROM}-01-01` && day <= `${TO}-12-31` && !isSunday(day)) days.set(day, h.name.replace(/ \(substitute day\)$/, ''));
    }
  return days;
}

/// Differences grouped by name: { "only the engine": { name: [days] }, "only the library": {...} }.
function differences(place) {
  const library = theirs(place);
  const engine = ours.get(place);
  const group = (days, other) => {
    const out = {};
    for (const [day, name] of days) if (!other.has(day)) (out[name] ??= []).push(day);
    return out;
  };
  return { engine: group(engine, library), library: group(library, engine) };
}

const { places: listed = {}, reasons = {} } = list ? {} : JSON.parse(readFileSync(new URL('holiday-differences.json', here), 'utf8'));
let passed = 0;
let failed = 0;
const complain = (text) => {
  failed += 1;
  console.error(text);
};
for (const place of places) {
  const found = differences(place);
  if (list) {
    for (const side of ['engine', 'library'])
      for (const [name, days] of Object.entries(found[side])) console.log(place, `only the ${side}:`, name, days.length > 4 ? `${days.length} days: ${days.slice(0, 3).join(' ')} ...` : days.join(' '));
    continue;
  }
  const before = failed;
  const explained = listed[place] ?? [];
  for (const side of ['engine', 'library']) {
    for (const [name, days] of Object.entries(found[side])) {
      const entry = explained.find((e) => e.only === side && e.name === name);
      if (!entry) complain(`${place}: ${name} (${days.join(', ')}) is only in the ${side}, and not explained`);
      else if (entry.days !== days.length) complain(`${place}: ${name} is only in the ${side} on ${days.length} days, not on ${entry.days}: ${days.join(', ')}`);
    }
    for (const entry of explained.filter((e) => e.only === side)) {
      if (!found[side][entry.name]) complain(`${place}: ${entry.name} is no longer only in the ${side}`);
      if (!reasons[entry.why] && !entry.why?.includes(' ')) complain(`${place}: ${entry.name} has no explanation`);
    }
  }
  if (failed === before) passed += 1;
}
for (const place of Object.keys(listed)) if (!places.includes(place)) complain(`${place} has explained differences and no file`);
if (!list) {
  console.log(`holidays: ${places.length} places compared with date-holidays for ${FROM} to ${TO}`);
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}
