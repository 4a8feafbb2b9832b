// Every published worked example, run through the program to the cent; each source is named in data/worked-examples.json and below.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import test from 'node:test';
import { measureWorked } from './measure-agreement/worked.mjs';

const read = (file) => JSON.parse(fs.readFileSync(new URL(file, import.meta.url), 'utf8'));
const results = measureWorked(read('data/worked-examples.json'), read('worked-examples/rows.json'));

test('there are worked examples, and most are reproduced', () => {
  assert.equal(results.length, read('data/worked-examples.json').length);
  assert.ok(results.filter((r) => r.state === 'reproduced').length >= 25);
});
for (const r of results) test(`${r.id}: ${r.what} (${r.source})`, () => assert.notEqual(r.state, 'broken', r.text));

test('a changed figure is noticed', () => {
  const map = read('worked-examples/rows.json');
  map.rows.find((r) => r.id === 'on-swl20228-15').cases[0].line.lifeYears = 11;
  const broken = measureWorked(read('data/worked-examples.json'), map).filter((r) => r.state === 'broken').map((r) => r.id);
  assert.deepEqual(broken, ['on-swl20228-15']);
});
