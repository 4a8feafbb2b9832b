// Proof that the pack checker can fail: one fault put into a copy of a pack or a case for each check, and the words it must answer with.
import assert from 'node:assert/strict';
import path from 'node:path';
import test from 'node:test';
import { checkCase } from './packcheck/cases.mjs';
import { checkWeak, coverageTable, replaceBetweenMarkers } from './packcheck/coverage.mjs';
import { isCivilDate, isUncertainDate } from './packcheck/dates.mjs';
import { allLayers, calledUnknown, uncovered } from './packcheck/layers.mjs';
import { checkReferences } from './packcheck/references.mjs';
import { checkSpoken } from './packcheck/spoken.mjs';
import { checkVariants } from './packcheck/variants.mjs';
import { CASES, readJson, RULES, schemaProblems, schemaValidator, sharedWorld, withOwn } from './packcheck/world.mjs';

const validate = schemaValidator();
const shared = sharedWorld();
const packOf = (code) => readJson(path.join(RULES, `law/${code}.json`));
const rule = (pack, id) => Object.values(pack).filter(Array.isArray).flat().find((r) => r.id === id);

function problemsOf(pack) {
  const found = schemaProblems(validate, pack);
  if (found.length) return found;
  const problem = (text) => found.push(text);
  const world = withOwn(shared, pack, problem);
  checkReferences(pack, world, problem);
  checkVariants(pack, world.facts, problem);
  checkSpoken(pack, problem);
  checkWeak(pack, problem);
  return found;
}

const FAULTS = [
  ['an unknown member', /unevaluated/, (p) => { p.duties[0].colour = 'red'; }],
  ['an unknown part', /additional/, (p) => { p.extras = []; }],
  ['a section sign in a sentence', /pattern/, (p) => { p.duties[0].text = 'See § 5.'; }],
  ['a condition without its words', /whenText/, (p) => { delete p.duties[0].whenText; }],
  ['a window without its event', /by/, (p) => { delete rule(p, 'statement').by; }],
  ['money as a number', /string/, (p) => { p.remedies[0].fixed = 100; }],
  ['a number its sentences do not say', /count 29 is in none of its sentences/, (p) => { rule(p, 'statement').legs[0].count = 29; }],
  ['a unit its sentences do not say', /business-day is in none of its sentences/, (p) => { rule(p, 'statement').legs[0].unit = 'business-day'; }],
  ['a day that nothing else names', /the day 2023-07-22 is named in no sentence/, (p) => { rule(p, 'wear').from = '2023-07-22'; }],
  ['a need its sentences do not say', /data and its sentences disagree \(bad faith/, (p) => { rule(p, 'full-deposit').needs = 'bad-faith'; }],
  ['an unknown source', /no such source nobody/, (p) => { p.duties[0].source = ['nobody']; }],
  ['a source that nobody uses', /source spare is not used/, (p) => { p.sources.spare = { cite: 'Nothing', read: 'memory' }; }],
  ['two rules of one name', /id statement is taken/, (p) => { p.papers[0].id = 'statement'; }],
  ['an unknown fact', /no such fact ghost/, (p) => { p.bars[0].unless = { fact: 'ghost' }; }],
  ['a yes-no fact with a text', /needs true or false/, (p) => { p.bars[0].unless = { fact: 'sold', is: 'yes' }; }],
  ['a text fact without a text', /needs "is" or "in"/, (p) => { p.bars[0].unless = { fact: 'locality' }; }],
  ['a choice that does not exist', /has no choice/, (p) => { p.bars[0].unless = { fact: 'tenancy-kind', is: 'yearly' }; }],
  ['a count with money', /whole numbers/, (p) => { p.bars[0].unless = { fact: 'landlord-units', over: '5.00' }; }],
  ['an unknown event', /no such event ghost/, (p) => { p.duties[0].legs[0].after = ['ghost']; }],
  ['a date that does not exist', /2023-02-30 is not a date/, (p) => { rule(p, 'statement').from = '2023-02-30'; }],
  ['a duty used where it is not known yet', /may not be used in papers/, (p) => { p.papers[0].when = { duty: 'statement', is: 'missed' }; }],
  ['an unknown duty in a condition', /no such duty ghost/, (p) => { p.forfeits[0].when = { duty: 'ghost', is: 'missed' }; }],
  ['an unknown defect', /no such paper rule ghost/, (p) => { p.forfeits[0].when = { defect: 'ghost' }; }],
  ['an unknown duty name', /no such duty name juggle/, (p) => { p.duties[0].duty = 'juggle'; }],
  ['a duty without a name of its own', /give this duty a name/, (p) => { p.duties[0].duty = 'other'; }],
  ['a copy on another site', /copy on another site/, (p) => { Object.values(p.sources)[0].url = 'https://docslib.org/doc/1'; }],
  ['no legal aid', /help: no legal-aid/, (p) => { p.help = p.help.filter((h) => h.kind !== 'legal-aid'); }],
  ['a scope rule that turns off nothing', /turnsOff names no rule ghost/, (p) => { p.scope[0].turnsOff = ['ghost']; }],
  ['a pack called weak that is not', /weak must be false/, (p) => { p.weak = true; }],
  ['an unknown paper', /no such paper poem/, (p) => { p.papers[0].requires = ['poem']; }],
  ['an unknown element', /no such element throne/, (p) => { p.bars[0].line = { element: ['throne'] }; }],
  ['an unknown finding', /no such finding haunted/, (p) => { p.bars[0].line = { element: ['carpet'], finding: ['haunted'] }; }],
  ['an unknown state at move-in', /no such state at move-in/, (p) => { p.bars[0].line = { atMoveIn: ['haunted'] }; }],
  ['a fact declared in vain', /fact spare is declared but not used/, (p) => { p.facts.push({ id: 'spare', type: 'yes-no', question: 'Why?' }); }],
  ['a fact that is shared already', /fact sold is a shared one/, (p) => { p.facts.push({ id: 'sold', type: 'yes-no', question: 'Why?' }); }],
  ['two legs without "take"', /several legs need "take"/, (p) => { p.duties[0].legs.push(p.duties[0].legs[0]); }],
  ['two events without "take"', /several events need "take"/, (p) => { delete p.duties[0].legs[0].take; }],
  ['business days that nothing defines', /businessDaySkips/, (p) => { p.duties[0].legs[0].unit = 'business-day'; }],
  ['two general counting rules', /one counting rule/, (p) => { p.counting.push({ ...p.counting[0], id: 'again' }); }],
  ['a limit without a limit', /limit and "limit" go together/, (p) => { p.bars[0].effect = 'limit'; }],
  ['proof without papers', /needs-proof and "proof" go together/, (p) => { p.bars[0].effect = 'needs-proof'; }],
  ['a lost right that is not shown loud', /go together/, (p) => { p.duties[0].ifMissed = ['tenant-loses-right']; }],
  ['"you" in a sentence', /says "you"/, (p) => { p.duties[0].text = 'Pay it back to you.'; }],
  ['a doubt about no rule', /no such rule ghost/, (p) => { p.checkThis[0].rules = ['ghost']; }],
  ['a topic both found and not found', /was not found, yet/, (p) => { p.notFound.push({ id: 'nothing', topics: ['bars'], text: 'Nothing.' }); }],
  ['two variants for one case', /statement and statement-abandoned both apply/, (p) => { rule(p, 'statement').when = { fact: 'deductions-made' }; }],
  ['a case without a duty to return the deposit', /no duty to return the deposit/, (p) => { p.duties = p.duties.filter((d) => d.id !== 'refund-abandoned'); }],
  ['a hole between the old rule and the new one', /no duty to return the deposit|no rule of duties starts/, (p) => { rule(p, 'refund-until-2023').to = '2023-07-20'; }],
  ['an old rule that no new one follows', /no rule of duties starts on 2023-07-22/, (p) => { rule(p, 'statement-until-2023').to = '2023-07-21'; }],
  ['a window that ends before it begins', /from is after to/, (p) => { Object.assign(rule(p, 'statement'), { to: '2020-01-01' }); }],
  ['a condition that can never hold', /can never hold/, (p) => { p.bars[0].unless = { all: [{ fact: 'sold' }, { fact: 'sold', is: false }] }; }],
  ['a condition that always holds', /always holds/, (p) => { p.bars[0].unless = { any: [{ fact: 'sold' }, { fact: 'sold', is: false }] }; }],
  ['two caps for one deposit', /caps security: no-cap and second-cap both apply/, (p) => { p.caps.push({ ...p.caps[0], id: 'second-cap' }); }]
];

test('a pack as it stands has no problem', () => assert.deepEqual(problemsOf(packOf('US-WA')), []));

for (const [name, words, fault] of FAULTS) test(`pack: ${name}`, () => {
  const pack = packOf('US-WA');
  fault(pack);
  assert.match(problemsOf(pack).join('\n'), words);
});

const CASE_FAULTS = [
  ['another jurisdiction', /not the pack's/, (c) => { c.case.jurisdiction = 'US-OR'; }],
  ['an unknown member', /no such member/, (c) => { c.case.tenancy.colour = 'red'; }],
  ['a date that does not exist', /is not a date/, (c) => { c.case.tenancy.ended = '2026-02-30'; }],
  ['a sum as a number', /is not a sum/, (c) => { c.case.lines[0].amount = '12'; }],
  ['an unknown element', /no such element/, (c) => { c.case.lines[0].element = 'throne'; }],
  ['an unknown circumstance', /no such fact/, (c) => { c.case.circumstances.ghost = true; }],
  ['a circumstance of the wrong kind', /is not yes-no/, (c) => { c.case.circumstances.abandoned = 'no'; }],
  ['an unknown event', /no such event/, (c) => { c.case.events = [{ what: 'ghost', on: '2026-01-01' }]; }],
  ['a duty that the pack does not have', /no such duty/, (c) => { c.expect.dates[0].rule = 'ghost'; }],
  ['a state that does not exist', /no such state/, (c) => { c.expect.dates[0].state = 'late'; }],
  ['a line that is not there', /no such line/, (c) => { c.expect.barred = ['9']; }],
  ['nothing expected', /expects nothing/, (c) => { c.expect = { notes: 'none' }; }],
  ['no working', /working is missing/, (c) => { delete c.working; }]
];

for (const [name, words, fault] of CASE_FAULTS) test(`case: ${name}`, () => {
  const pack = packOf('US-WA');
  const file = readJson(path.join(CASES, 'US-WA/01-sunday-roll.json'));
  const found = [];
  const problem = (text) => found.push(text);
  const world = withOwn(shared, pack, problem);
  checkCase(file, pack, world, problem);
  assert.deepEqual(found, [], 'the case as it stands');
  fault(file);
  checkCase(file, pack, world, problem);
  assert.match(found.join('\n'), words);
});

test('dates: the calendar and the uncertain forms', () => {
  for (const good of ['2024-02-29', '2026-11-25']) assert.ok(isCivilDate(good), good);
  for (const bad of ['2026-02-29', '2026-13-01', '26-01-01', '2026-1-1']) assert.ok(!isCivilDate(bad), bad);
  for (const good of ['2019', '2019-06', '2019-06-14', '2019/2021', '../2020', '2019/..', '2019~', '2019-06~']) assert.ok(isUncertainDate(good), good);
  for (const bad of ['2019-13', '../..', '2019/2020/2021', 'June 2019', 2019]) assert.ok(!isUncertainDate(bad), String(bad));
});

test('coverage: the table names every source kind, and lands between the markers', () => {
  const table = coverageTable([packOf('US-WA')]);
  assert.match(table, /\| US-WA Washington \| \d+ % \| SG \| S \|/);
  const readme = 'a\n<!-- coverage: written by tests/reference/check-packs.mjs --write-coverage -->\nstale row\n<!-- /coverage -->\nb';
  const fresh = replaceBetweenMarkers(readme, table);
  assert.ok(fresh.includes(table) && !fresh.includes('stale row') && fresh.endsWith('b'));
  assert.throws(() => replaceBetweenMarkers('no markers', table));
});

test('a layer without two worked cases fails', () => {
  const layer = (id) => allLayers().find((l) => l.file === id).layer;
  const at = (jurisdiction, locality, circumstances) => ({ case: { jurisdiction, locality, circumstances } });
  const town = layer('US-IL-oak-park');
  assert.match(uncovered(town, [at('US-IL', 'Oak Park'), at('US-IL', 'Skokie'), at('US-MI', 'Oak Park')])[0], /^1 worked cases/);
  assert.deepEqual(uncovered(town, [at('US-IL', 'Oak Park'), at('US-IL', 'Village of Oak Park')]), []);
  const federal = layer('US-FEDERAL');
  assert.match(uncovered(federal, [at('US-OH', null, { 'program-home': false }), at('CA-BC', null, { 'program-home': true })])[0], /^0 worked cases/);
  assert.deepEqual(uncovered(federal, [at('US-OH', null, { 'program-home': true }), at('US-GU', null, { 'left-under-orders': true })]), []);
});

test('a pack that calls a place unknown whose rules lie over it fails', () => {
  const seattle = allLayers().find((l) => l.file === 'US-WA-seattle').layer;
  assert.deepEqual(calledUnknown(seattle, packOf('US-WA')), []);
  const pack = packOf('US-WA');
  pack.checkThis.push({ text: 'Courts differ. City rules, such as those of Seattle, were not looked up.', rules: [] });
  assert.deepEqual(calledUnknown(seattle, pack), ['US-WA says: City rules, such as those of Seattle, were not looked up.']);
});
