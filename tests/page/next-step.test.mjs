// What the page says to do next: the order of what is lost first, on plain answers of the engine.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { nextSteps } = await source('case/next-step.ts');
const TODAY = '2026-11-25';

const span = (low, high = low) => ({ low, likely: low, high });
const day = (date) => ({ earliest: date, latest: date });
const duty = (over) => ({ id: over.duty, label: over.duty, who: 'landlord', notBefore: false, losesRightIfMissed: false, ifMissed: 'lost', condition: null, ...over });
const question = (asks, swing, over = {}) => ({ asks, code: 'x', id: null, text: asks, effect: swing, line: null, ...over });
const answer = (over = {}) => ({
  dates: [], questions: [], remedies: null, lines: [],
  totals: { shortfall: span('100.00', '500.00'), owedByTenant: span('0.00') },
  ...over,
});
const known = {
  jurisdiction: 'US-MI', tenancy: { possessionReturned: '2026-10-31' }, deposits: [{ amount: '900.00' }], statement: { refundPaid: '0.00' },
  lines: [{ id: '1', amount: '500.00' }],
};
const steps = (result, subject = known, over = {}) =>
  nextSteps({ result, subject, side: 'tenant', today: TODAY, skipped: new Set(), clocks: [], leftOut: false, replyDays: 14, ...over });
const kinds = (...asked) => steps(...asked).map((s) => s.what ?? s.at ?? s.question?.asks ?? s.kind);

test('a lapsed right comes before a day that can be kept, that before a day the landlord missed, then facts, then the letter', () => {
  const dates = [
    duty({ duty: 'itemize', state: 'missed', last: day('2026-11-10') }),
    duty({ duty: 'respond', who: 'tenant', losesRightIfMissed: true, state: 'open', last: day('2026-11-26') }),
    duty({ duty: 'sue', who: 'tenant', losesRightIfMissed: true, state: 'missed', last: day('2026-11-01') }),
  ];
  const questions = [question('/lines/0/installed', '90.00', { line: '1' })];
  assert.deepEqual(kinds(answer({ dates, questions })), ['lapsed', 'own-day', 'missed', '/lines/0/installed', 'letter']);
});

test('days that cannot both be right come before all that is counted from them, until they are left', () => {
  const dates = [duty({ duty: 'itemize', state: 'missed', last: day('2026-11-10') })];
  const questions = [question('/lines/0/installed', '90.00', { line: '1' }), question('/statement/sent', '0.00', { code: 'date-order', affectsDeadline: true })];
  assert.deepEqual(kinds(answer({ dates, questions })), ['/statement/sent', 'missed', '/lines/0/installed', 'letter']);
});

test('of two days that can be kept the nearer comes first; one that must not come too early is no last day', () => {
  const own = (duty_, date, over) => duty({ duty: duty_, who: 'tenant', losesRightIfMissed: true, state: 'open', last: day(date), ...over });
  const dates = [own('sue', '2027-05-01'), own('object', '2026-11-30'), own('wait-before-suit', '2026-11-26', { notBefore: true })];
  assert.deepEqual(steps(answer({ dates })).filter((s) => s.date).map((s) => s.date.duty), ['object', 'sue']);
});

test('a day of one’s own that only may apply comes after the sure ones and says so', () => {
  const dates = [
    duty({ duty: 'request-documents', who: 'tenant', losesRightIfMissed: true, state: 'undetermined', last: day('2026-11-27') }),
    duty({ duty: 'respond', who: 'tenant', losesRightIfMissed: true, state: 'open', last: day('2026-12-24') }),
  ];
  assert.deepEqual(steps(answer({ dates })).slice(0, 2).map((s) => [s.date.duty, s.sure]), [['respond', true], ['request-documents', false]]);
});

test('what nothing can be said without is asked first, in order, and what the person does not know is left', () => {
  const bare = { lines: [{ id: '1', amount: '5.00' }] };
  assert.deepEqual(kinds(answer(), bare).slice(0, 4), ['place', 'moved-out', 'deposit', 'came-back']);
  assert.deepEqual(kinds(answer(), bare, { skipped: new Set(['place', 'deposit']) }).slice(0, 2), ['moved-out', 'came-back']);
  assert.deepEqual(kinds(answer(), bare, { side: 'landlord' }).slice(0, 3), ['place', 'moved-out', 'deposit']);
});

test('a date that decides whether a day was kept comes before the money; one nothing hangs on is not asked', () => {
  const questions = [question('/lines/0/installed', '400.00'), question('/tenancy/ended', '0.00', { code: 'law' })];
  const open = duty({ duty: 'itemize', state: 'undetermined', last: null });
  const clocks = ['/statement/sent', '/tenancy/ended'];
  assert.equal(kinds(answer({ questions, dates: [open] }), known, { clocks })[0], '/statement/sent');
  assert.equal(kinds(answer({ questions, dates: [{ ...open, dependsOn: ['/tenancy/ended'] }] }), known, { clocks })[0], '/tenancy/ended');
  const turning = [questions[0], { ...questions[1], affectsDeadline: true }];
  assert.equal(kinds(answer({ questions: turning, dates: [{ ...open, dependsOn: ['/tenancy/ended'] }] }), known, { clocks: [] })[0], '/tenancy/ended');
  assert.equal(kinds(answer({ questions, dates: [{ ...open, state: 'met' }] }), known, { clocks })[0], '/lines/0/installed');
});

test('the question that moves the most is one step; put aside, the next takes its place, then the letter', () => {
  const questions = ['a', 'b', 'c', 'd'].map((q, i) => question(q, `${90 - i}.00`));
  assert.deepEqual(kinds(answer({ questions })), ['a', 'letter']);
  const aside = (...names) => ({ skipped: new Set(names.map((n) => `${n}  x`)) });
  assert.deepEqual(kinds(answer({ questions }), known, aside('a')), ['b', 'letter']);
  assert.deepEqual(kinds(answer({ questions }), known, aside('a', 'b', 'c')), ['letter']);
});

test('a landlord who sent nothing: wait while there is time, write once it is past', () => {
  const silent = { ...known, lines: [], statement: { statementReceived: false, refundPaid: '0.00' } };
  const ahead = duty({ duty: 'itemize', state: 'open', last: day('2026-12-05') });
  assert.deepEqual(kinds(answer({ dates: [ahead] }), silent), ['wait', 'letter']);
  const past = { ...ahead, state: 'missed', last: day('2026-10-21') };
  const [first] = steps(answer({ dates: [past], remedies: { forfeiture: 'yes', amountDueIfForfeited: span('900.00') } }), silent);
  assert.deepEqual([first.kind, first.late, first.forfeiture], ['missed', 35, 'yes']);
});

test('a letter that was written is answered before a missed day is raised again', () => {
  const dates = [duty({ duty: 'itemize', state: 'missed', last: day('2026-11-10') })];
  const on = (date) => ({ ...known, events: [{ kind: 'tenant-demand', date }] });
  assert.equal(kinds(answer({ dates }), on('2026-11-20'))[0], 'answer');
  assert.equal(kinds(answer({ dates }), on('2026-11-11'))[0], 'missed');
});

test('all paid back says so and stops, unless something was left out or the tenant owes', () => {
  const paid = answer({ totals: { shortfall: span('0.00'), owedByTenant: span('0.00') } });
  assert.deepEqual(kinds(paid), ['done']);
  assert.ok(!kinds(paid, known, { leftOut: true }).includes('done'));
  assert.ok(!kinds(answer({ totals: { shortfall: span('0.00'), owedByTenant: span('80.00') } })).includes('done'));
  const lost = { forfeiture: 'possible', amountDueIfForfeited: span('900.00') };
  assert.ok(!kinds({ ...paid, remedies: lost }).includes('done'));
});

test('who still lives there is told to get ready, never to ask for money', () => {
  const there = { ...known, tenancy: { ended: '2026-12-31' } };
  assert.deepEqual(kinds(answer({ questions: [question('a', '50.00')] }), there), ['living-there']);
});

test('a landlord: what is late first, then the last day ahead, then the statement', () => {
  const late = duty({ duty: 'return-deposit', state: 'missed', last: day('2026-11-01') });
  const ahead = duty({ duty: 'itemize', state: 'open', last: day('2026-12-10') });
  const moveIn = duty({ duty: 'move-in-list', state: 'missed', last: day('2020-01-01') });
  assert.deepEqual(kinds(answer({ dates: [moveIn, ahead, late] }), known, { side: 'landlord' }), ['missed', 'own-day', 'letter']);
});
