// Changes to a case, its past, and the ids of its charges.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const {
  asCredit, withCopy, withCreditTyped, withEvent, withEventHow, withFactKept, withFactStruck, withLine, withMoved, withoutLine, withWordsReadAgain,
} = await source('case/edits.ts');
const { amountForField, amountFromTyping, shownAmount } = await source('case/typed-money.ts');
const { change, begin, undo, redo } = await source('case/history.ts');
const { freshLineIdOf, sheetOf, isUnsaved, workOf } = await source('app/sheet.ts');

const of = (...ids) => ({ wearline: 2, lines: ids.map((id) => ({ id })) });
const ids = (c) => c.lines.map((l) => l.id).join('');

test('each change gives the next case and leaves the one before as it was', () => {
  const c = Object.freeze(of('1', '2', '3'));
  Object.freeze(c.lines);
  assert.equal(ids(withoutLine(c, 1)), '13');
  assert.equal(ids(withoutLine(c, 9)), '123');
  assert.equal(ids(withCopy(c, 0)), '1423');
  assert.equal(ids(withMoved(c, 0, 1)), '213');
  assert.equal(withMoved(c, 0, -1), c);
  assert.equal(withMoved(c, 2, 1), c);
  assert.equal(ids(withLine(c, { id: '9' })), '1239');
  assert.equal(ids(c), '123');
});

test('an event is set once, changed, and taken out with nothing left behind', () => {
  const once = withEvent(of(), 'lease-ended', '2026-09-30');
  assert.deepEqual(once.events, [{ kind: 'lease-ended', date: '2026-09-30' }]);
  const changed = withEvent(once, 'lease-ended', '2026-10-01');
  assert.deepEqual(changed.events, [{ kind: 'lease-ended', date: '2026-10-01' }]);
  assert.equal('events' in withEvent(changed, 'lease-ended', undefined), false);
  assert.equal(withEvent(once, 'other', undefined), once);
});

test('how a letter went stays with its day, and goes with it', () => {
  const sent = withEventHow(withEvent(of(), 'tenant-demand', '2026-07-02'), 'tenant-demand', 'certified-mail');
  assert.deepEqual(sent.events, [{ kind: 'tenant-demand', date: '2026-07-02', deliveryMethod: 'certified-mail' }]);
  assert.equal(withEvent(sent, 'tenant-demand', '2026-07-03').events[0].deliveryMethod, 'certified-mail');
  assert.deepEqual(withEventHow(sent, 'tenant-demand', undefined).events, [{ kind: 'tenant-demand', date: '2026-07-02' }]);
  assert.equal(withEventHow(of(), 'tenant-demand', 'email').events, undefined);
  assert.equal('events' in withEvent(sent, 'tenant-demand', undefined), false);
});

test('a sum with a minus sign becomes a credit of that sum', () => {
  for (const minus of ['-', '\u2212', '- ']) {
    const c = asCredit({ wearline: 2, lines: [{ id: '1', text: 'Refund', amount: `${minus}100` }] }, 0);
    assert.deepEqual(c.lines, [{ id: '1', text: 'Refund', amount: '100.00', credit: true }]);
  }
});

test('a credit stays one while it is typed with its sign, and is a charge without', () => {
  const c = { wearline: 2, lines: [{ id: '1', amount: '100.00', credit: true }] };
  assert.deepEqual(withCreditTyped(c, 0, '\u221290').lines, [{ id: '1', amount: '90.00', credit: true }]);
  assert.deepEqual(withCreditTyped(c, 0, '-1,200.50').lines, [{ id: '1', amount: '1200.50', credit: true }]);
  assert.deepEqual(withCreditTyped(c, 0, '90').lines, [{ id: '1', amount: '90.00' }]);
  assert.deepEqual(withCreditTyped(c, 0, '').lines, [{ id: '1' }]);
  assert.equal(shownAmount(c.lines[0]), '\u2212100.00');
});

test('sums are read and grouped in a time that grows with their length alone', () => {
  const digits = '1'.repeat(200_000);
  assert.equal(amountFromTyping(digits), digits);
  assert.equal(amountFromTyping(`1${' '.repeat(100_000)}x`), `1${' '.repeat(100_000)}x`);
  assert.equal(amountForField(`${digits}.00`).length, digits.length + 66_666 + 3);
  assert.equal(amountForField('1234567.00'), '1,234,567.00');
  assert.equal(amountForField('12.00'), '12.00');
  assert.equal(amountForField('123.00'), '123.00');
});

test('typing on in one field is one step of the past', () => {
  let h = begin(of());
  for (const text of ['C', 'Ca', 'Car']) h = change(h, { ...h.now, title: text }, '/title');
  h = change(h, { ...h.now, locality: 'x' }, '/locality');
  h = undo(h);
  assert.equal(h.now.title, 'Car');
  assert.equal(undo(h).now.title, undefined);
  assert.equal(redo(undo(h)).now.title, 'Car');
});

test('the id of a charge that was taken out goes to no other: a photo of it stays a photo of it', () => {
  const sheet = sheetOf({ subject: of('1', '2') });
  assert.equal(freshLineIdOf(sheet), '3');
  sheet.history = change(sheet.history, of('1', '2', '3'));
  assert.equal(freshLineIdOf(sheet), '4');
  sheet.history = change(sheet.history, of('1'));
  assert.equal(freshLineIdOf(sheet), '4');
});

test('a case counts as unsaved when its words, its letter or its photos changed', () => {
  const sheet = sheetOf({ subject: of('1') });
  assert.equal(isUnsaved(sheet), false);
  sheet.letter = { ...sheet.letter, kind: 'follow-up' };
  assert.equal(isUnsaved(sheet), true);
  sheet.saved = workOf(sheet);
  assert.equal(isUnsaved(sheet), false);
  sheet.exhibits = [{ id: 1 }];
  assert.equal(isUnsaved(sheet), true);
  sheet.saved = workOf(sheet);
  sheet.history = change(sheet.history, of('1', '2'));
  assert.equal(isUnsaved(sheet), true);
  sheet.saved = null;
  assert.equal(isUnsaved(sheet), true);
});

test('what the words say of a charge is kept as its field or struck, and both can be taken back', () => {
  const c = { wearline: 2, lines: [{ id: '1', text: 'Blind, 2 yrs old' }] };
  const kept = withFactKept(c, 0, 'ageYears', 2);
  assert.deepEqual(kept.lines, [{ id: '1', text: 'Blind, 2 yrs old', ageYears: 2 }]);
  const struck = withFactStruck(withFactStruck(c, 0, 'ageYears'), 0, 'cause');
  assert.deepEqual(struck.lines[0].dismissedFacts, ['ageYears', 'cause']);
  assert.deepEqual(withFactStruck(struck, 0, 'cause').lines[0].dismissedFacts, ['ageYears', 'cause']);
  assert.deepEqual(withFactKept(struck, 0, 'cause', 'tenant').lines[0], { ...c.lines[0], dismissedFacts: ['ageYears'], cause: 'tenant' });
  assert.deepEqual(withWordsReadAgain(struck, 0).lines, c.lines);
});
