// The words of a web page, in lines and cells, however it is made up.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { flatText } = await source('sections/bring-in/source/web-page.ts');

test('paragraphs, breaks and list items are lines; marks within a line part nothing', () => {
  assert.equal(flatText('<body><p>Paint, <b>hall</b>\n 12.00</p><ul><li>Blinds<li>Keys</ul>a<br>b<br/>c<div>d'), 'Paint, hall 12.00\nBlinds\nKeys\na\nb\nc\nd');
});

test('the cells of a row are parted by tabs, closed or not; what a cell holds is one line of it', () => {
  const rows = '<table><tr><th>Item<th>Sum<tr><td><p>Wall</p><p>patch</p></td>\n<td> 110.00 </td></tr><tr><td>Keys<td></table>After';
  assert.equal(flatText(rows), 'Item\tSum\nWall patch\t110.00\nKeys\nAfter');
});

test('a row that holds a table only sets the page out', () => {
  const page = '<table><tr><td>Left<td><table><tr><td>Paint<td>12.00</table>right<td>end</tr></table>';
  assert.equal(flatText(page), 'Left\nPaint\t12.00\nright\nend');
});

test('scripts, styles, comments and values of attributes are no words', () => {
  const page = '<title>t</title><style>p{}</style><!-- <p>no</p> --><p title="a > b" data-x=\'c>d\'>yes<script>if (1 < 2) "</p>"</script > too</p><!doctype x><?php ?></ >1 < 2';
  assert.equal(flatText(page), 'yes too\n1 < 2');
  assert.equal(flatText("<p it's>Paint</p><textarea>Keys"), 'Paint\nKeys');
  assert.equal(flatText('Paint<script>never closed <p>x</p>'), 'Paint');
});

test('how much there is and how deep it nests costs no more than its length', () => {
  const much = {
    nested: '<div>'.repeat(400_000) + 'Paint',
    rows: '<tr>'.repeat(300_000),
    tables: '<table><tr><td>'.repeat(100_000) + 'Paint',
    marks: '<b>x</b> '.repeat(480_000),
    open: '<'.repeat(1_000_000),
    quotes: '<a b="'.repeat(300_000),
    comments: '<!--'.repeat(500_000),
    scripts: '<script>'.repeat(300_000),
    blanks: `<td>${' '.repeat(3_000_000)}x`,
  };
  for (const [name, page] of Object.entries(much)) {
    const began = performance.now();
    flatText(page);
    // Far above what a busy machine takes, far below what grows with the square of the length.
    assert.ok(performance.now() - began < 5000, `${name}: ${Math.round(performance.now() - began)} ms`);
  }
});
