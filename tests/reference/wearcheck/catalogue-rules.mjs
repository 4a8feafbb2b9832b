// Cross checks of the wear catalogue that a schema cannot say. Each check: name and a function (catalogue, lives) -> problems.
import { holds } from './verdict.mjs';

const findings = (catalogue) => catalogue.elements.flatMap((e) => e.findings.map((f) => ({ element: e, finding: f, place: `${e.id}/${f.id}` })));
const twice = (list) => list.filter((x, i) => list.indexOf(x) !== i);

// Every object of a JSON value with its path.
function* objects(value, path = '') {
  if (Array.isArray(value)) for (const [i, v] of value.entries()) yield* objects(v, `${path}/${i}`);
  else if (value && typeof value === 'object') {
    yield { value, path };
    for (const [k, v] of Object.entries(value)) yield* objects(v, `${path}/${k}`);
  }
}

export function citations(data) {
  const cited = [];
  for (const { value, path } of objects(data)) for (const key of ['source', 'sources']) {
    const list = typeof value[key] === 'string' ? [value[key]] : Array.isArray(value[key]) ? value[key] : [];
    for (const id of list) cited.push({ id, path });
  }
  return cited;
}

export function sourcesKnownAndUsed(data) {
  const cited = citations(data);
  const used = new Set(cited.map((c) => c.id));
  return [...cited.filter((c) => !data.sources[c.id]).map((c) => `${c.path}: source ${c.id} is not known`),
    ...Object.keys(data.sources).filter((id) => !used.has(id)).map((id) => `source ${id} is not used`)];
}

export function bothLanguages(data) {
  const problems = [];
  for (const { value, path } of objects(data)) {
    if (!('en' in value) && !('es' in value)) continue;
    for (const language of ['en', 'es']) if (!String(value[language] ?? '').trim()) problems.push(`${path}: ${language} is missing`);
    // A sentence left untranslated; single words such as "gas" may be the same in both.
    if (value.en === value.es && /\s/.test(value.en ?? '')) problems.push(`${path}: en and es are the same`);
  }
  return problems;
}

function idsUnique(c) {
  const lists = { groups: c.groups, elements: c.elements, landlordFactors: c.landlordFactors, atMoveIn: c.atMoveIn, causes: c.causes };
  const problems = Object.entries(lists).flatMap(([name, list]) => twice(list.map((x) => x.id)).map((id) => `${name}: ${id} twice`));
  for (const e of c.elements) problems.push(...twice(e.findings.map((f) => f.id)).map((id) => `${e.id}: finding ${id} twice`), ...twice(e.findings.map((f) => f.label.en)).map((l) => `${e.id}: label "${l}" twice`));
  return [...problems, ...twice(c.elements.map((e) => e.label.en)).map((l) => `elements: label "${l}" twice`)];
}

function placesKnown(c, lives) {
  const groups = new Set(c.groups.map((g) => g.id));
  const used = new Set(c.elements.map((e) => e.group));
  const problems = c.elements.flatMap((e) => [
    ...(groups.has(e.group) ? [] : [`${e.id}: group ${e.group} is not known`]),
    ...(e.life === null || lives.classes[e.life] ? [] : [`${e.id}: life class ${e.life} is not in lives.json`])
  ]);
  for (const { finding, place } of findings(c)) if (finding.life && !lives.classes[finding.life]) problems.push(`${place}: life class ${finding.life} is not in lives.json`);
  const elements = new Set(c.elements.map((e) => e.id));
  for (const [kind, id] of Object.entries(c.elementOfKind)) if (!elements.has(id)) problems.push(`elementOfKind ${kind}: ${id} is not known`);
  return [...problems, ...[...groups].filter((g) => !used.has(g)).map((g) => `group ${g} is empty`)];
}

function turnFactorsKnown(c) {
  const known = { landlordFactor: new Set(c.landlordFactors.map((x) => x.id)), cause: new Set(c.causes.map((x) => x.id)), atMoveIn: new Set(c.atMoveIn.map((x) => x.id)) };
  const used = new Set();
  const problems = [];
  for (const { finding, place } of findings(c)) for (const [i, turn] of finding.turns.entries()) for (const key of Object.keys(known)) for (const id of turn.if[key] ?? []) {
    if (!known[key].has(id)) problems.push(`${place} turn ${i}: ${key} ${id} is not known`);
    if (key === 'landlordFactor') used.add(id);
  }
  return [...problems, ...[...known.landlordFactor].filter((id) => !used.has(id)).map((id) => `landlord factor ${id} turns nothing`)];
}

// The facts that satisfy a turn and nothing more: if an earlier turn already holds for all of them, this one can never be reached.
function smallestCases(test) {
  let cases = [{}];
  const spread = (list, put) => { if (list) cases = cases.flatMap((c) => list.map((v) => put({ ...c }, v))); };
  spread(test.landlordFactor, (c, v) => ({ ...c, landlordFactors: [v] }));
  for (const key of ['severity', 'cause', 'atMoveIn']) spread(test[key], (c, v) => ({ ...c, [key]: v }));
  const numbers = { countAtLeast: 'count', stayMonthsAtLeast: 'stayMonths', occupantsAtLeast: 'occupants', itemPastLife: 'itemPastLife' };
  return cases.map((c) => Object.entries(numbers).reduce((all, [key, fact]) => (test[key] === undefined ? all : { ...all, [fact]: test[key] }), c));
}

function turnsReachable(c) {
  return findings(c).flatMap(({ finding, place }) => finding.turns.flatMap((turn, i) =>
    smallestCases(turn.if).every((facts) => finding.turns.slice(0, i).some((t) => holds(t.if, facts))) ? [`${place} turn ${i} can never be reached`] : []));
}

function turnsTurn(c) {
  return findings(c).flatMap(({ element, finding, place }) => {
    const idle = finding.turns.filter((t) => t.verdict === finding.verdict && !finding.turns.some((o) => o.verdict !== t.verdict));
    return [...(idle.length ? [`${place}: all turns say what the finding says anyway`] : []),
      ...(element.aboutCondition && finding.verdict === 'depends' && !finding.turns.length ? [`${place}: depends, but nothing turns it`] : [])];
  });
}

function ageingMakesSense(c) {
  return findings(c).flatMap(({ element, finding, place }) => [
    ...(finding.ages && finding.remedy !== 'replace' ? [`${place}: ages, but the remedy is ${finding.remedy}`] : []),
    ...(finding.ages && element.life === null ? [`${place}: ages, but ${element.id} has no life`] : []),
    ...(!finding.ages && finding.remedy === 'replace' && element.life !== null ? [`${place}: a replacement that does not age`] : []),
    ...(!element.aboutCondition && finding.ages ? [`${place}: ages, but is not about condition`] : [])
  ]);
}

function conflictsConflict(c) {
  return findings(c).flatMap(({ finding, place }) => finding.conflicts.flatMap((x) => [
    ...(x.verdict === finding.verdict ? [`${place}: conflict of ${x.source} says the same`] : []),
    ...(x.source === 'practice' ? [`${place}: a conflict needs a source`] : [])
  ]));
}

export const catalogueRules = [
  ['wear: sources are known and used', sourcesKnownAndUsed],
  ['wear: English and Spanish everywhere', bothLanguages],
  ['wear: ids and labels are unique', idsUnique],
  ['wear: groups, life classes and elements of kinds are known', placesKnown],
  ['wear: factors of turns are known, every landlord factor turns something', turnFactorsKnown],
  ['wear: every turn can be reached', turnsReachable],
  ['wear: turns change something, what depends can be settled', turnsTurn],
  ['wear: what ages is replaced and has a life', ageingMakesSense],
  ['wear: conflicts point the other way and have a source', conflictsConflict]
];
