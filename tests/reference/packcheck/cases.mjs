// Case files under tests/reference/law: shape, names and dates. What they expect is checked by the engine's tests.
import { caseInVersion2 } from '../version-1.mjs';
import { isCivilDate, isUncertainDate } from './dates.mjs';

export const LEAST_CASES = 6;
const CASE = ['wearline', 'jurisdiction', 'locality', 'side', 'language', 'title', 'tenancy', 'deposits', 'statement', 'records', 'circumstances', 'events', 'lines'];
const TENANCY = ['began', 'ended', 'possessionReturned', 'kind', 'monthlyRent', 'rentPaidThrough', 'forwardingAddressGiven', 'landlordUnits', 'buildingUnits', 'ownerOccupied', 'occupants'];
const DEPOSIT = ['kind', 'amount', 'paid', 'interestPaid', 'bankInterestRate'];
const STATEMENT = ['dated', 'sent', 'received', 'deliveryMethod', 'statedTotal', 'statedRefund', 'statedBalanceDue', 'refundPaid', 'refundSent', 'enclosedDocuments', 'missingDocuments', 'statementReceived'];
const RECORDS = ['moveInChecklist', 'moveOutChecklist', 'preMoveOutInspection', 'photosAtMoveIn', 'photosAtMoveOut'];
const LINE = ['id', 'text', 'amount', 'kind', 'element', 'finding', 'location', 'quality', 'installed', 'conditionAtMoveIn', 'cause', 'severity', 'count',
  'landlordFactors', 'costComponents', 'chargedQuantity', 'damagedQuantity', 'remedy', 'betterment', 'repairCost', 'replacementCost', 'usefulLifeYears', 'usefulLifeSource',
  'depreciationMethod', 'laborDepreciates', 'supportingDocuments', 'missingDocuments', 'onMoveOutRecord', 'inLease', 'workDone', 'hours', 'hourlyRate', 'periodStart',
  'periodEnd', 'reletOn', 'note'];
const EXPECT = ['dates', 'defects', 'noDefects', 'forfeits', 'remedies', 'interest', 'barred', 'notBarred', 'atMost', 'overCap', 'notes'];
const STATES = ['met', 'missed', 'open', 'cannot-tell', 'not-needed'];
const FORFEITS = ['none', 'all-deductions', 'damage-deductions', 'papered-lines-only', 'whole-deposit-claim', 'cannot-tell'];
const MONEY = /^-?\d+\.\d{2}$/;
const WAYS = ['mail', 'first-class-mail', 'certified-mail', 'registered-mail', 'personal-delivery', 'email', 'text-message', 'left-at-door', 'mail-slot', 'fax', 'portal', 'other'];

function only(object, names, where, problem) {
  if (object === undefined || object === null) return;
  if (typeof object !== 'object') return problem(`${where} is not an object`);
  for (const name of Object.keys(object)) if (!names.includes(name)) problem(`${where}/${name}: no such member`);
}

function dates(object, names, where, problem) {
  for (const name of names) if (object?.[name] != null && !isUncertainDate(object[name])) problem(`${where}/${name}: ${object[name]} is not a date`);
}

function money(object, names, where, problem) {
  for (const name of names) if (object?.[name] != null && !MONEY.test(object[name])) problem(`${where}/${name}: ${object[name]} is not a sum like "12.00"`);
}

function circumstances(held, world, problem) {
  const at = new Map([...world.facts.values()].filter((f) => (f.at ?? `/circumstances/${f.id}`) === `/circumstances/${f.id}` && (f.at || !f.derived)).map((f) => [f.id, f]));
  for (const [id, value] of Object.entries(held ?? {})) {
    const fact = at.get(id);
    if (!fact && world.events.has(id) && value === false) continue; // known not to have happened
    if (!fact) { problem(`/circumstances/${id}: no such fact`); continue; }
    const good = value === null || { 'yes-no': typeof value === 'boolean', count: Number.isInteger(value), money: MONEY.test(value), text: typeof value === 'string' && (!fact.choices || fact.choices.includes(value)) }[fact.type];
    if (!good) problem(`/circumstances/${id}: ${JSON.stringify(value)} is not ${fact.type}`);
  }
}

function lines(held, world, problem) {
  const ids = new Set();
  for (const [i, line] of (held ?? []).entries()) {
    const where = `/lines/${i}`;
    only(line, LINE, where, problem);
    money(line, ['amount', 'repairCost'], where, problem);
    dates(line, ['installed'], where, problem);
    if (ids.has(line.id)) problem(`${where}/id: ${line.id} is taken`);
    ids.add(line.id);
    if (line.kind && !['damage', 'cleaning', 'rent', 'fee', 'utility', 'keys', 'disposal', 'other'].includes(line.kind)) problem(`${where}/kind: ${line.kind}`);
    if (!world.catalogue) continue;
    if (line.element && !world.catalogue.has(line.element)) problem(`${where}/element: no such element ${line.element}`);
    else if (line.finding && !world.catalogue.get(line.element)?.has(line.finding)) problem(`${where}/finding: no such finding ${line.finding}`);
  }
  return ids;
}

function expectations(expect, pack, lineIds, problem) {
  only(expect, EXPECT, '/expect', problem);
  if (!Object.keys(expect ?? {}).some((k) => k !== 'notes')) problem('/expect expects nothing');
  const duties = new Set(pack.duties.map((d) => d.id));
  for (const d of expect?.dates ?? []) {
    only(d, ['rule', 'last', 'first', 'state'], '/expect/dates', problem);
    if (!duties.has(d.rule)) problem(`/expect/dates: no such duty ${d.rule}`);
    if (d.state && !STATES.includes(d.state)) problem(`/expect/dates: no such state ${d.state}`);
    for (const day of [d.last, d.first]) for (const t of typeof day === 'object' ? Object.values(day ?? {}) : [day ?? '2000-01-01']) if (t !== null && !isCivilDate(t)) problem(`/expect/dates: ${t} is not a date`);
    if (d.last === undefined && d.first === undefined && d.state === undefined) problem(`/expect/dates: ${d.rule} is asked nothing`);
  }
  const defects = new Set([...pack.papers, ...pack.records, ...pack.inspection, ...pack.caps].map((r) => r.id));
  for (const id of [...(expect?.defects ?? []), ...(expect?.noDefects ?? [])]) if (!defects.has(id)) problem(`/expect: no such paper rule ${id}`);
  if (expect?.forfeits && !FORFEITS.includes(expect.forfeits)) problem(`/expect/forfeits: ${expect.forfeits}`);
  money(expect?.remedies, ['least', 'most'], '/expect/remedies', problem);
  money(expect, ['overCap'], '/expect', problem); // what the deposits come to above the cap; "0.00": nothing
  money(expect?.interest, ['low', 'likely', 'high'], '/expect/interest', problem);
  money(expect?.atMost, Object.keys(expect?.atMost ?? {}), '/expect/atMost', problem);
  for (const id of [...(expect?.barred ?? []), ...(expect?.notBarred ?? []), ...Object.keys(expect?.atMost ?? {})]) if (!lineIds.has(id)) problem(`/expect: no such line ${id}`);
}

/** Problems of one case file. */
export function checkCase(file, pack, world, problem) {
  only(file, ['says', 'statute', 'working', 'today', 'case', 'expect'], '', problem);
  for (const name of ['says', 'statute', 'working']) if (typeof file[name] !== 'string' || file[name].length < 5) problem(`/${name} is missing`);
  if (!isCivilDate(file.today ?? '')) problem(`/today: ${file.today} is not a date`);
  if (![1, 2].includes(file.case?.wearline)) problem('/case/wearline must be 1 or 2');
  // Places are named as version 2 has them.
  const held = file.case?.wearline === 1 ? JSON.parse(caseInVersion2(JSON.stringify(file.case))) : (file.case ?? {});
  only(held, CASE, '/case', problem);
  if (held.jurisdiction !== pack.jurisdiction) problem(`/case/jurisdiction: ${held.jurisdiction} is not the pack's`);
  only(held.tenancy, TENANCY, '/case/tenancy', problem);
  dates(held.tenancy, ['began', 'ended', 'possessionReturned', 'rentPaidThrough', 'forwardingAddressGiven'], '/case/tenancy', problem);
  money(held.tenancy, ['monthlyRent'], '/case/tenancy', problem);
  for (const d of held.deposits ?? []) { only(d, DEPOSIT, '/case/deposits', problem); dates(d, ['paid'], '/case/deposits', problem); money(d, ['amount', 'interestPaid'], '/case/deposits', problem); }
  only(held.statement, STATEMENT, '/case/statement', problem);
  dates(held.statement, ['dated', 'sent', 'received', 'refundSent'], '/case/statement', problem);
  money(held.statement, ['statedTotal', 'statedRefund', 'refundPaid'], '/case/statement', problem);
  const way = held.statement?.deliveryMethod;
  if (way && !WAYS.includes(way)) problem(`/case/statement/deliveryMethod: ${way}`);
  for (const id of [...(held.statement?.enclosedDocuments ?? []), ...(held.statement?.missingDocuments ?? [])]) if (!world.papers.has(id)) problem(`/case/statement: no such paper ${id}`);
  only(held.records, RECORDS, '/case/records', problem);
  circumstances(held.circumstances, world, problem);
  for (const e of held.events ?? []) {
    only(e, ['kind', 'date'], '/case/events', problem);
    if (!world.events.has(e.kind)) problem(`/case/events: no such event ${e.kind}`);
    dates(e, ['date'], '/case/events', problem);
  }
  if (!Array.isArray(held.lines)) problem('/case/lines is missing');
  expectations(file.expect, pack, lines(held.lines, world, problem), problem);
}

// The numbers of sections in a citation: "RCW 59.18.280(1)(a)" has 59.18.280. A year is none.
const sections = (text) => new Set((text.match(/\d[\w.:-]*/g) ?? []).map((t) => t.replace(/[.:-]+$/, '')).filter((t) => !/^(19|20)\d\d$/.test(t)));

/** Decisions and pages without a number of a section, and sections that no worked case turns on yet. */
const UNNAMED = {
  'US-CA': ['refund granberry-1995'], 'US-GA': ['damage-list ocga-44-7-33-b'], 'US-IL': ['receipts-after-estimate pa-103-224'], 'US-IN': ['damage-notice ind-15'],
  'US-KY': ['dissent krs-383.580-3', 'dissent krs-383.580-5'], 'US-LA': ['itemised loyola'], 'US-MA': ['list-content sjc-12247', 'evidence sjc-12247'],
  'US-MD': ['itemised rp-8-203-g'], 'US-MI': ['cap mcl-554.602', 'cap mcl-554.601'],
};

/** Every source of a rule that worked cases turn on is a section that one of them was worked out from. */
export function checkCited(pack, cases, problem) {
  const rules = new Map(Object.values(pack).filter(Array.isArray).flat().filter((r) => r?.id && r.source).map((r) => [r.id, r]));
  const named = new Map();
  for (const { statute, expect } of cases)
    for (const id of [...(expect.dates ?? []).map((d) => d.rule), ...(expect.defects ?? []), ...(expect.noDefects ?? [])])
      named.set(id, new Set([...(named.get(id) ?? []), ...sections(statute)]));
  for (const [id, said] of named) for (const key of rules.get(id)?.source ?? []) {
    if (UNNAMED[pack.jurisdiction]?.includes(`${id} ${key}`) || !pack.sources[key]) continue;
    if (![...sections(pack.sources[key].cite)].some((section) => said.has(section))) problem(`${id}: cites ${key}, which no worked case that turns on it names`);
  }
}
