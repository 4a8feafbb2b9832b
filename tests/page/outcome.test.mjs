// What follows for the money of each charge, and how what was charged divides.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { isUsedUp, knowsPaidBack, outcomeOf, questionOf, sortLines } = await source('case/outcome.ts');

const line = (id, claimed, low, likely, high, over = {}) => ({ id, claimed, fair: { low, likely, high }, certain: true, verdict: 'chargeable-damage', depreciation: null, ...over });
const lines = [
  line('worn', '100.00', '0.00', '0.00', '0.00', { verdict: 'ordinary-wear' }),
  line('key', '65.00', '65.00', '65.00', '65.00'),
  line('carpet', '900.00', '120.00', '200.00', '260.00'),
  line('open', '300.50', '0.00', '150.00', '300.50', { certain: false }),
  line('asked', '80.00', '10.00', '20.00', '40.00'),
  line('blinds', '130.00', '0.00', '0.00', '0.00', { depreciation: {} }),
  line('bare', '0.00', '0.00', '0.00', '0.00'),
];
const a = { lines, questions: [{ asks: '/lines/4/installed', line: 'asked', effect: '30.00', code: 'installed' }] };

test('each charge is fair, fair in part, not fair, or a question', () => {
  assert.deepEqual(Object.fromEntries(lines.map((l) => [l.id, outcomeOf(a, l)])), {
    worn: 'not-fair', key: 'fair', carpet: 'partly', open: 'ask', asked: 'ask', blinds: 'not-fair', bare: 'ask',
  });
});

test('the three heaps come to all that was charged, to the cent', () => {
  const { sum, count } = sortLines(a);
  assert.deepEqual(sum, { 'not-fair': '930.00', fair: '265.00', ask: '380.50' });
  assert.deepEqual(count, { 'not-fair': 3, fair: 2, ask: 3 });
});

test('damage to a thing past its life is used up; wear is not', () => {
  assert.deepEqual(lines.filter(isUsedUp).map((l) => l.id), ['blinds']);
});

test('a charge asks about itself first; a fact of the statement that turns it too comes after', () => {
  const sent = { asks: '/statement/sent', line: 'asked', effect: '900.00', code: 'law' };
  const installed = { asks: '/lines/4/installed', line: 'asked', effect: '30.00', code: 'installed' };
  assert.equal(questionOf({ questions: [sent, installed] }, lines[4]), installed);
  assert.equal(questionOf({ questions: [sent] }, lines[4]), sent);
});

test('what came back is known where the case or the statement says so, zero too', () => {
  const said = (statement, paidBackAssumed) => knowsPaidBack({ lines: [], statement }, { paidBackAssumed });
  assert.equal(said(undefined, true), false);
  assert.equal(said({ statedTotal: '90.00' }, true), false);
  assert.equal(said({ refundPaid: '0.00' }, false), true);
  assert.equal(said({ statedRefund: '12.00' }, true), true);
  // A result that is a key behind: it still says that nobody said it.
  assert.equal(said({ refundPaid: '4.00' }, true), false);
});
