// Input that cannot be a case: both engines refuse it in the same words, name the place, and go on working afterwards.
import assert from 'node:assert/strict';
import { before, describe, test } from 'node:test';
import { fullModule, freshModule, native } from './engines.mjs';

const TODAY = '2026-09-01';
const CASE = { wearline: 1, lines: [{ id: '1', text: 'Carpet', amount: '900.00', kind: 'damage' }] };
const withLine = (line) => JSON.stringify({ ...CASE, lines: [{ ...CASE.lines[0], ...line }] });
const withTenancy = (tenancy) => JSON.stringify({ ...CASE, tenancy });
const lines = (count) => Array.from({ length: count }, (_, i) => ({ id: String(i), text: 'x', amount: '1.00' }));

// [what, input, code of the first error, its place]
const REFUSED = [
  ['nothing', '', 'not-json', ''],
  ['not JSON', 'Dear tenant, we kept your deposit.', 'not-json', ''],
  ['JSON cut short', '{"wearline":1,"lines":[', 'not-json', '/lines/0'],
  ['two documents', '{"wearline":1,"lines":[]} {}', 'not-json', ''],
  ['a number that JSON lacks', '{"wearline":1,"lines":[{"amount":NaN}]}', 'not-json', '/lines/0/amount'],
  ['a list', '[]', 'wrong-type', ''],
  ['null', 'null', 'wrong-type', ''],
  ['another version', '{"wearline":3,"lines":[]}', 'unknown-version', '/wearline'],
  ['no lines', '{"wearline":1}', 'missing-member', ''],
  ['lines that are no list', '{"wearline":1,"lines":"none"}', 'wrong-type', '/lines'],
  ['an amount as a number', withLine({ amount: 900 }), 'wrong-type', '/lines/0/amount'],
  ['a negative amount', withLine({ amount: '-900.00' }), 'bad-amount', '/lines/0/amount'],
  ['an amount of fourteen digits', withLine({ amount: '12345678901234.00' }), 'amount-too-large', '/lines/0/amount'],
  ['an amount called NaN', withLine({ amount: 'NaN' }), 'bad-amount', '/lines/0/amount'],
  ['an amount with a comma', withLine({ amount: '1,240.00' }), 'bad-amount', '/lines/0/amount'],
  ['a day that does not exist', withTenancy({ ended: '2026-02-30' }), 'bad-date', '/tenancy/ended'],
  ['an end before the beginning', withTenancy({ began: '2026-05-01', ended: '2025-05-01' }), 'ends-before-it-begins', '/tenancy/ended'],
  ['an unknown place', JSON.stringify({ ...CASE, jurisdiction: 'US-WZ' }), 'unknown-jurisdiction', '/jurisdiction'],
  ['a name slightly wrong', withLine({ amuont: '9.00' }), 'unknown-member', '/lines/0/amuont'],
  ['one name twice', '{"wearline":1,"wearline":1,"lines":[]}', 'duplicate-member', '/wearline'],
  ['too many lines', JSON.stringify({ wearline: 1, lines: lines(5001) }), 'too-many-lines', '/lines'],
  ['bytes that are not UTF-8', Buffer.from('{"wearline":1,"lines":[],"note":"\xff"}', 'latin1'), 'not-utf-8', ''],
  ['half a surrogate pair', '{"wearline":1,"lines":[],"note":"\\ud800"}', 'not-json', '/note'],
  ['more than 16 MiB', `"${'x'.repeat(16 * 2 ** 20)}"`, 'too-long', ''],
  ['a million open brackets', '['.repeat(1_000_000), 'too-deep', ''],
  ['a million nested lists', '['.repeat(1_000_000) + ']'.repeat(1_000_000), 'too-deep', ''],
];

let engine;
before(async () => { engine = await fullModule(); });

describe('refused alike', () => {
  for (const [what, input, code, at] of REFUSED) {
    test(what, () => {
      const program = native(input, TODAY);
      assert.equal(program.status, 2, program.complaint);
      const [first] = JSON.parse(program.text).errors;
      assert.deepEqual([first.code, first.at], [code, at], program.text.slice(0, 300));
      assert.match(first.text, /^[A-Z"].*[.?]$/s, 'a sentence');
      assert.equal(engine.assess(input, TODAY), program.text);
    });
  }
  for (const today of ['2026-02-30', '1 September', '', '0000-00-00', '2026-09-01T00:00'])
    test(`today given as "${today}"`, () => {
      const program = native(JSON.stringify(CASE), today);
      if (today === '') return assert.equal(JSON.parse(engine.assess(JSON.stringify(CASE), today)).errors[0].code, 'bad-today');
      assert.equal(program.status, 2);
      assert.equal(JSON.parse(program.text).errors[0].code, 'bad-today');
      assert.equal(engine.assess(JSON.stringify(CASE), today), program.text);
    });
});

describe('taken whole', () => {
  const agree = (text) => {
    const program = native(text, TODAY);
    assert.equal(program.status, 0, program.text.slice(0, 300));
    assert.equal(engine.assess(text, TODAY), program.text);
    return JSON.parse(program.text);
  };
  test('5,000 lines', () => {
    const result = agree(JSON.stringify({ wearline: 1, lines: lines(5000) }));
    assert.equal(result.lines.length, 5000);
    assert.equal(result.totals.claimed, '5000.00');
  });
  test('10 MB of text in one line', () => {
    const text = 'Carpet '.repeat(1_500_000);
    assert.equal(agree(withLine({ text })).lines[0].text, text);
  });
  test('markup and control characters in a description', () => {
    const text = '<img src=x onerror=alert(1)>\u0000\u0007\u001b[31m\u202e "&amp;';
    assert.equal(agree(withLine({ text })).lines[0].text, text);
  });
  test('the largest amounts', () => {
    assert.equal(agree(withLine({ amount: '9999999999.99' })).totals.claimed, '9999999999.99');
  });
});

describe('the module alone', () => {
  test('refuses rules that are no bundle, and says so', async () => {
    const fresh = await freshModule();
    for (const bad of ['', 'x', '[]', '{"law/US-WA.json":1}', '{"nowhere/x.json":{}}'])
      assert.notEqual(JSON.parse(fresh.load(bad)).errors.length, 0, bad);
  });
  test('without rules it still answers', async () => {
    const fresh = await freshModule();
    assert.ok(Array.isArray(JSON.parse(fresh.assess(JSON.stringify(CASE), TODAY)).errors));
    assert.ok(JSON.parse(fresh.catalogue('en')));
  });
  test('letter options that cannot be read are errors', () => {
    for (const options of ['x', '[]', '{"kind":5}', '{"language":"xx"}'])
      assert.notEqual(JSON.parse(engine.letter(JSON.stringify(CASE), TODAY, options)).errors?.length ?? 0, 0, options);
  });
  test('still works after all of this', () => {
    assert.deepEqual(JSON.parse(engine.assess(JSON.stringify(CASE), TODAY)).errors, []);
  });
});
