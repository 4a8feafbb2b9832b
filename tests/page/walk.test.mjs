// The walk through the home as plain data: what is written down, what is judged, which answer is given and in what order, what it proves.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { isWalking, startWalk, endWalk } = await source('case/walk.ts');
const edits = await source('case/walk-edits.ts');
const home = await source('case/walk-home.ts');
const { answersOf, caseIfLeft, moveInOf } = await source('case/walk-answers.ts');
const proof = await source('case/walk-proof.ts');
const { inspectionDays } = await source('case/walk-days.ts');
const { asCase } = await source('case/shape.ts');
const { isBlank } = await source('case/case.ts');

const today = '2026-11-25';
const catalogue = { elements: [{ id: 'carpet', kind: 'damage' }, { id: 'carpet-cleaning', kind: 'cleaning' }, { id: 'trash-removal', kind: 'disposal' }] };
const empty = { wearline: 2, side: 'tenant', lines: [] };
const withThings = (...things) => ({ ...empty, walkThrough: { rooms: [{ id: 'r1', kind: 'bedroom', name: 'Bedroom' }], items: things.map((t, i) => ({ id: `t${i + 1}`, room: 'r1', ...t })) } });
const judgedLine = (id, fair, more = {}) => ({ id, claimed: '1000.00', verdict: 'chargeable-damage', certain: true, fair: { low: fair[0], likely: fair[1], high: fair[2] }, why: '', ...more });

test('a walk begins, ends, and begins again; one in which nothing was seen leaves nothing behind', () => {
  const walking = startWalk(empty);
  assert.ok(isWalking(walking));
  assert.equal(isBlank(walking), false);
  assert.equal('walkThrough' in endWalk(walking, today), false);
  const seen = edits.withState(edits.withRoom(walking, 'bedroom', 'Bedroom'), 'r1', 'carpet', 'fine', today);
  const over = endWalk(seen, today);
  assert.equal(over.walkThrough.completed, today);
  assert.equal(isWalking(over), false);
  assert.ok(isWalking(startWalk(over)));
  assert.equal(isWalking({ ...seen, lines: [{ id: '1' }] }), false, 'a statement that came ends it');
});

test('a tap writes the thing down with its day; a state that does not fit its fault takes the fault away', () => {
  let c = edits.withRoom(startWalk(empty), 'bedroom', 'Bedroom');
  c = edits.withRoom(c, 'bedroom', 'Bedroom');
  assert.deepEqual(edits.roomsOf(c).map((r) => [r.id, r.name]), [['r1', 'Bedroom'], ['r2', 'Bedroom 2']]);
  c = edits.withState(c, 'r1', 'carpet', 'damaged', today);
  c = edits.withThing(c, 'r1', 'carpet', { finding: 'burns', cause: 'tenant' });
  assert.deepEqual(edits.thingsOf(c), [{ id: 't1', room: 'r1', element: 'carpet', conditionAtMoveOut: 'damaged', inspected: today, finding: 'burns', cause: 'tenant' }]);
  assert.equal(c.walkThrough.date, today);
  c = edits.withState(c, 'r1', 'carpet', 'fine', '2026-11-26');
  assert.deepEqual(edits.thingsOf(c), [{ id: 't1', room: 'r1', element: 'carpet', conditionAtMoveOut: 'fine', inspected: '2026-11-26' }]);
  assert.equal(c.walkThrough.date, today, 'the walk keeps its day');
});

test('the rest of a room is fine with one tap, but of two kinds of floor nobody says which', () => {
  const c = edits.withRestFine(edits.withRoom(startWalk(empty), 'bedroom', 'Bedroom'), { id: 'r1', kind: 'bedroom' }, today);
  const { seen, all } = edits.countIn(c, { id: 'r1', kind: 'bedroom' });
  assert.equal(seen, all - 1);
  assert.ok(edits.thingsOf(c).every((t) => t.conditionAtMoveOut === 'fine' && !['carpet', 'hard-flooring', 'tile-grout'].includes(t.element)));
});

test('what is left is judged as a charge of what was seen: no price of its own, the state at move-in, dirt as cleaning', () => {
  const c = withThings(
    { element: 'carpet', conditionAtMoveOut: 'damaged', finding: 'burns', conditionAtMoveIn: 'worn', installed: '2020', cause: 'tenant' },
    { element: 'carpet', conditionAtMoveOut: 'dirty', quote: '120.00' },
    { element: 'trash-removal', conditionAtMoveOut: 'dirty', finding: 'bags-left', conditionAtMoveIn: 'dirty' },
    { element: 'carpet', conditionAtMoveOut: 'fine' },
  );
  const left = caseIfLeft({ ...c, statement: { sent: today } }, catalogue);
  assert.equal('statement' in left || 'walkThrough' in left, false);
  assert.deepEqual(left.lines, [
    { id: 't1', amount: '1000.00', kind: 'damage', element: 'carpet', finding: 'burns', installed: '2020', cause: 'tenant', conditionAtMoveIn: 'worn' },
    { id: 't2', amount: '120.00', kind: 'cleaning', element: 'carpet-cleaning', finding: 'stains' },
    { id: 't3', amount: '1000.00', kind: 'disposal', element: 'trash-removal', finding: 'bags-left', conditionAtMoveIn: 'same' },
  ]);
  assert.equal(moveInOf({ conditionAtMoveIn: 'fine', conditionAtMoveOut: 'fine' }), 'good');
});

test('three answers: leave what costs nothing, put right what is simple, do not touch what is dangerous', () => {
  const c = withThings(
    { element: 'carpet', conditionAtMoveOut: 'dirty', finding: 'stains' },
    { element: 'window-glass', conditionAtMoveOut: 'damaged', finding: 'broken' },
    { element: 'interior-paint', conditionAtMoveOut: 'worn', finding: 'faded' },
    { element: 'cabinet', conditionAtMoveOut: 'damaged' },
    { element: 'towel-bar', conditionAtMoveOut: 'missing' },
    { element: 'carpet', conditionAtMoveOut: 'dirty', finding: 'stains', remedied: today },
    { element: 'water-heater', conditionAtMoveOut: 'damaged', finding: 'tampered' },
  );
  const left = { lines: ['t1', 't2', 't4', 't5', 't6', 't7'].map((id) => judgedLine(id, ['0.00', '300.00', '500.00'])).concat(judgedLine('t3', ['0.00', '0.00', '0.00'], { verdict: 'ordinary-wear' })) };
  const kinds = Object.fromEntries(answersOf(c, left).map((a) => [a.thing.id, a.kind]));
  assert.deepEqual(kinds, { t1: 'self', t2: 'stop', t3: 'leave', t4: 'say', t5: 'ask', t6: 'done', t7: 'stop' });
});

test('what could cost less than half a percent is left: nothing is worth the time', () => {
  const c = withThings({ element: 'carpet', conditionAtMoveOut: 'dirty', finding: 'stains' });
  const kind = (high) => answersOf(c, { lines: [judgedLine('t1', ['0.00', null, high])] })[0].kind;
  assert.deepEqual([kind('0.00'), kind('4.90'), kind('5.00')], ['leave', 'leave', 'self']);
});

test('paint of a home that may be older than 1978 is left alone; known to be newer, holes may be filled', () => {
  const c = (built) => {
    const walk = withThings({ element: 'interior-paint', conditionAtMoveOut: 'damaged', finding: 'nail-holes-many' });
    return built === undefined ? walk : { ...walk, walkThrough: { ...walk.walkThrough, builtBefore1978: built } };
  };
  const kind = (built) => answersOf(c(built), { lines: [judgedLine('t1', ['0.00', '100.00', '200.00'])] })[0].kind;
  assert.deepEqual([kind(undefined), kind(true), kind(false)], ['stop', 'stop', 'self']);
});

test('the most money for the least time comes first, named prices before shares', () => {
  const c = withThings(
    { element: 'whole-unit-cleaning', conditionAtMoveOut: 'dirty', finding: 'heavy-soil', quote: '240.00' },
    { element: 'light-bulb', conditionAtMoveOut: 'missing', finding: 'missing', quote: '10.00' },
    { element: 'carpet', conditionAtMoveOut: 'dirty', finding: 'stains' },
    { element: 'window-covering', conditionAtMoveOut: 'dirty', finding: 'dusty' },
  );
  // 240.00 in 240 minutes is 1.00 a minute, 10.00 in 5 minutes 2.00; half of a price in 30 minutes is less a minute than a third in 10.
  const left = { lines: [judgedLine('t1', ['240.00', '240.00', '240.00']), judgedLine('t2', ['10.00', '10.00', '10.00']), judgedLine('t3', ['0.00', '500.00', '1000.00']), judgedLine('t4', ['0.00', '333.00', '1000.00'])] };
  assert.deepEqual(answersOf(c, left).map((a) => a.thing.id), ['t2', 't1', 't4', 't3']);
  assert.deepEqual(answersOf(c, left)[3].share, { low: 0, likely: 50, high: 100 });
});

test('a danger names the fault it belongs to and says where it was read', () => {
  const codes = (t) => home.hazardsOf({ id: 't', room: 'r', ...t }, {}).map((h) => h.code);
  assert.deepEqual(codes({ element: 'range-oven', conditionAtMoveOut: 'dirty', finding: 'left-dirty' }), ['cleaners']);
  assert.ok(codes({ element: 'garage-opener', conditionAtMoveOut: 'damaged', finding: 'door-dented' }).includes('springs'));
  for (const h of home.hazards) assert.ok(home.sourcesOf(h).length > 0 && home.sourcesOf(h).every((s) => s.read), h.code);
});

test('a charge finds what was seen by its thing and its room; what that shows becomes its facts once a person says so', () => {
  const walk = {
    inspectionListGiven: true,
    rooms: [{ id: 'r1', name: 'Bedroom' }, { id: 'r2', name: 'Living room' }],
    items: [
      { id: 't1', room: 'r1', element: 'carpet', conditionAtMoveOut: 'fine', conditionAtMoveIn: 'fine', installed: '2019', onLandlordList: false },
      { id: 't2', room: 'r2', element: 'carpet', conditionAtMoveOut: 'damaged', finding: 'burns', onLandlordList: true },
    ],
  };
  const c = { ...empty, walkThrough: walk, lines: [{ id: '1', text: 'Carpet, bedroom', amount: '300.00' }, { id: '2', text: 'Carpet', amount: '100.00' }] };
  const judged = { element: 'carpet' };
  assert.equal(proof.clearMatch(c, c.lines[0], judged).id, 't1');
  assert.equal(proof.clearMatch(c, c.lines[1], judged), undefined, 'two carpets and no room: nobody can say which');
  assert.deepEqual(proof.shownBy(c, walk.items[0]), ['fine', 'off-list']);
  const next = proof.withMatch(c, '1', 't1');
  assert.deepEqual(next.lines[0], { ...c.lines[0], installed: '2019', conditionAtMoveIn: 'good', onMoveOutRecord: false, location: 'Bedroom' });
  assert.equal(next.walkThrough.items[0].line, '1');
  assert.equal('line' in proof.withoutMatch(next, 't1').walkThrough.items[0], false);
  const known = proof.withMatch({ ...c, lines: [{ ...c.lines[0], installed: '2021' }] }, '1', 't1');
  assert.equal(known.lines[0].installed, '2021', 'what a person entered stays');
});

const date = (more) => ({ who: 'landlord', last: null, first: null, notBefore: false, state: 'open', dependsOn: [], rule: '', ...more });
const span = (day) => ({ earliest: day, latest: day });
test('a day before which nothing may be done begins a window and is no last day; days of the beginning are left out', () => {
  const days = (dates, leaves = '2026-12-31') => {
    const { rules, ...rest } = inspectionDays({ dates }, today, leaves);
    return { ...rest, rules: rules.length };
  };
  assert.deepEqual(days([date({ id: 'hold-inspection', duty: 'hold-inspection', notBefore: true, first: span('2026-12-06'), last: span('2026-12-06') })]), { from: '2026-12-06', rules: 1 });
  assert.deepEqual(
    days([
      date({ id: 'ask-move-in-inspection', duty: 'request-inspection', last: span('2022-01-18') }),
      date({ id: 'ask-move-out-inspection', duty: 'request-inspection', last: span('2026-12-16') }),
      date({ id: 'inspection-not-before', duty: 'hold-inspection', notBefore: true, first: span('2026-12-26'), last: span('2026-12-26') }),
      date({ id: 'inspection-by', duty: 'hold-inspection', last: span('2027-01-05') }),
    ]),
    { askBy: '2026-12-16', from: '2026-12-26', to: '2027-01-05', rules: 3 },
  );
  assert.deepEqual(days([date({ id: 'check-list', duty: 'request-inspection', last: span('2027-01-08') })]), { rules: 1 }, 'a right that comes after leaving is not to be asked for before');
  assert.deepEqual(days([date({ id: 'return-deposit', duty: 'return-deposit', last: span('2027-01-08') })]), { rules: 0 });
});

test('a file with a walk opens; what is no thing in it is left out and named', () => {
  const { subject, dropped } = asCase({ wearline: 2, lines: [], walkThrough: { items: [{ id: 't1', room: 'r1', element: 'carpet' }, 'x', { id: 't2' }], rooms: [{ id: 'r1' }, null], moveOutTasks: ['keys', 3] } });
  assert.deepEqual(subject.walkThrough.items, [{ id: 't1', room: 'r1', element: 'carpet' }]);
  assert.deepEqual(subject.walkThrough.rooms, [{ id: 'r1' }]);
  assert.ok(dropped.includes('/walkThrough/items/1') && dropped.includes('/walkThrough/items/2') && dropped.includes('/walkThrough/moveOutTasks/1'));
  assert.deepEqual(asCase({ wearline: 2, lines: [] }).subject, { wearline: 2, lines: [] });
});
