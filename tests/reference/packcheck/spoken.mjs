// What a rule counts with stands in its sentences too: written twice, once as data and once for a reader, a slip in either shows.
import { plusDays } from './dates.mjs';
import { rulesOf } from './references.mjs';

const WORDS = ['no|nothing|without|at once|before|after|until|until|only', 'one|an?|single|once|every|each', 'two|twice|double|second|both', 'three|treble|triple|third', 'four|fourth', 'five|fifth', 'six|sixth', 'seven',
  'eight', 'nine', 'ten|tenth', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen'];
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const PARTS_OF_ONE = { 0.25: 'quarter', 0.5: 'half', 0.75: 'three quarters' };

const sentences = (rule) => [rule.text, rule.ifMissedText, rule.ifMissingText, rule.whenText, rule.note, rule.check].filter(Boolean).join(' ').replace(/,(?=\d{3})/g, '');

/** The ways a number may be said. */
function forms(n) {
  const whole = Math.trunc(n), rest = n - whole;
  const said = [String(n), n.toFixed(2), `${+(n * 100).toFixed(4)} ?(%|percent|per cent)`];
  if (WORDS[n]) said.push(WORDS[n]);
  if (PARTS_OF_ONE[rest]) said.push(whole ? `${WORDS[whole].split('|')[0]} and (a|three) ${PARTS_OF_ONE[rest].split(' ').at(-1)}s?` : PARTS_OF_ONE[rest]);
  if (n % 7 === 0 && WORDS[n / 7]) said.push(`(${WORDS[n / 7]}) weeks?`);
  if (n < 1 && WORDS[Math.round(n * 100)]) said.push(`(${WORDS[Math.round(n * 100)]}) percent`);
  return said.map((form) => form.replace('.', '\\.'));
}
const says = (text, numbers) => new RegExp(`(?<![\\d.])(${numbers.flatMap(forms).join('|')})(?![\\d])`, 'i').test(text);

/** The numbers of a rule that a reader must meet: [where, the numbers of which one must be said]. */
function numbersOf(rule) {
  const found = [];
  const years = (months) => (months % 12 === 0 ? [months, months / 12, months / 12 + 1] : [months]);
  const add = (where, ...any) => found.push([where, any.map(Number)]);
  for (const leg of rule.legs ?? []) if (leg.count) add('count', leg.count);
  for (const name of ['days', 'months', 'weeks', 'amount', 'fixed', 'least', 'multiplier']) if (typeof rule[name] !== 'object' && Number(rule[name])) add(name, rule[name]);
  for (const name of ['minimumMonths', 'startsAfterMonths']) if (rule[name]) add(name, ...years(rule[name]));
  for (const name of ['amount', 'share', 'atLeast', 'times']) for (const holder of [rule.limit, rule.cap]) if (holder && Number(holder[name])) add(name, holder[name]);
  for (const name of ['fixed', 'atLeast', 'atMost', 'less', 'orFixed']) if (Number(rule.rate?.[name])) add(`rate ${name}`, rule.rate[name]);
  return found;
}

// What stands in another rule's sentence, and sums of two that are named apart.
const ELSEWHERE = {
  'US-MI': ['balance'], // it goes with the list, within the list's 30 days
  'US-NE': ['demand-before-2019'], // the 14 days of the refund it asks for
  'US-OR': ['portland-screening'], // one half month more than the month of another rule
  'US-UT': ['legal-notice'], // the five days are in the form of the notice
  'US-WV': ['statement-contractor', 'contractor-notice'], // the ordinary 60 or 45 days, and 15 more
  'US-WY': ['utilities-apply'], // 45 days, and 15 more
};
const elsewhere = (pack, rule) => ELSEWHERE[pack.jurisdiction]?.includes(rule.id);

function number(pack, rule, problem) {
  if (elsewhere(pack, rule)) return;
  for (const [where, any] of numbersOf(rule)) {
    if (!says(sentences(rule), any)) problem(`${rule.id}: ${where} ${any[0]} is in none of its sentences`);
  }
}

const UNITS = { 'business-day': /business|working|weekend|saturday|court day/i, 'calendar-day': /day|week|at once|before|after|then|time/i, week: /week/i, month: /month/i, year: /year/i, hour: /hour/i };

function unit(pack, rule, problem) {
  if (elsewhere(pack, rule)) return;
  for (const leg of rule.legs ?? []) {
    if (leg.count && !UNITS[leg.unit]?.test(sentences(rule))) problem(`${rule.id}: ${leg.unit} is in none of its sentences`);
    if (leg.unit === 'calendar-day' && new RegExp(`\\b${leg.count} (business|working) days`).test(rule.text)) problem(`${rule.id}: its text counts business days`);
  }
}

/** A day on which the law changed is named where it was read, or another rule of the pack changes with it. */
function day(pack, problem) {
  const all = rulesOf(pack).flatMap(({ rule }) => ['from', 'to'].filter((name) => rule[name]).map((name) => ({ rule, name, on: rule[name] })));
  const first = ({ name, on }) => (name === 'to' ? plusDays(on, 1) : on);
  for (const one of all) {
    // A last day may be named by itself or by the first day of what followed.
    const days = [...new Set([one.on, first(one)])].map((text) => text.split('-').map(Number));
    const written = days.flatMap(([y, m, d]) => [`${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`, `${d} ${MONTHS[m - 1]} ${y}`, `${MONTHS[m - 1]} ${d}, ${y}`]);
    const where = [sentences(one.rule), ...(one.rule.source ?? []).map((key) => JSON.stringify(pack.sources[key] ?? {}))].join(' ');
    if (written.some((form) => where.includes(form))) continue;
    if (all.some((other) => other.rule !== one.rule && first(other) === first(one))) continue;
    problem(`${one.rule.id}: the day ${one.on} is named in no sentence and no source, and no other rule changes on it`);
  }
}

/** [part, what the data holds, what a sentence must then hold] */
const WORDED = [
  ['remedies', (r) => r.needs === 'bad-faith', /bad faith|good faith/i], ['remedies', (r) => r.needs === 'wilful', /wil+ful|intention|knowing|deliberate|on purpose/i],
  ['remedies', (r) => r.base === 'whole-deposit', /(whole|full|entire|equal to the|the) deposit/i], ['papers', (r) => r.requires.includes('receipts'), /receipt|bill|invoice/i],
  ['papers', (r) => r.how?.includes('email'), /e-?mail|electronic/i], ['interest', (r) => r.owed === true, /owes|owed|gets|must pay|earn|belongs|entitled/i], ['interest', (r) => r.owed === false, /\bno\b|not\b|keeps|without|belongs|lost|loses/i],
  ['interest', (r) => r.method === 'compound-yearly', /compound|added/i], ['allows', (r) => r.closed === true, /only|nothing else|no other/i],
  ['bars', (r) => r.effect === 'limit', /at most|up to|more than|limit|only|over/i], ['inspection', (r) => r.right === true, /may|must|right/i], ['inspection', (r) => r.right === false, /\bno\b|not/i],
];
function words(part, rule, problem) {
  for (const [of, holds, said] of WORDED) if (of === part && holds(rule) && !said.test(sentences(rule))) problem(`${rule.id}: its data and its sentences disagree (${said.source})`);
}

/** Problems of one pack: data that its own sentences do not say. */
export function checkSpoken(pack, problem) {
  for (const { part, rule } of rulesOf(pack)) {
    number(pack, rule, problem);
    unit(pack, rule, problem);
    words(part, rule, problem);
  }
  day(pack, problem);
}
