// Cases, letters and statements from a seed, the same ones every time: shaped by the published schema of case files, with words, sums
// and layouts from the papers kept here.
import fs from 'node:fs';
import path from 'node:path';
import { ROOT, allCases, readJson } from './engines.mjs';

const KINDS = ['question-charges', 'request-documents', 'after-deadline', 'reply-to-demand', 'accept-and-claim-rest', 'second-letter', 'objection', 'forwarding-address',
  'demand', 'inspection-request', 'itemized-statement', 'late-statement', 'cover-note', 'adviser-note', 'small-claims-sheet'];
const PAPERS = ['corpus', 'corpus2', 'corpus3', 'reading'].flatMap((set) => ['statements', 'varied'].map((folder) => `tests/reference/${set}/${folder}`));
const ODD = ['', ' ', 'Ünïcödé — “q” …', 'שלום carpet', '🧽 clean 2× $5', 'a'.repeat(300), 'x\ty\nz', '\u200bZWSP', '½ wall', '１２０', 'e\u0301tagère', '$', '-0.00'];

/** mulberry32: small, well spread, the same everywhere. */
export function random(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (t ^ (t >>> 14)) >>> 0;
  };
  const below = (n) => next() % n;
  return { below, pick: (list) => list[below(list.length)], chance: (percent) => below(100) < percent };
}

const two = (n) => String(n).padStart(2, '0');

/** Values of the schema's own definitions: a pattern alone would make days that do not exist. */
function made(name, { below, pick, chance }) {
  const year = () => 2005 + below(22);
  const day = () => `${year()}-${two(1 + below(12))}-${two(1 + below(chance(5) ? 31 : 28))}`;
  switch (name) {
    case 'money': return chance(70) ? `${below(3000)}.${two(below(100))}` : pick(['0.00', '0.01', '9999999999.99', '1', '1.5', '100000.00', '0.99']);
    case 'number': return pick([`${1 + below(12)}`, `${below(50)}.${below(1000)}`, 1 + below(9), 0.5, '9999999.999']);
    case 'age': return pick([below(40), `${below(40)}`, `${below(20)}/${20 + below(20)}`, `${1 + below(20)}~`, `../${below(30)}`, `${below(30)}/..`, 2.125, '200']);
    case 'date': return chance(70) ? day() : pick([`${year()}`, `${year()}-${two(1 + below(12))}`, `${year()}~`, `${year()}-0${1 + below(9)}~`, `../${day()}`, `${day()}/..`, `2010/${day()}`, '1900-01-01', '2199-12-31', '2024-02-29']);
    default: return undefined;
  }
}

export function generator(seed) {
  const dice = random(seed);
  const { below, pick, chance } = dice;
  const schema = readJson('engine/rules/schema/case.schema.json');
  const papers = PAPERS.filter((folder) => fs.existsSync(path.join(ROOT, folder))).flatMap((folder) =>
    fs.readdirSync(path.join(ROOT, folder)).filter((file) => file.endsWith('.txt')).sort().map((file) => fs.readFileSync(path.join(ROOT, folder, file), 'utf8')));
  const rows = papers.flatMap((text) => text.split('\n')).filter((row) => row.trim());
  const texts = [...readJson('tests/reference/corpus/lines.json'), ...readJson('tests/reference/facts/fact-lines.json'), ...readJson('tests/reference/reading/lines.json')]
    .map((line) => line.text).filter((text) => typeof text === 'string');
  const trees = allCases().map(({ text }) => JSON.parse(text));
  const withPack = fs.readdirSync(path.join(ROOT, 'engine/rules/law')).filter((file) => /^[A-Z-]+\.json$/.test(file)).map((file) => file.slice(0, -5)).sort();

  // Names that belong to some places alone.
  const places = new Map();
  for (const { if: where, then } of schema.allOf ?? []) {
    const list = where.not?.properties?.jurisdiction?.enum;
    const circumstance = Object.keys(then.properties?.circumstances?.properties ?? {})[0];
    const event = then.properties?.events?.items?.properties?.kind?.not?.const;
    if (list && circumstance) places.set(`circumstances/${circumstance}`, list);
    if (list && event) places.set(`events/${event}`, list);
  }
  const known = (kind, name, place) => !places.has(`${kind}/${name}`) || places.get(`${kind}/${name}`).includes(place);
  const findings = new Map((schema.$defs.findingOfElement?.allOf ?? []).map(({ if: where, then }) =>
    [where.properties.element.const, then.properties.finding.anyOf?.[0].enum ?? then.properties.finding.enum ?? []]));

  const text = () => (chance(85) ? pick(texts) : pick(ODD));
  function value(shape, name, place) {
    if (shape.$ref) return made(shape.$ref.split('/').pop(), dice) ?? value(schema.$defs[shape.$ref.split('/').pop()], name, place);
    if (shape.anyOf) return value(chance(4) ? pick(shape.anyOf) : shape.anyOf[0], name, place);
    if ('const' in shape) return shape.const;
    if (shape.enum) return pick(shape.enum);
    switch (shape.type) {
      case 'null': return null;
      case 'boolean': return chance(50);
      case 'integer': return (shape.minimum ?? 0) + below(Math.min(40, (shape.maximum ?? 40) - (shape.minimum ?? 0) + 1));
      case 'number': return below(400) / 8;
      case 'array': return Array.from({ length: below(4) }, () => value(shape.items, name, place));
      case 'object': return object(shape, name, place);
      default: return shape.pattern ? '0.05' : name === 'locality' ? pick(['Chicago', 'New York City', 'Seattle', 'Portland', 'Los Angeles']) : text();
    }
  }
  function object(shape, name, place) {
    const out = {};
    const likely = name === 'circumstances' ? 6 : shape === schema.$defs.line ? 22 : 55;
    for (const [key, inner] of Object.entries(shape.properties ?? {})) {
      if (!(shape.required ?? []).includes(key) && !chance(likely)) continue;
      if (name === 'circumstances' && !known('circumstances', key, place)) continue;
      out[key] = value(inner, key, place);
    }
    if (out.element && 'finding' in out) {
      const of = findings.get(out.element) ?? [];
      if (of.length) out.finding = pick(of);
      else delete out.finding;
    }
    return out;
  }

  function fromSchema() {
    const place = chance(92) ? pick(withPack) : undefined;
    const out = { wearline: schema.properties.wearline.const };
    if (place) out.jurisdiction = place;
    for (const [key, shape] of Object.entries(schema.properties)) {
      if (key in out || ['jurisdiction', 'lines', 'page', 'locality'].includes(key) || !chance(60)) continue;
      out[key] = value(shape, key, place);
    }
    const began = `${2012 + below(12)}-${two(1 + below(12))}-${two(1 + below(28))}`;
    const ended = `${2025 + below(2)}-${two(1 + below(11))}-${two(1 + below(28))}`;
    if (chance(80)) out.tenancy = { ...out.tenancy, began, ended, possessionReturned: chance(70) ? ended : `${ended.slice(0, 8)}${two(1 + below(28))}` };
    out.lines = Array.from({ length: below(9) }, (_, i) => {
      const line = object(schema.$defs.line, 'line', place);
      if (!line.costComponents?.length) return { ...line, id: `${i + 1}`, text: text(), ...(chance(90) ? { amount: made('money', dice) } : {}) };
      // The components of a charge may not exceed it.
      const costComponents = line.costComponents.map((part) => ({ ...part, amount: `${below(400)}.${two(below(100))}` }));
      const cents = costComponents.reduce((sum, part) => sum + Math.round(100 * Number(part.amount)), chance(50) ? 0 : below(20000));
      return { ...line, id: `${i + 1}`, text: text(), costComponents, amount: (cents / 100).toFixed(2) };
    });
    return sane(out);
  }

  /** Most cases are to be judged, not refused: names that the place knows, days in their order; in either version's words. */
  function sane(subject) {
    if (chance(5)) return subject;
    for (const name of Object.keys(subject.circumstances ?? {})) if (!known('circumstances', name, subject.jurisdiction)) delete subject.circumstances[name];
    if (subject.events) subject.events = subject.events.filter(({ what, kind = what }) => known('events', kind, subject.jurisdiction));
    const { statement } = subject;
    if (statement?.received && statement.sent && String(statement.received).slice(0, 4) <= String(statement.sent).slice(0, 4)) delete statement.received;
    for (const line of subject.lines) {
      if (line.from) delete line.to;
      if (line.periodStart) delete line.periodEnd;
      for (const life of ['lifeYears', 'usefulLifeYears']) if (line[life] !== undefined) line[life] = 1 + below(40);
    }
    for (const deposit of subject.deposits ?? []) if (deposit.bankRate) deposit.bankRate = "0.02";
    return subject;
  }

  /** A case of the tree with another place, other sums, days moved by weeks, and lines from elsewhere. */
  function fromTree() {
    const out = structuredClone(pick(trees));
    if (chance(40)) out.jurisdiction = pick(withPack);
    const turn = (holder) => {
      for (const [key, inner] of Object.entries(holder ?? {})) {
        if (inner && typeof inner === 'object') turn(inner);
        else if (typeof inner !== 'string') continue;
        else if (/^\d+\.\d\d$/.test(inner) && chance(30)) holder[key] = made('money', dice);
        else if (/^\d{4}-\d\d-\d\d$/.test(inner) && chance(30)) holder[key] = new Date(Date.parse(inner) + 86400000 * (below(120) - 60)).toISOString().slice(0, 10);
      }
    };
    turn(out);
    if (chance(50)) (out.lines ??= []).push({ id: `new-${below(1000)}`, text: text(), amount: made('money', dice) });
    if (chance(30)) out.side = pick(['tenant', 'adviser', 'landlord']);
    return sane(out);
  }

  /** A paper with rows taken out, doubled, moved or put in from others, and some figures changed. */
  function paper() {
    let lines = pick(papers).split('\n');
    for (let i = below(5); i > 0; --i) {
      const at = below(lines.length);
      const what = below(4);
      if (what === 0) lines.splice(at, 1);
      else if (what === 1) lines.splice(at, 0, pick(rows));
      else if (what === 2) lines.splice(below(lines.length), 0, ...lines.splice(at, 1));
      else lines = lines.map((row, n) => (n === at ? row.replace(/\d/g, () => String(below(10))) : row));
      if (!lines.length) lines = [''];
    }
    if (chance(5)) lines.push(pick(ODD));
    return lines.join('\n');
  }

  const today = () => `202${5 + below(3)}-${two(1 + below(12))}-${two(1 + below(28))}`;
  const options = () => JSON.stringify({
    ...(chance(70) ? { kind: pick(KINDS) } : {}), ...(chance(50) ? { language: pick(['en', 'es']) } : {}), ...(chance(30) ? { off: [pick(['sums', 'law', 'group-wear', 'offer', 'table'])] } : {}),
    ...(chance(30) ? { on: [pick(['offer', 'law', 'courtesy'])] } : {}), ...(chance(40) ? { names: { sender: 'Ana Ruiz', landlord: pick(['B. Yu', 'ÉCOLE "Ltd" <x>']) } } : {}),
  });

  /** What the engine is asked next about one generated case: its assessment, a letter, and a statement to read. */
  return () => {
    const subject = JSON.stringify(chance(60) ? fromSchema() : fromTree());
    const day = today();
    return [{ text: subject, today: day }, { text: subject, today: day, options: options() }, { text: paper(), language: pick(['en', 'es']) }];
  };
}
