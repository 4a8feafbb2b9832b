// The walk through the home and the dangers of its things: every name is one of the wear guide's, every fault of a thing can be tapped,
// a danger comes before advice, and advice is two short sentences without a price. Compared with: engine/rules/wear/catalogue.json.
import fs from 'node:fs';

const rules = (name) => JSON.parse(fs.readFileSync(new URL(`../../engine/rules/${name}`, import.meta.url), 'utf8'));
const { elements } = rules('wear/catalogue.json');
const { rooms, things } = rules('walk/home.json');
const { advice } = rules('walk/advice.json');
const { hazards, sources } = rules('hazards.json');
const states = ['worn', 'damaged', 'dirty', 'missing'];
const faultsOf = new Map(elements.map((e) => [e.id, e.findings]));
let passed = 0;
const failed = [];
const check = (good, what) => (good ? passed++ : failed.push(what));

/** "element", "element/finding", "element@state" or "@state". */
function isPlace(place, withStates = false) {
  const [, element, finding, state] = /^([a-z-]*)(?:\/([a-z-]+)|@([a-z]+))?$/.exec(place) ?? [];
  if (element === undefined || (state && (!withStates || !states.includes(state)))) return false;
  if (element === '') return Boolean(state);
  return faultsOf.has(element) && (!finding || faultsOf.get(element).some((f) => f.id === finding));
}
const texts = (text) => ['en', 'es'].map((language) => text?.[language] ?? '');
const sentences = (text) => text.split(/(?<=[.!?])\s+/);
const words = (text) => text.split(/\s+/).length;

for (const room of rooms) {
  check(texts(room.label).every(Boolean), `${room.id} has a name in both languages`);
  for (const id of room.things.flat()) check(things[id], `${room.id}: ${id} has its states`);
}
const inRooms = new Set(rooms.flatMap((r) => r.things.flat()));
for (const [id, of] of Object.entries(things)) {
  check(faultsOf.has(id), `${id} is a thing of the wear guide`);
  const named = states.flatMap((s) => of[s] ?? []);
  check(named.length > 0, `${id} has a fault`);
  for (const finding of named) check(isPlace(`${id}/${finding}`), `${id}/${finding} is a fault of the wear guide`);
  for (const finding of of.worn ?? []) check(faultsOf.get(id)?.find((f) => f.id === finding)?.verdict === 'wear', `${id}/${finding} is wear there too`);
  if (of.dirtyAs) check(isPlace(of.dirtyAs) && of.dirtyAs.includes('/'), `${id}: dirtyAs ${of.dirtyAs}`);
  if (inRooms.has(id))
    // Work alone and what is charged as routine are no state of a home.
    for (const f of faultsOf.get(id) ?? [])
      check(named.includes(f.id) || f.verdict === 'wear' || ['work-only', 'touch-up'].includes(f.id), `${id}/${f.id} can be tapped`);
}
for (const row of advice) {
  for (const place of row.at) check(isPlace(place, true), `advice for ${place}`);
  check(['self', 'ask', 'licensed'].includes(row.who) && Number.isInteger(row.minutes) && row.minutes > 0, `advice for ${row.at[0]}: who, minutes`);
  for (const text of texts(row.text)) {
    check(text && sentences(text).length <= 2, `two sentences at most: ${text}`);
    check(sentences(text).every((s) => words(s) <= 25), `25 words a sentence at most: ${text}`);
    check(!/[$€]|\bUSD\b/.test(text), `no price: ${text}`);
  }
}
for (const state of states) check(advice.some((row) => row.at.includes(`@${state}`)), `advice for every ${state} thing`);
for (const h of hazards) {
  for (const place of [...h.at, ...h.stop]) check(isPlace(place), `${h.code}: ${place}`);
  for (const place of h.stop) check(h.at.includes(place) || h.at.includes(place.split('/')[0]), `${h.code}: ${place} is shown where it stops`);
  for (const id of h.source) check(sources[id], `${h.code}: source ${id}`);
  for (const text of texts(h.text)) check(text && sentences(text).every((s) => words(s) <= 25), `${h.code}: short sentences in both languages`);
  for (const word of h.words ?? []) check(word === word.toLowerCase(), `${h.code}: "${word}" in small letters`);
}
for (const [id, s] of Object.entries(sources)) check(s.title && ['memory', 'practice', 'official-guide', 'statute-text', 'secondary'].includes(s.read), `source ${id} says how it was read`);

for (const f of failed) console.log(`failed: ${f}`);
console.log(`${passed} passed, ${failed.length} failed`);
process.exitCode = failed.length || !passed ? 1 : 0;
