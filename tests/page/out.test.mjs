// What leaves the page: no sign in a name or in somebody's own words can become more than a sign.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { calendar } = await source('out/calendar.ts');
const { word } = await source('out/word.ts');
const { csv } = await source('out/csv.ts');
const { forLetter, oneLine } = await source('case/plain.ts');

const day = { id: 'answer', label: 'Answer', who: 'tenant', last: { earliest: '2026-11-30', latest: '2026-11-30' }, state: 'open', rule: 'A\r\nEND:VEVENT', text: '', ifMissed: '' };
const assessment = { today: '2026-11-25', jurisdiction: 'US-WA', dates: [day], cautions: [] };

test('a name of several lines writes no line of its own into a calendar', () => {
  for (const end of ['\r\n', '\n', '\r', '\u2028', '\u0085', '\u000b']) {
    const text = calendar(assessment, ['a', 'BEGIN:VEVENT', 'SUMMARY:inj', 'END:VEVENT', 'X:1'].join(end));
    const lines = text.replace(/\r\n[ \t]/g, '').split('\r\n');
    assert.equal(lines.filter((l) => l === 'BEGIN:VEVENT').length, 1, JSON.stringify(end));
    assert.ok(!lines.some((l) => /^(SUMMARY:inj|X:1)/.test(l)), JSON.stringify(end));
    assert.ok(!/[^\r]\n|\r[^\n]/.test(text), JSON.stringify(end));
  }
});

test('own words with control signs and lone halves of pairs make a document that is still XML', async () => {
  const words = `a\u0000\u0001\u0008\u000b\u000cb \ud800 \udc00 \ufffe \u202e\u200b\ufeff & < > "é" \u{1f600}`;
  const blob = await word(words, [{ text: words, rows: [['x', words]], header: ['h', words] }]);
  const { unzipSync, strFromU8 } = await import('fflate');
  const files = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  for (const name of ['word/document.xml', 'docProps/core.xml']) {
    const xml = strFromU8(files[name]);
    assert.ok(!/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff\ufffd]/.test(xml), name);
    assert.ok(!/[\u202a-\u202e\u200b]/.test(xml), name);
  }
  assert.ok(strFromU8(files['word/document.xml']).includes('\u{1f600}'));
  assert.equal(forLetter('año\u202e \u{1f600}\tx\n'), 'año \u{1f600}\tx\n');
});

test('no cell of a table begins with what a spreadsheet takes for a formula', () => {
  const evil = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', ' =1', '\u00a0=1', '\uff1d1', '|x', '%0A=1'];
  const text = csv(evil, [evil]);
  const cells = text.match(/(?:"(?:[^"]|"")*"|[^,\r\n]*)(?=[,\r\n])/g).map((c) => c.replace(/^"/, ''));
  for (const cell of cells) assert.ok(!/^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]/.test(cell), JSON.stringify(cell));
  assert.equal(oneLine('a\r\n b'), 'a  b');
});
