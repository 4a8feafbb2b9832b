// What is brought in, before the engine reads it: bounds, and times that grow with the length alone.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { withoutDoubles } = await source('sections/bring-in/source/doubles.ts');
const { layOut } = await source('sections/bring-in/source/layout.ts');
const { textSource } = await source('sections/bring-in/source/source.ts');
const { linesRead, signsOfLine, wordsOfPage } = await source('sections/bring-in/source/limits.ts');

const word = (text, x, y, h = 10) => ({ text, x, y, w: 30, h });

test('a word drawn twice is one word, one that stands elsewhere is another', () => {
  const words = [word('Paint', 10, 10), word('Paint', 10.6, 10.4), word('Paint', 10, 30), word('Paint', 15, 10), word('Tax', 10, 10)];
  assert.deepEqual(withoutDoubles(words).map((w) => [w.text, w.x, w.y]), [['Paint', 10, 10], ['Paint', 10, 30], ['Paint', 15, 10], ['Tax', 10, 10]]);
  // Across the edge of two squares, and for large words.
  assert.equal(withoutDoubles([word('a', 3.9, 3.9), word('a', 4.1, 4.1)]).length, 1);
  assert.equal(withoutDoubles([word('a', 0, 0, 60), word('a', 14, 14, 60)]).length, 1);
  assert.equal(withoutDoubles([word('a', 0, 0, 60), word('a', 16, 0, 60)]).length, 2);
});

test('fifty thousand equal words are gone through, not compared each with each', { timeout: 20_000 }, () => {
  const many = Array.from({ length: 50_000 }, (_, i) => word('x', (i % 500) * 40, Math.floor(i / 500) * 20));
  assert.equal(withoutDoubles(many).length, 50_000);
  assert.equal(withoutDoubles([...many.slice(0, 100), ...many.slice(0, 100)]).length, 100);
});

test('a page of as many words as are read is laid out, be they all in one row', { timeout: 20_000 }, () => {
  const row = Array.from({ length: wordsOfPage }, (_, i) => word('x', i * 40, 10));
  assert.equal(layOut(row, 0).length, 1);
});

test('a text longer than any statement is read as far as the bound, and that is known', () => {
  const long = textSource('Paint 12.00\n'.repeat(220_000));
  assert.deepEqual([long.lines.length, long.cut], [linesRead, true]);
  assert.equal(textSource('x'.repeat(3_000_000)).lines[0].text.length, signsOfLine);
  const usual = textSource('Paint 12.00\r\nTax 1.00\rSum 13.00\fPage 2');
  assert.deepEqual([usual.lines.map((l) => l.text), usual.cut], [['Paint 12.00', 'Tax 1.00', 'Sum 13.00', 'Page 2'], undefined]);
});
