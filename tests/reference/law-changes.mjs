// What changed in the law between two versions of the rules, in plain words, for people who have to tell others.
//   node tests/reference/law-changes.mjs FROM [TO]        FROM and TO are versions of this repository (tags, commits); TO absent: the files as they stand
//   node tests/reference/law-changes.mjs --es FROM [TO]   the sentences in Spanish where there are any
// Prints Markdown: for each place the rules that are new, gone or changed, with what they say now and where it stands.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDERS = ['engine/rules/law', 'engine/rules/law-layers'];
const PARTS = ['counting', 'duties', 'papers', 'allows', 'bars', 'caps', 'interest', 'forfeits', 'remedies', 'records', 'inspection', 'demand', 'address', 'wear',
  'worth', 'holder', 'scope', 'smallClaims', 'others', 'notFound'];
// What makes no difference to a person: notes of maintainers, the order of members, which Spanish goes with which English.
const SILENT = new Set(['note', 'of', 'beside']);

const git = (...args) => execFileSync('git', args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'ignore'] });

/** The JSON files of the law folders in a version of the repository, or (no version) on the disk: path to document. */
export function lawAt(version) {
  const out = new Map();
  for (const folder of FOLDERS.flatMap((f) => [f, `${f}-es`])) {
    const files = version
      ? git('ls-tree', '--name-only', version, `${folder}/`).split('\n').filter((f) => f.endsWith('.json'))
      : fs.existsSync(path.join(ROOT, folder)) ? fs.readdirSync(path.join(ROOT, folder)).filter((f) => f.endsWith('.json')).map((f) => `${folder}/${f}`) : [];
    for (const file of files) out.set(file, JSON.parse(version ? git('show', `${version}:${file}`) : fs.readFileSync(path.join(ROOT, file), 'utf8')));
  }
  return out;
}

const canonical = (value) =>
  Array.isArray(value) ? value.map(canonical)
  : value && typeof value === 'object' ? Object.fromEntries(Object.keys(value).filter((k) => !SILENT.has(k)).sort().map((k) => [k, canonical(value[k])]))
  : value;
const same = (a, b) => JSON.stringify(canonical(a)) === JSON.stringify(canonical(b));

const rulesOf = (pack) => new Map(PARTS.flatMap((part) => (pack?.[part] ?? []).map((rule) => [rule.id, { part, rule }])));

const UNIT = { 'calendar-day': 'days', 'business-day': 'business days', week: 'weeks', month: 'months', year: 'years', hour: 'hours' };
const plain = (id) => String(id).replaceAll('-', ' ');
const periodOf = (rule) => (rule.legs ?? []).map((l) => (l.count === null ? 'no number of days' : `${l.count} ${UNIT[l.unit] ?? l.unit}`) + ` ${l.direction ?? 'after'} ${l.after.map(plain).join(` or ${l.take ?? ''} `.replace('  ', ' '))}`).join('; ');
/** What of a rule is worth saying when it changes: a name and its value in words. */
const FIGURES = {
  legs: (r) => periodOf(r), months: (r) => `${r.months} months' rent`, amount: (r) => `$${r.amount}`, multiplier: (r) => `${r.multiplier} times ${plain(r.base ?? '')}`,
  fixed: (r) => `$${r.fixed}`, rate: (r) => JSON.stringify(r.rate).replaceAll(/["{}]/g, ''), requires: (r) => r.requires.map(plain).join(', '), loses: (r) => plain(r.loses), needs: (r) => plain(r.needs),
  from: (r) => r.from, to: (r) => r.to, effect: (r) => plain(r.effect), owed: (r) => (r.owed ? 'owed' : 'not owed'), take: (r) => `the ${r.take}`, metBy: (r) => plain(r.metBy),
};
const NAMES = { legs: 'time', metBy: 'what counts as done', months: 'limit', amount: 'sum', fixed: 'fixed sum', multiplier: 'multiple', requires: 'papers', loses: 'what is lost', needs: 'what a court must find',
  from: 'first day', to: 'last day', take: 'of several days', replaces: 'which rule of the state it stands for', by: 'which event counts', minimumMonths: 'shortest stay' };
const figure = (rule, name) => (rule[name] === undefined || rule[name] === null ? 'nothing said' : FIGURES[name](rule));

/** The changes of one rule, each a short phrase; empty: nothing that a person would notice. */
export function changesOf(before, after) {
  const out = Object.keys(FIGURES).filter((name) => !same(before[name], after[name])).map((name) => `${NAMES[name] ?? name}: was ${figure(before, name)}, is ${figure(after, name)}`);
  if (!same(before.when, after.when) || !same(before.unless, after.unless)) out.push(after.whenText ? `when it applies: ${after.whenText}` : 'when it applies');
  if (before.text !== after.text) out.push('its wording');
  if ((before.check ?? '') !== (after.check ?? '')) out.push(after.check ? `a doubt: ${after.check}` : 'a doubt was settled');
  const rest = Object.keys({ ...before, ...after }).filter((k) => !SILENT.has(k) && !FIGURES[k] && !['when', 'whenText', 'unless', 'text', 'check', 'source', 'id'].includes(k) && !same(before[k], after[k]));
  return [...out, ...rest.map((k) => NAMES[k] ?? plain(k.replaceAll(/([A-Z])/g, ' $1').toLowerCase()))];
}

const cites = (pack, rule) => (rule.source ?? []).map((key) => pack.sources?.[key]?.cite ?? key).join('; ');

/** The changes of one file as lines of Markdown; empty if there are none. `say(rule)` gives its sentence. */
export function changesOfPack(before, after, say = (rule) => rule.text ?? plain(rule.id)) {
  const [old, now] = [rulesOf(before), rulesOf(after)];
  const lines = [];
  for (const [id, { rule }] of now) {
    if (!old.has(id)) lines.push(`- New: ${say(rule)} (${cites(after, rule)})`);
    else {
      const changed = changesOf(old.get(id).rule, rule);
      if (changed.length) lines.push(`- Changed (${changed.join('; ')}): ${say(rule)} (${cites(after, rule)})`);
    }
  }
  for (const [id, { rule }] of old) if (!now.has(id)) lines.push(`- Gone: ${say(rule)} (${cites(before, rule)})`);
  for (const [key, source] of Object.entries(after?.sources ?? {}))
    if (before?.sources?.[key] && before.sources[key].read !== source.read) lines.push(`- Read anew: ${source.cite}, now ${plain(source.read)}, before ${plain(before.sources[key].read)}`);
  return lines;
}

const nameOf = (pack, file) => pack.name ?? (pack.place ? `${pack.place.name.en}, ${pack.jurisdiction}` : null) ?? (pack.jurisdiction === 'US' ? 'Federal law' : path.basename(file, '.json'));

export function changeLog(before, after, language = 'en') {
  const packs = (law) => [...law.keys()].filter((file) => FOLDERS.includes(path.posix.dirname(file)));
  const out = [];
  for (const file of [...new Set([...packs(before), ...packs(after)])].sort()) {
    const [old, now] = [before.get(file), after.get(file)];
    const words = language === 'en' ? undefined : after.get(`${path.posix.dirname(file)}-${language}/${path.posix.basename(file)}`)?.rules;
    const lines = changesOfPack(old, now, (rule) => words?.[rule.id]?.text ?? rule.text ?? plain(rule.id));
    if (lines.length) out.push(`## ${nameOf(now ?? old, file)}${old ? '' : ' (new)'}${now ? '' : ' (gone)'}`, '', ...lines, '');
  }
  return out.length ? `# What changed in the law\n\n${out.join('\n')}` : 'Nothing changed in the law.\n';
}

function main(args) {
  const language = args.includes('--es') ? 'es' : 'en';
  const [from, to] = args.filter((a) => !a.startsWith('--'));
  if (!from) { console.error('Give the version to compare with: node tests/reference/law-changes.mjs FROM [TO]'); return 2; }
  process.stdout.write(changeLog(lawAt(from), lawAt(to), language));
  return 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = main(process.argv.slice(2));
