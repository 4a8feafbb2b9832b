// Checks against the outside: published guides, published tables, the trade's own list, decided cases.
import { answer, bearer, lookUp } from './verdict.mjs';

const same = (r, x) => r.source === x.source && r.element === x.element && r.condition === x.condition;
const facts = (x) => JSON.stringify(x.facts ?? {});

// Every row of every published guide, in the direction the guide says: ../data/wear-guide.json.
export function guides(catalogue, guide, map) {
  const problems = [];
  let rows = 0;
  for (const { source, rows: list } of guide) for (const row of list) {
    rows += 1;
    const expected = row.verdict === 'damage' ? 'tenant' : 'landlord';
    const entries = map.rows.filter((m) => same(m, { ...row, source: source.id }));
    if (!entries.length) problems.push(`${source.id}: "${row.element}, ${row.condition}" is not mapped`);
    for (const m of entries) {
      for (const place of m.at ?? []) {
        const finding = lookUp(catalogue, place);
        if (!finding) problems.push(`${place} is not in the catalogue`);
        else if (bearer(answer(finding, m.facts).verdict) !== expected) problems.push(`${source.id}: "${row.element}, ${row.condition}" is ${row.verdict}; ${place} with ${facts(m)} says ${answer(finding, m.facts).verdict}`);
      }
      for (const d of m.differs ?? []) {
        const finding = lookUp(catalogue, d.at);
        if (!finding) problems.push(`${d.at} is not in the catalogue`);
        else if (bearer(answer(finding, m.facts).verdict) === expected) problems.push(`${d.at} no longer differs from ${source.id}: drop the note`);
        else if (!finding.conflicts.some((c) => c.source === (map.ids[source.id] ?? source.id))) problems.push(`${d.at} differs from ${source.id} but names no conflict`);
      }
    }
  }
  for (const m of map.rows) if (!guide.some((g) => g.rows.some((r) => same(m, { ...r, source: g.source.id })))) problems.push(`mapped row "${m.element}, ${m.condition}" is in no guide`);
  return { problems, count: rows };
}

// A guide may be cited only where one of its rows or general rules stands behind the citation.
export function guidesCitedOnlyWhereTheySpeak(catalogue, guide, other, map) {
  const ids = new Map(guide.map((g) => [map.ids[g.source.id] ?? g.source.id, g.source.id]));
  const backed = new Set();
  const problems = [];
  const back = (tableId, place) => backed.add(`${map.ids[tableId] ?? tableId} ${place}`);
  for (const m of map.rows) for (const place of [...(m.at ?? []), ...(m.also ?? []), ...(m.differs ?? []).map((d) => d.at)]) back(m.source, place);
  for (const g of [...map.general, ...map.turnedAround]) {
    if (g.topic && !other.some((o) => o.source.id === g.source && o.topic === g.topic)) problems.push(`general rule ${g.source} "${g.topic}" is not in other-facts.json`);
    for (const place of g.at) back(g.source, place);
  }
  let cited = 0;
  for (const e of catalogue.elements) for (const f of e.findings) {
    const place = `${e.id}/${f.id}`;
    for (const s of new Set([...f.source, ...f.turns.flatMap((t) => t.source), ...f.conflicts.map((c) => c.source)])) if (ids.has(s)) {
      cited += 1;
      if (!backed.has(`${s} ${place}`) && !backed.has(`${s} *`)) problems.push(`${place} cites ${s}, but no row of it is mapped there`);
    }
  }
  return { problems, count: cited };
}

const MONTHS = new Map([[6.67, 80], [6.66, 80], [13.33, 160]]); // printed roundings of 6 2/3 and 13 1/3 years
const months = (years) => (years === null ? null : MONTHS.get(years) ?? years * 12);

// Every row of the published tables with a figure stands in lives.json, and no row stands there without one: ../data/useful-life.json.
export function tables(lives, table, classes, sourceOf) {
  const problems = [];
  const found = new Set();
  let rows = 0;
  for (const { source, rows: list } of table) {
    const id = sourceOf(source);
    if (!lives.sources[id]) { problems.push(`${source.id}: no source ${id} in lives.json`); continue; }
    if (/memory/.test(source.basis) !== (lives.sources[id].read === 'memory')) problems.push(`${id}: ${source.basis} but read ${lives.sources[id].read}`);
    for (const row of list) {
      if (row.years === null) continue;
      rows += 1;
      if (!classes[row.element]) problems.push(`${source.id}: ${row.element} has no class`);
      for (const cls of classes[row.element] ?? []) {
        const hits = lives.rows.filter((r) => r.class === cls && r.source === id && r.months === months(row.years) && r.monthsHigh === months(row.years_high));
        hits.forEach((h) => found.add(h));
        if (!hits.length) problems.push(`${source.id}: ${row.element} ${row.years} years is missing under ${cls}`);
      }
    }
  }
  const ours = new Set(table.map((t) => sourceOf(t.source)));
  for (const r of lives.rows) if (ours.has(r.source) && !found.has(r) && !/alternative depreciation|before 1999/.test(r.note)) problems.push(`row of ${r.source} (${r.class}, ${r.months} months) is in no table`);
  return { problems, count: rows };
}

// The trade's own list (common practice, no source): ../data/common-practice.json.
export function practice(catalogue, lives, list, map) {
  const problems = [];
  const verdicts = { 'chargeable-damage': ['damage'], 'ordinary-wear': ['wear'], 'landlord-side': ['landlord-responsibility'] };
  let checks = 0;
  for (const check of list.checks.filter((c) => c.verdict)) {
    const entries = map.checks.filter((m) => m.id === check.id);
    if (!entries.length) problems.push(`${check.id} is not mapped`);
    for (const m of entries) {
      checks += 1;
      const finding = lookUp(catalogue, m.at);
      const said = finding && answer(finding, m.facts);
      if (!said) problems.push(`${check.id}: ${m.at} is not in the catalogue`);
      else if (!said.certain || !verdicts[check.verdict].includes(said.verdict)) problems.push(`${check.id}: ${m.at} says ${said.verdict}, the trade says ${check.verdict}`);
      if (finding && m.ages !== undefined && finding.ages !== m.ages) problems.push(`${check.id}: ${m.at} ages is ${finding.ages}`);
      if (finding && check.kind === 'cleaning' && finding.remedy !== 'clean') problems.push(`${check.id}: ${m.at} is not cleaning`);
    }
  }
  for (const { element, years } of list.lives) {
    checks += 1;
    const d = lives.defaults.find((x) => x.class === element && x.region === 'US');
    if (d?.likelyMonths !== years * 12) problems.push(`${element}: the trade uses ${years} years, the US default is ${d?.likelyMonths} months`);
  }
  return { problems, count: checks };
}

// Who bore the line in the decision: ../data/decided.json.
function boreIt(line) {
  if (line.allowed !== null) return line.allowed > 0 ? 'tenant' : 'landlord';
  if (line.fraction_allowed !== undefined && line.fraction_allowed !== null) return line.fraction_allowed > 0 ? 'tenant' : 'landlord';
  return /allowed/.test(line.reason) ? 'tenant' : null;
}

// Decided disputes: the catalogue points where the deciders went, or the difference is on record.
export function decided(catalogue, cases, map) {
  const problems = [];
  for (const m of map.lines) {
    const line = cases.find((c) => c.id === m.case)?.lines.find((l) => l.element === m.element);
    const finding = lookUp(catalogue, m.at);
    if (!line || !finding) { problems.push(`${m.case}, ${m.element}: line or ${m.at} not found`); continue; }
    if (boreIt(line) !== m.borne) problems.push(`${m.case}, ${m.element}: the decision says ${boreIt(line)}, the map ${m.borne}`);
    const said = answer(finding, m.facts).verdict;
    if ((bearer(said) === m.borne) === Boolean(m.differs)) problems.push(`${m.case}, ${m.element}: ${m.at} says ${said}, ${m.borne} bore it${m.differs ? ' (no longer differs)' : ''}`);
  }
  return { problems, count: map.lines.length };
}
