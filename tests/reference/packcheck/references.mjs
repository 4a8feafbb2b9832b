// Everything a pack names must exist, and everything it declares must be used.
import { atoms } from './conditions.mjs';
import { isCivilDate } from './dates.mjs';

export const PARTS = ['counting', 'duties', 'papers', 'allows', 'bars', 'caps', 'notDeposit', 'alsoDeposit', 'interest', 'forfeits', 'remedies', 'records', 'inspection',
  'demand', 'address', 'wear', 'worth', 'holder', 'scope', 'smallClaims', 'others', 'notFound'];
const EVALUATED_LAST = ['remedies', 'forfeits', 'bars'];

export const rulesOf = (pack) => PARTS.flatMap((part) => (pack[part] ?? []).map((rule) => ({ part, rule })));

function sources(pack, problem) {
  const used = new Set();
  for (const { rule } of rulesOf(pack)) for (const key of rule.source ?? []) {
    used.add(key);
    if (!pack.sources[key]) problem(`${rule.id}: no such source ${key}`);
  }
  for (const key of Object.keys(pack.sources)) if (!used.has(key)) problem(`source ${key} is not used`);
}

// Copies of other people's pages: a person is sent to the publisher or nowhere.
const REHOSTED = /(^|\.)(github\.com|github\.io|docslib\.org|vdocuments\.site|scribd\.com|abcdocz\.com|readkong\.com|netlify\.app|studylib\.net|fill\.io)$/;

function addresses(pack, problem) {
  const all = [['guide', pack.guide?.url], ...(pack.help ?? []).map((h) => [`help ${h.kind}`, h.url]), ...Object.entries(pack.sources).map(([key, s]) => [`source ${key}`, s.url])];
  for (const [where, url] of all) if (url && REHOSTED.test(new URL(url).hostname)) problem(`${where}: ${url} is a copy on another site; give the publisher's own address or none`);
  for (const kind of ['court', 'legal-aid']) if (!(pack.help ?? []).some((h) => h.kind === kind)) problem(`help: no ${kind}`);
  if (!(pack.help ?? []).some((h) => h.kind === 'guide')) problem('help: no guide');
}

function uniqueIds(pack, problem) {
  const seen = new Map();
  for (const { part, rule } of rulesOf(pack)) {
    if (seen.has(rule.id)) problem(`${part}: id ${rule.id} is taken by ${seen.get(rule.id)}`);
    seen.set(rule.id, part);
  }
}

function factValue(atom, fact, problem, where) {
  const says = (t) => problem(`${where}: ${fact.id} is ${fact.type}, ${t}`);
  const limits = ['atLeast', 'atMost', 'over', 'under'].filter((k) => k in atom);
  if (fact.type === 'yes-no' && (atom.in || limits.length || typeof (atom.is ?? true) !== 'boolean')) says('needs true or false');
  if (fact.type === 'text') {
    if (limits.length || (!atom.in && typeof atom.is !== 'string')) says('needs "is" or "in" with text');
    for (const v of atom.in ?? [atom.is]) if (fact.choices && !fact.choices.includes(v)) says(`has no choice ${v}`);
  }
  if (fact.type === 'count' && (!limits.length || limits.some((k) => !Number.isInteger(atom[k])))) says('needs limits that are whole numbers');
  if (fact.type === 'money' && (!limits.length || limits.some((k) => typeof atom[k] !== 'string'))) says('needs limits that are decimal strings');
}

function conditions(pack, world, problem) {
  const usedFacts = new Set();
  const usedEvents = new Set();
  const duties = new Set(pack.duties.map((d) => d.id));
  const papers = new Set([...pack.papers, ...pack.caps].map((p) => p.id)); // a cap that is exceeded is a defect too
  const event = (id, where) => { usedEvents.add(id); if (!world.events.has(id)) problem(`${where}: no such event ${id}`); };
  for (const { part, rule } of rulesOf(pack)) {
    for (const condition of [rule.when, rule.unless]) for (const a of atoms(condition)) {
      if (a.fact) {
        usedFacts.add(a.fact);
        const fact = world.facts.get(a.fact);
        if (fact) factValue(a, fact, problem, rule.id); else problem(`${rule.id}: no such fact ${a.fact}`);
      } else if (a.event) {
        event(a.event, rule.id);
        for (const d of [a.from, a.to]) if (d && !isCivilDate(d)) problem(`${rule.id}: ${d} is not a date`);
        if (!('known' in a) && !a.from && !a.to) problem(`${rule.id}: event ${a.event} is asked nothing (known, from or to)`);
      } else {
        if (!EVALUATED_LAST.includes(part)) problem(`${rule.id}: duty and defect may not be used in ${part}`);
        if (a.duty && !duties.has(a.duty)) problem(`${rule.id}: no such duty ${a.duty}`);
        if (a.defect && !papers.has(a.defect)) problem(`${rule.id}: no such paper rule ${a.defect}`);
      }
    }
    for (const leg of rule.legs ?? []) {
      for (const id of leg.after) event(id, rule.id);
      if (!leg.countFrom) continue;
      usedFacts.add(leg.countFrom);
      if (world.facts.get(leg.countFrom)?.type !== 'count') problem(`${rule.id}: countFrom ${leg.countFrom} is not a count fact`);
    }
    if (part === 'caps' && rule.rent) {
      usedFacts.add(rule.rent);
      if (world.facts.get(rule.rent)?.type !== 'money') problem(`${rule.id}: rent ${rule.rent} is not a money fact`);
    }
    for (const id of [rule.met, rule.starts, rule.ends]) if (id) event(id, rule.id);
    for (const d of [rule.from, rule.to]) if (d && !isCivilDate(d)) problem(`${rule.id}: ${d} is not a date`);
  }
  for (const f of pack.facts ?? []) if (!usedFacts.has(f.id)) problem(`fact ${f.id} is declared but not used`);
  for (const e of pack.events ?? []) if (!usedEvents.has(e.id)) problem(`event ${e.id} is declared but not used`);
}

function duties(pack, world, problem) {
  const ids = new Set(pack.duties.map((d) => d.id));
  const business = pack.duties.some((d) => d.legs.some((l) => l.unit === 'business-day'));
  if (business && !pack.counting.some((c) => c.businessDaySkips)) problem('a duty counts business days, but no counting rule has businessDaySkips');
  for (const d of pack.duties) {
    if (!world.duties.has(d.duty)) problem(`${d.id}: no such duty name ${d.duty}`);
    if (d.duty === 'other') problem(`${d.id}: give this duty a name of its own in duties.json, "other" tells nobody what to do`);
    if (d.legs.length > 1 && !d.take) problem(`${d.id}: several legs need "take"`);
    for (const l of d.legs) if (l.after.length > 1 && !l.take) problem(`${d.id}: several events need "take"`);
    if (d.tenantLoses && d.who !== 'tenant') problem(`${d.id}: tenantLoses is for duties of the tenant`);
    if (d.ifMissed.includes('tenant-loses-right') !== Boolean(d.tenantLoses)) problem(`${d.id}: tenant-loses-right and tenantLoses go together`);
    if (!d.ifMissedText && d.ifMissed.some((m) => m !== 'none')) problem(`${d.id}: ifMissedText is missing`);
    for (const b of d.beside ?? []) if (!ids.has(b)) problem(`${d.id}: beside names no duty ${b}`);
  }
  for (const c of pack.counting) for (const id of c.duties ?? []) if (!ids.has(id)) problem(`${c.id}: no such duty ${id}`);
  const general = pack.counting.filter((c) => !c.duties && !c.when && !c.from && !c.to);
  if (general.length !== 1) problem(`one counting rule without duties and conditions is needed, there are ${general.length}`);
  if (pack.counting.some((c) => JSON.stringify(c).includes('legal-holiday') && !c.holidays)) problem('a counting rule speaks of legal holidays but names no holidays file');
}

function papersAndBars(pack, world, problem) {
  for (const p of pack.papers) {
    for (const id of [...p.requires, ...(p.orElse ?? [])]) if (!world.papers.has(id)) problem(`${p.id}: no such paper ${id}`);
    if (!p.requires.length && !p.how) problem(`${p.id}: asks for nothing`);
    if (!p.ifMissingText && p.ifMissing.some((m) => m !== 'none')) problem(`${p.id}: ifMissingText is missing`);
  }
  for (const b of pack.bars) {
    if ((b.effect === 'needs-proof') !== Boolean(b.proof)) problem(`${b.id}: needs-proof and "proof" go together`);
    for (const p of b.proof ?? []) if (!world.papers.has(p)) problem(`${b.id}: no such paper ${p}`);
    if ((b.effect === 'limit') !== Boolean(b.limit)) problem(`${b.id}: limit and "limit" go together`);
  }
  const matchers = [...pack.allows.flatMap((a) => a.lines.map((m) => [a.id, m])), ...pack.bars.map((b) => [b.id, b.line])];
  for (const [id, m] of matchers) {
    if (!world.catalogue) continue;
    for (const a of m.atMoveIn ?? []) if (!world.atMoveIn.has(a)) problem(`${id}: no such state at move-in ${a}`);
    for (const p of m.proofMissing ?? []) if (!world.papers.has(p)) problem(`${id}: no such paper ${p}`);
    for (const e of m.element ?? []) if (!world.catalogue.has(e)) problem(`${id}: no such element ${e}`);
    for (const f of m.finding ?? []) {
      const elements = m.element ?? [...world.catalogue.keys()];
      if (!elements.some((e) => world.catalogue.get(e)?.has(f))) problem(`${id}: no such finding ${f}`);
    }
  }
}

// A tenant, an adviser and a landlord read the same sentence: it names the two sides and never says "you".
function voice(pack, problem) {
  for (const { rule } of rulesOf(pack)) for (const name of ['text', 'check', 'whenText', 'ifMissedText', 'ifMissingText'])
    if (/\byou(rs?|rself)?\b/i.test(rule[name] ?? '')) problem(`${rule.id}: ${name} says "you"; name the tenant or the landlord`);
}

/** Problems of one pack by itself; `world` holds the shared facts, events, duties, papers and the catalogue, with the pack's own added. */
export function checkReferences(pack, world, problem) {
  if (!isCivilDate(pack.reviewed)) problem(`reviewed: ${pack.reviewed} is not a date`);
  sources(pack, problem);
  addresses(pack, problem);
  uniqueIds(pack, problem);
  conditions(pack, world, problem);
  duties(pack, world, problem);
  papersAndBars(pack, world, problem);
  voice(pack, problem);
  const ids = new Set(rulesOf(pack).map(({ rule }) => rule.id));
  for (const s of pack.scope) for (const id of s.turnsOff ?? []) {
    if (!ids.has(id)) problem(`${s.id}: turnsOff names no rule ${id}`);
    if (!s.when) problem(`${s.id}: turnsOff needs "when"`);
  }
  for (const c of pack.checkThis) for (const id of c.rules) if (!ids.has(id)) problem(`checkThis: no such rule ${id}`);
  for (const n of pack.notFound) for (const t of n.topics) if (pack[t].length && !n.when) problem(`${n.id}: ${t} was not found, yet the pack has rules of it`);
  if (world.holidays) for (const c of pack.counting) if (c.holidays && !world.holidays.has(c.holidays)) problem(`${c.id}: no holidays file ${c.holidays}`);
}
