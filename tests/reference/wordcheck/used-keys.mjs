// Which keys of the catalogue the code asks for: named whole in the code, by a pattern of the page's templates, or by a stem to
// which the code adds one of a known set of words.
import fs from 'node:fs';
import path from 'node:path';
import { filesUnder, readJson, ROOT, RULES } from './catalogue.mjs';

const at = (...parts) => path.join(ROOT, ...parts);
const rules = (name) => readJson(path.join(RULES, name));
const text = (files) => files.map((f) => fs.readFileSync(f, 'utf8')).join('\n');
const withoutRemarks = (code) => code.replace(/^\s*\/\*[\s\S]*?\*\//gm, '').replace(/(^|\s)\/\/.*$/gm, '$1');

/** Every string literal of the code: the plain ones, and templates with a hole for each ${...}. */
export function literalsOf(code) {
  const plain = new Set(), templates = new Set();
  for (const m of withoutRemarks(code).matchAll(/"((?:[^"\\\n]|\\.)*)"|'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`/g)) {
    const [, double, single, template] = m;
    if (template === undefined || !template.includes('${')) plain.add(double ?? single ?? template);
    else templates.add(template);
    // Literals inside a template's holes and inside markup count as well.
    for (const inner of (template ?? '').matchAll(/'([\w.-]+)'|`([^`$]+)\$\{/g)) plain.add(inner[1] ?? inner[2]);
  }
  return { plain, templates };
}

/** Templates of at least two fixed segments as patterns: `page.sums.${x}.${y}`; shorter ones would match anything. */
export function patternsOf(code) {
  const found = [...withoutRemarks(code).matchAll(/`([a-z]+\.[\w-]+\.(?:[\w.-]|\$\{[^{}`]*\})*)`/g)].map((m) => m[1]).filter((t) => t.includes('${'));
  return [...new Set(found)].map((t) => new RegExp(`^${t.replace(/\$\{[^{}]*\}/g, '\0').replace(/[.]/g, '\\.').replace(/\0/g, '[\\w.-]+')}$`));
}

export function readCode() {
  const engine = text(filesUnder(at('engine'), ['.cpp', '.h']));
  const page = text(filesUnder(at('site/src'), ['.ts'])) + text(filesUnder(at('site/plugins'), ['.ts']));
  const html = fs.readFileSync(at('site/index.html'), 'utf8');
  return { engine, page, html };
}

const ids = (list) => list.map((entry) => entry.id);
const readWords = () => {
  const found = new Set(['practice', 'decision']);
  for (const m of text(filesUnder(RULES, ['.json'])).matchAll(/"read":\s*"([\w-]+)"/g)) found.add(m[1]);
  return [...found];
};
/** The names of facts, or events, that the law asks for: of the registry and of every place. */
const lawIds = (what) => [...ids(rules('facts.json')[what]), ...['law', 'law-layers'].flatMap((folder) =>
  filesUnder(path.join(RULES, folder), ['.json']).flatMap((file) => ids(readJson(file)[what] ?? [])))];
const seamUnits = () => rules('wear/catalogue.json').elements.map((e) => e.seam?.unit).filter(Boolean);

/** Stems whose words the code or the registries name; a word may be made of several, "dated.tenant". */
const NAMED = ['letter.audit.', 'letter.bar.', 'letter.blank.', 'letter.deposit.', 'letter.done.', 'letter.duty.', 'letter.facts.of.', 'letter.facts.own.', 'letter.fits.',
  'letter.court.say.ground.', 'letter.ground.', 'letter.group.', 'letter.how.', 'letter.kind.', 'letter.landlord.move-in.', 'letter.none.', 'letter.note.', 'letter.note.event.', 'letter.show.', 'letter.state.', 'letter.statement.',
  'letter.step.', 'letter.subject.', 'letter.title.', 'letter.walk.', 'letter.wants.', 'letter.wrote.', 'reading.check.', 'reading.closed.', 'reading.tray.', 'words.field.'];

/** Stems: `all` words must each have a sentence, `may` words may. */
export function stems(literals) {
  const said = [...literals];
  const oneMany = (list) => list.flatMap((w) => [`${w}.one`, `${w}.many`]);
  const named = new Set([...said.flatMap((l) => [l, l.replace(/^(reason\.|[.-])/, '')]), ...['facts', 'duties', 'papers'].flatMap((file) => Object.values(rules(`${file}.json`)).filter(Array.isArray).flatMap(ids)),
    ...rules('letters.json').shows.map(({ show }) => show), ...ids(rules('wear/catalogue.json').atMoveIn)]);
  const places = said.filter((l) => /^\/[A-Za-z]+(\/[\w*]+)*$/.test(l)).map((l) => l.slice(1).replace(/\/\*/g, '').replace(/\//g, '.'));
  return {
    ...Object.fromEntries(NAMED.map((stem) => [stem, { named }])),
    'verdict.': { all: ['ordinary-wear', 'chargeable-damage', 'landlord-responsibility', 'pre-existing', 'barred', 'non-damage-charge', 'undetermined'] },
    'letter.because.': { may: lawIds('facts').flatMap((id) => [`${id}.yes`, `${id}.no`]) },
    'letter.unless.': { may: lawIds('facts') },
    'letter.event.': { may: lawIds('events') },
    'letter.due.assumed.': { may: lawIds('events') },
    'step.': { may: said },
    'question.': { may: said.flatMap((l) => [l, `${l}-landlord`]) },
    'audit.': { may: said },
    'alike.': { may: said },
    'caution.': { all: rules('cautions.json').always },
    'caution.place.': { may: Object.keys(rules('jurisdictions.json').withoutPack) },
    'read.': { all: readWords() },
    'event.': { all: ids(rules('facts.json').events) },
    'law.state.': { may: [...said, 'not-done-no-day'] },
    'law.unit.': { all: oneMany(['calendar-day', 'business-day', 'week', 'month', 'year', 'hour']) },
    'law.count.': { all: ['same', 'after', 'before'] },
    'law.count.open-': { all: ['after', 'before'] },
    'month.': { all: Array.from({ length: 12 }, (_, i) => `${i + 1}`) },
    'weekday.': { all: Array.from({ length: 7 }, (_, i) => `${i}`) },
    'length.year.': { all: ['one', 'many'] },
    'length.month.': { all: ['one', 'many'] },
    // Units are offered from the list of the wording itself; those of the wear guide's seams must be among them.
    'unit.': { all: oneMany(seamUnits()), open: true },
    'cli.total.': { may: said },
    'page.field.': { may: places.flatMap((p) => [p, `${p}.help`, `${p}.landlord`, `${p}.help.landlord`]) },
    'page.kind.': { may: said }, 'page.severity.': { may: said }, 'page.remedy.': { may: said }, 'page.how.': { may: said },
    'page.depositKind.': { may: said }, 'page.nature.': { may: said }, 'page.tenancyKind.': { all: rules('facts.json').facts.find((f) => f.id === 'tenancy-kind').choices },
    'page.fault.': { may: said },
    'help.': { all: ['guide', 'court', 'legal-aid'] },
  };
}

/** { missing: keys the code asks for that no file holds, unused: keys nobody asks for } */
export function compareWithCode(keys, { engine, page, html }) {
  const literals = new Set([...literalsOf(engine).plain, ...literalsOf(page).plain]);
  for (const m of html.matchAll(/%([\w.]+)%/g)) literals.add(m[1]);
  const known = new Set(keys);
  const firsts = new Set(keys.map((k) => k.split('.')[0]));
  const patterns = patternsOf(page);
  const list = stems(literals);
  const byStem = Object.entries(list);
  const used = (key) => literals.has(key) || patterns.some((p) => p.test(key)) ||
    byStem.some(([stem, { all = [], may = [], named, open }]) => {
      const word = key.slice(stem.length);
      return key.startsWith(stem) && (open || all.includes(word) || may.includes(word) || (named && (named.has(word) || word.split('.').every((part) => named.has(part)))));
    });
  const asked = [...literals].filter((l) => /^[a-z]+(\.[\w-]+)+$/.test(l) && firsts.has(l.split('.')[0]) && !/\.(json|md|ts|js|mjs|css|html|svg|txt|ics|docx|csv)$/.test(l) && !Object.hasOwn(list, l) && !isStem(l, keys));
  const must = byStem.flatMap(([stem, { all = [] }]) => all.map((word) => stem + word));
  return {
    missing: [...new Set([...asked, ...must])].filter((k) => !known.has(k)).sort(),
    unused: keys.filter((k) => !used(k)).sort(),
  };
}

/** Part of a key, to which the code adds the rest: "law.count.open-". */
const isStem = (literal, keys) => literal.endsWith('-') && keys.some((k) => k.startsWith(literal));
