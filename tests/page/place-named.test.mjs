// The state or province that a statement names.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { placeNamed } = await source('case/place-named.ts');
const places = [['US-CA', 'California'], ['US-TX', 'Texas'], ['US-WA', 'Washington'], ['US-NY', 'New York'], ['US-OR', 'Oregon'], ['CA-BC', 'British Columbia']]
  .map(([code, name]) => ({ code, name }));

test('addresses that agree name the place, with the first line that does', () => {
  assert.deepEqual(placeNamed(['To: Dana', '418 Laurel Ave #3, Oakland, CA 94601', 'Oakland CA 94601-1234'], places), { code: 'US-CA', line: 2 });
  assert.deepEqual(placeNamed(['Austin, Texas 78704'], places), { code: 'US-TX', line: 1 });
  assert.deepEqual(placeNamed(['Vancouver, BC V6B 1A1'], places), { code: 'CA-BC', line: 1 });
});

test('addresses in two places name none, whatever law is cited', () => {
  assert.equal(placeNamed(['Austin, TX 78704', 'Portland, OR 97201', 'Texas Property Code'], places), undefined);
});

test('without an address the law that is cited names it', () => {
  assert.deepEqual(placeNamed(['Deductions under CA Civil Code 1950.5'], places), { code: 'US-CA', line: 1 });
  assert.deepEqual(placeNamed(['By the Texas Property Code we may keep'], places), { code: 'US-TX', line: 1 });
});

test('a name alone, a street, a sum or a place without a law here names nothing', () => {
  for (const line of ['12 Washington Street', 'Mr. Texas', 'OR 12345678', 'Carpet 94601', 'San Juan, PR 00901', 'The City of New York called'])
    assert.equal(placeNamed([line], places), undefined, line);
});
