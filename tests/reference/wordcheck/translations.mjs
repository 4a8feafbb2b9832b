// A law pack beside its Spanish: which sentences a person sees, and what a translation must keep of them.
import { createHash } from 'node:crypto';
import { rulesOf } from '../packcheck/references.mjs';
import { figures, sentences, words } from './sentences.mjs';

export const LONGEST = 30; // words in a Spanish sentence, which needs more of them than the English one
const SPOKEN = ['text', 'whenText', 'ifMissedText', 'ifMissingText', 'check'];

const spoken = (entry, members) => Object.fromEntries(members.filter((m) => entry[m]).map((m) => [m, entry[m]]));
const byId = (list, members) => Object.fromEntries((list ?? []).map((entry) => [entry.id, spoken(entry, members)]));
const filled = (entries) => Object.fromEntries(Object.entries(entries).filter(([, said]) => Object.keys(said).length));

/** { "rules/statement": { text: "..." }, "facts/own-work": { question }, "checkThis/0": { text } }: what a person may read of a pack. */
export function englishOf(pack) {
  const groups = {
    rules: byId(rulesOf(pack).map(({ rule }) => rule), SPOKEN),
    facts: byId(pack.facts, ['question']),
    events: byId(pack.events, ['question']),
    checkThis: { ...(pack.checkThis ?? []).map((doubt) => spoken(doubt, ['text'])) },
  };
  return Object.fromEntries(Object.entries(groups).flatMap(([group, entries]) => Object.entries(filled(entries)).map(([id, said]) => [`${group}/${id}`, said])));
}

/** The entries of a translation under the same names; the objects are those of the file. */
export const spanishOf = (overlay) => Object.fromEntries(['rules', 'facts', 'events', 'checkThis']
  .flatMap((group) => Object.entries(overlay[group] ?? {}).map(([id, said]) => [`${group}/${id}`, said])));

/** Which English a translation was made from: the first 8 digits of the SHA-256 of its sentences, each on a line. */
export const seal = (english) => createHash('sha256').update(Object.values(english).join('\n')).digest('hex').slice(0, 8);

/** The overlay with `of` in each entry that the pack has. */
export function sealed(overlay, pack) {
  const english = englishOf(pack);
  const out = structuredClone(overlay);
  for (const [name, said] of Object.entries(spanishOf(out))) if (english[name]) said.of = seal(english[name]);
  return out;
}

// Small numbers as words. A number in figures may become a word and the other way round.
const IN_ENGLISH = { 0: 'zero|none|no|nothing', 0.5: 'half', 1: 'one|a|an|each|single|first', 1.5: 'one and a half', 2: 'two|both|second|twice|double|doubled|half', 3: 'three|third|three-fold|triple|tripled|quarters?', 4: 'four|fourth|quarters?', 5: 'five|fifth',
  6: 'six|sixth', 7: 'seven|seventh', 8: 'eight|eighth', 9: 'nine|ninth', 10: 'ten|tenth', 11: 'eleven|eleventh', 12: 'twelve|twelfth', 13: 'thirteen', 14: 'fourteen|fourteenth', 15: 'fifteen|fifteenth',
  16: 'sixteen', 18: 'eighteen', 20: 'twenty|twentieth', 21: 'twenty-one|twenty-first', 24: 'twenty-four', 25: 'twenty-five', 30: 'thirty|thirtieth', 31: 'thirty-first', 45: 'forty-five|forty-fifth', 60: 'sixty|sixtieth', 90: 'ninety|ninetieth' };
const IN_SPANISH = { 0: 'cero|ningún|ninguna?|nada', 0.5: 'medi[oa]|mitad', 1: 'un|una|uno|cada|primer[oa]?|sol[oa]', 1.5: 'un[oa]? .*y medi[oa]', 2: 'dos|segund[oa]|ambos|ambas|doble|mitad|medi[oa]', 3: 'tres|tercer[oa]?|tercio|triple|cuartos', 4: 'cuatro|cuart[oa]s?|trimestres?', 5: 'cinco|quint[oa]',
  6: 'seis|sexto', 7: 'siete|séptimo', 8: 'ocho|octavo', 9: 'nueve', 10: 'diez|décim[oa]', 11: 'once', 12: 'doce', 13: 'trece', 14: 'catorce', 15: 'quince',
  16: 'dieciséis', 18: 'dieciocho', 20: 'veinte', 21: 'veintiuno|veintiún', 24: 'veinticuatro', 25: 'veinticinco', 30: 'treinta', 31: 'treinta y uno', 45: 'cuarenta y cinco', 60: 'sesenta', 90: 'noventa' };
// Words that always speak of a number; "one", "second" and "half" have other uses.
const COUNTED = { two: 2, twice: 2, double: 2, three: 3, triple: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, twelve: 12, fourteen: 14, fifteen: 15, twenty: 20, thirty: 30, forty: 40, sixty: 60, ninety: 90 };

const wordIn = (text, pattern) => pattern !== undefined && new RegExp(`(?<![\\p{L}\\p{N}])(?:${pattern})(?![\\p{L}\\p{N}])`, 'iu').test(text);
const tells = (text, number, inWords) => figures(text).includes(number) || wordIn(text, inWords[number]);
const countedIn = (english) => Object.entries(COUNTED).filter(([word]) => wordIn(english.replace(/\b\w+-(?=\w)|(?<=\w)-\w+\b/g, ' '), word)).map(([, n]) => String(n));

/** Numbers of one sentence that the other one does not tell. */
export function lostNumbers(english, spanish) {
  const lost = [...new Set([...figures(english), ...countedIn(english)])].filter((n) => !tells(spanish, n, IN_SPANISH));
  const added = [...new Set(figures(spanish))].filter((n) => !tells(english, n, IN_ENGLISH));
  return [...lost.map((n) => `${n} is not in the Spanish`), ...added.map((n) => `${n} is not in the English`)];
}

function sentenceProblems(where, english, spanish) {
  const long = sentences(spanish).map((s) => [words(s).length, s]).filter(([n]) => n > LONGEST);
  return [
    ...(spanish === english ? [`${where} is still English`] : []),
    ...(spanish.trim() !== spanish || spanish.includes('  ') ? [`${where} has a stray space`] : []),
    ...lostNumbers(english, spanish).map((p) => `${where}: ${p}`),
    ...long.map(([n, s]) => `${where}: ${n} words: ${s}`),
  ];
}

function entryProblems(name, english, spanish) {
  const members = Object.keys(spanish).filter((m) => m !== 'of' && m !== 'day');
  return [
    ...members.filter((m) => !(m in english)).map((m) => `${name}/${m}: the pack has no such sentence`),
    ...Object.keys(english).filter((m) => !spanish[m]).map((m) => `${name}/${m} is not translated`),
    ...members.filter((m) => m in english).flatMap((m) => sentenceProblems(`${name}/${m}`, english[m], spanish[m])),
    ...(spanish.of === seal(english) ? [] : [spanish.of ? `${name}: the English has changed since; read it again, then --seal` : `${name}: not sealed`]),
  ];
}

/** What is wrong with a translation that the schema allows. */
export function translationProblems(pack, overlay) {
  const english = englishOf(pack);
  const spanish = spanishOf(overlay);
  return [
    ...(overlay.jurisdiction === pack.jurisdiction ? [] : [`jurisdiction ${overlay.jurisdiction} is not the pack's`]),
    ...Object.keys(english).filter((name) => !spanish[name]).map((name) => `${name} is not translated`),
    ...Object.entries(spanish).flatMap(([name, said]) => (english[name] ? entryProblems(name, english[name], said) : [`${name}: the pack has nothing of this name`])),
  ];
}
