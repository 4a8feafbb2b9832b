// Bundles engine/rules for the page, so that it fetches what one case needs and no more:
//   site/public/generated/rules/shared.<hash>.json   what every case needs, English included
//                               words-es.<hash>.json sentences of another language
//                               US-WA.<hash>.json    one law pack with the holidays it counts by
//   site/src/generated/rules-index.json              { shared, languages: { es }, packs: { "US-WA": { file, name, currency } } }
// A bundle is one object: paths under engine/rules to the documents found there. The engine's `load` takes it as it is.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '..');
const RULES = path.join(SITE, '../engine/rules');
const OUT = path.join(SITE, 'public/generated/rules');
const INDEX = path.join(SITE, 'src/generated/rules-index.json');

// Schemas describe the rules; page.json and cli.json are the sentences of the views themselves, which bring their own.
const forTheEngine = (file) =>
  file.endsWith('.json') && !file.startsWith('schema/') && !['page.json', 'cli.json'].includes(path.basename(file));

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

/** Splits the rules into bundles: shared, languages by code, packs by jurisdiction; each a list of paths. */
export function splitRules(rules) {
  const packs = new Map([...rules].filter(([file]) => /^law\/[^/]+\.json$/.test(file))
    .map(([file, pack]) => [pack.jurisdiction, [file, ...holidaysOf(pack, rules)]]));
  const languages = new Map();
  const taken = new Set([...packs.values()].flat());
  for (const file of rules.keys()) {
    const language = /^wording\/([^/]+)\//.exec(file)?.[1];
    if (!language || language === 'en') continue;
    languages.set(language, [...(languages.get(language) ?? []), file]);
    taken.add(file);
  }
  return { shared: [...rules.keys()].filter((file) => !taken.has(file)), languages, packs };
}

/** The holiday files of a pack's counting rules. One that others build on ("US") is not among them: it is shared. */
function holidaysOf(pack, rules) {
  const named = (pack.counting ?? []).map((rule) => `holidays/${rule.holidays}.json`);
  const base = new Set([...rules.values()].map((document) => document.base).filter(Boolean).map((id) => `holidays/${id}.json`));
  return [...new Set(named)].filter((file) => rules.has(file) && !base.has(file));
}

/** The bundle's text: minified, paths in order. */
export function bundleText(files, rules) {
  return JSON.stringify(Object.fromEntries(files.map((file) => [file, rules.get(file)])));
}

function writeBundle(name, files, rules) {
  const text = bundleText(files, rules);
  const file = `${name}.${createHash('sha256').update(text).digest('hex').slice(0, 10)}.json`;
  fs.writeFileSync(path.join(OUT, file), text);
  return file;
}

function main() {
  const rules = readRules();
  const { shared, languages, packs } = splitRules(rules);
  fs.rmSync(OUT, { recursive: true, force: true });
  fs.mkdirSync(OUT, { recursive: true });
  fs.mkdirSync(path.dirname(INDEX), { recursive: true });
  const index = { shared: writeBundle('shared', shared, rules), languages: {}, packs: {} };
  for (const [code, files] of languages) index.languages[code] = writeBundle(`words-${code}`, files, rules);
  for (const [jurisdiction, files] of packs) {
    const { name, currency } = rules.get(files[0]);
    index.packs[jurisdiction] = { file: writeBundle(jurisdiction, files, rules), name, currency };
  }
  fs.writeFileSync(INDEX, `${JSON.stringify(index, null, 2)}\n`);
  console.log(`${packs.size} packs, ${languages.size + 1} languages`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
