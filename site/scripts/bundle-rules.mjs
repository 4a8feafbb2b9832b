// Bundles engine/rules for the page, so that it fetches what one case needs and no more:
//   site/public/generated/rules/shared.<hash>.json   what every case needs, English included
//                               words-es.<hash>.json another language: its sentences, and the shared files that hold it, whole
//                               US-WA.<hash>.json    one law pack with the federal and local rules over it and the holidays it counts by
//                               US-WA-es.<hash>.json the sentences of that pack in another language
//                               reading.<hash>.json  the words for reading: a statement that came, a charge that names no thing
//                               letters.<hash>.json  the sentences of letters
//   site/src/generated/rules-index.json              { shared, reading, letters, languages: { es }, packs: { "US-WA": { file, name, currency,
//                                                 words: { es: file }, names: { es: name, where it is another } } } }
// A bundle is one object: paths under engine/rules to the documents found there. The engine's `load` takes it as it is.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '..');
const RULES = path.join(SITE, '../engine/rules');
const OUT = path.join(SITE, 'public/generated/rules');
const INDEX = path.join(SITE, 'src/generated/rules-index.json');

// Schemas describe the rules; page.json, page-*.json and cli.json are the sentences of the views themselves, which bring their own;
// precedents/cases.json says who decided what, for those who look; walk/ is for the walk through the home, which brings it along.
const forTheEngine = (file) =>
  file.endsWith('.json') && !file.startsWith('schema/') && !file.startsWith('walk/') && !/^(page(-[a-z]+)?|cli)\.json$/.test(path.basename(file)) && file !== 'precedents/cases.json';

/** Every rules file the engine reads: path under engine/rules (with slashes) to its document. */
export function readRules(folder = RULES) {
  const files = walk(folder).map((file) => path.relative(folder, file).split(path.sep).join('/'));
  const documents = files.filter(forTheEngine).sort().map((file) => [file, readJson(path.join(folder, file))]);
  return new Map(documents);
}

function walk(folder) {
  return fs.readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? walk(path.join(folder, entry.name)) : [path.join(folder, entry.name)]);
}

function readJson(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'));
  } catch (error) {
    throw new Error(`${file}: ${error.message}`);
  }
}

const isObject = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);
/** { "en": ..., "es": ... }: one text in several languages. */
const isTranslated = (value) => isObject(value) && 'en' in value && Object.keys(value).length > 1 && Object.keys(value).every((key) => /^[a-z]{2}$/.test(key));

/** A document with English alone. */
export function inEnglish(value) {
  if (Array.isArray(value)) return value.map(inEnglish);
  if (!isObject(value)) return value;
  if (isTranslated(value)) return { en: value.en };
  return mapMembers(value, inEnglish);
}

const mapMembers = (object, change) => Object.fromEntries(Object.entries(object).map(([key, inner]) => [key, change(inner)]));

/** What the engine leaves unread in these files: remarks for their maintainers, and what only the checkers of the tables read. */
const unread = { every: ['about'], 'law/': ['note'], 'law-layers/': ['note'], 'wear/': ['note'], 'lives/': ['note', 'classes'],
  'hazards.json': ['source', 'sources', 'stop', 'builtBefore'] };
const unreadIn = (file) => Object.entries(unread).flatMap(([where, members]) => (where === 'every' || file.startsWith(where) ? members : []));

function without(value, members) {
  if (Array.isArray(value)) return value.map((inner) => without(inner, members));
  if (!isObject(value)) return value;
  return mapMembers(Object.fromEntries(Object.entries(value).filter(([key]) => !members.includes(key))), (inner) => without(inner, members));
}

const holdsLanguage = (value, language) =>
  isObject(value) ? (isTranslated(value) && language in value) || Object.values(value).some((inner) => holdsLanguage(inner, language))
  : Array.isArray(value) && value.some((inner) => holdsLanguage(inner, language));

/** Splits the rules into bundles, each a Map of paths to documents: shared, languages by code, packs by jurisdiction. */
export function splitRules(rules) {
  const packFiles = [...rules.keys()].filter((file) => /^law\/[^/]+\.json$/.test(file));
  // What lies over a pack comes before it, so that the order is that of the names, whichever place was loaded first.
  const packs = new Map(packFiles.map((file) => [rules.get(file).jurisdiction, [...layersOf(rules.get(file), rules), file, ...holidaysOf(rules.get(file), rules)]]));
  const words = new Map(packFiles.map((file) => [rules.get(file).jurisdiction, wordsOf(path.basename(file), rules)]));
  const ofPacks = new Set([...packs.values(), ...[...words.values()].flatMap((files) => [...files.values()])].flat());
  const languageOf = (file) => /^wording\/([^/]+)\//.exec(file)?.[1];
  const reading = [...rules.keys()].filter((file) => file.startsWith('recogniser/') || file === 'wording/en/reading.json');
  const letters = [...rules.keys()].filter((file) => file === 'letters.json' || file === 'wording/en/letter.json');
  const apart = new Set([...ofPacks, ...reading, ...letters, ...holidaysOfNobody(rules)]);
  const shared = [...rules.keys()].filter((file) => !apart.has(file) && (languageOf(file) ?? 'en') === 'en');
  const codes = [...new Set([...rules.keys()].map(languageOf))].filter((code) => code && code !== 'en');
  const languages = new Map(codes.map((code) => [code,
    [...rules.keys()].filter((file) => languageOf(file) === code || (shared.includes(file) && holdsLanguage(rules.get(file), code)))]));
  const whole = (files) => new Map(files.map((file) => [file, rules.get(file)]));
  return {
    shared: new Map(shared.map((file) => [file, inEnglish(without(rules.get(file), unreadIn(file)))])),
    languages: new Map([...languages].map(([code, files]) => [code, new Map(files.map((file) => [file, without(rules.get(file), unreadIn(file))]))])),
    packs: new Map([...packs].map(([jurisdiction, files]) => [jurisdiction, new Map(files.map((file) => [file, without(rules.get(file), unreadIn(file))]))])),
    reading: whole(reading),
    letters: whole(letters),
    words: new Map([...words].map(([jurisdiction, files]) => [jurisdiction, new Map([...files].map(([code, its]) => [code, new Map(its.map((file) => [file, withoutSeals(rules.get(file))]))]))])),
  };
}

/** The federal and local rules that lie over a pack: those of "US" over every state, those of "US-IL" over Illinois. */
function layersOf(pack, rules) {
  const fits = (of) => pack.jurisdiction === of || pack.jurisdiction.startsWith(`${of}-`);
  return [...rules.keys()].filter((file) => file.startsWith('law-layers/') && fits(rules.get(file).jurisdiction));
}

/** The files that hold a pack's sentences, and those of the rules over it, in other languages: "es" to "law-es/US-WA.json" and the like. */
function wordsOf(name, rules) {
  const layers = layersOf(rules.get(`law/${name}`), rules).map((file) => path.basename(file));
  const found = new Map();
  for (const file of rules.keys()) {
    const [, layer, code, its] = /^law(-layers)?-([a-z]{2})\/(.+)$/.exec(file) ?? [];
    if (code && (layer ? layers.includes(its) : its === name)) found.set(code, [...(found.get(code) ?? []), file]);
  }
  return found;
}

/** "of" says from which English a sentence was made: for the checker of translations, not for the page. */
function withoutSeals(value) {
  if (Array.isArray(value)) return value.map(withoutSeals);
  return isObject(value) ? Object.fromEntries(Object.entries(value).filter(([key]) => key !== 'of').map(([key, inner]) => [key, withoutSeals(inner)])) : value;
}

/** The holiday files of a pack's counting rules. One that others build on ("US") is not among them: it is shared. */
function holidaysOf(pack, rules) {
  const base = holidayBases(rules);
  return [...new Set(holidaysNamed(pack))].filter((file) => rules.has(file) && !base.has(file));
}

const holidaysNamed = (pack) => (pack.counting ?? []).map((rule) => `holidays/${rule.holidays}.json`);
const holidayBases = (rules) => new Set([...rules.values()].map((document) => document.base).filter(Boolean).map((id) => `holidays/${id}.json`));

/** Holiday files that no pack counts by. */
function holidaysOfNobody(rules) {
  const used = new Set([...holidayBases(rules), ...[...rules.values()].flatMap((document) => (Array.isArray(document.counting) ? holidaysNamed(document) : []))]);
  return [...rules.keys()].filter((file) => file.startsWith('holidays/') && !used.has(file));
}

function writeBundle(name, documents) {
  const text = JSON.stringify(Object.fromEntries(documents));
  const file = `${name}.${createHash('sha256').update(text).digest('hex').slice(0, 10)}.json`;
  fs.writeFileSync(path.join(OUT, file), text);
  return file;
}

function main() {
  const rules = readRules();
  const { shared, languages, packs, words, reading, letters } = splitRules(rules);
  fs.rmSync(OUT, { recursive: true, force: true });
  fs.mkdirSync(OUT, { recursive: true });
  fs.mkdirSync(path.dirname(INDEX), { recursive: true });
  const once = { shared, reading, letters };
  const index = { ...Object.fromEntries(Object.entries(once).map(([name, documents]) => [name, writeBundle(name, documents)])), languages: {}, packs: {} };
  for (const [code, documents] of languages) index.languages[code] = writeBundle(`words-${code}`, documents);
  for (const [jurisdiction, documents] of packs) {
    const { name, currency } = rules.get(`law/${jurisdiction}.json`);
    index.packs[jurisdiction] = { file: writeBundle(jurisdiction, documents), name, currency, words: {}, names: {} };
    for (const [code, sentences] of words.get(jurisdiction)) index.packs[jurisdiction].words[code] = writeBundle(`${jurisdiction}-${code}`, sentences);
    const { en, ...others } = rules.get('jurisdictions.json').withPack[jurisdiction];
    if (en) index.packs[jurisdiction].names = others;
  }
  fs.writeFileSync(INDEX, `${JSON.stringify(index, null, 2)}\n`);
  console.log(`${packs.size} packs, ${languages.size + 1} languages`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
