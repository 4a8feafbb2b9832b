// What is done with a picture of a statement before the engine reads it: straightening, cleaning, a second look at its sums, settling.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const at = 'sections/bring-in/source/';
const { bare, markOf, sumMeant } = await source(`${at}sums.ts`);
const { cleaned } = await source(`${at}straighten/clean.ts`);
const { cellsOf } = await source(`${at}straighten/cells.ts`);
const { isSquashed } = await source(`${at}straighten/spots.ts`);
const { withoutGrain } = await source(`${at}straighten/grey.ts`);
const { fullestRows, upsideDown } = await source(`${at}sample.ts`);
const { fanOf, turnOf } = await source(`${at}straighten/turn.ts`);
const { straighten } = await source(`${at}straighten/straighten.ts`);
const { secondLook } = await source(`${at}second-look.ts`);
const { settle } = await source('sections/bring-in/settle.ts');

const spot = (left, top, width, height) => ({ left, top, right: left + width - 1, bottom: top + height - 1, ink: width * height });

/** A page with a black block for each spot, and its ink. */
function pageOf(spots, width = 900, height = 300) {
  const grey = { width, height, data: new Uint8Array(width * height).fill(255) };
  for (const s of spots) for (let y = s.top; y <= s.bottom; y++) grey.data.fill(0, y * width + s.left, y * width + s.right + 1);
  return { grey, ink: { width, height, data: grey.data.map((tone) => (tone === 0 ? 1 : 0)) } };
}
const inked = ({ width, data }, s) => data[s.top * width + s.left] === 0;

test('a sum is read from letters that look like figures, and with the point of its cents put back; a date is none', () => {
  for (const [text, sum] of [['50.00', '50.00'], ['S0.OO', '50.00'], ['5000', '50.00'], ['1,24000', '1240.00'], ['1,100,00', '1,100.00'], ['$45,50', '$45.50'], ['..$7.96', '$7.96'], ['90-00', '90.00'], ['08/14/2026', undefined], ['Total', undefined], ['12', undefined]])
    assert.equal(sumMeant(text, '.'), sum, text);
  assert.equal(sumMeant('1.240,50', ','), '1.240,50');
  assert.equal(markOf(['85,00', '12,50', '3.10']), ',');
  assert.notEqual(bare('85.00-'), bare('85.00'));
  assert.equal(bare('(85.00)'), bare('-85.00'));
});

test('what can be the point of a sum is never cleaned away, however wide the type is set; a speck between the lines is', () => {
  const letters = [40, 80, 160, 200].map((x) => spot(x, 100, 24, 30)).concat([40, 80, 120, 160].map((x) => spot(x, 200, 24, 30)));
  // A typewriter's point stands in the middle of its own place.
  const point = spot(137, 126, 4, 4);
  const small = spot(230, 127, 2, 2);
  const dust = spot(400, 160, 4, 4);
  const { grey, ink } = pageOf([...letters, point, small, dust]);
  const clean = cleaned(grey, ink, 30).grey;
  assert.ok(inked(clean, point) && inked(clean, small));
  assert.ok(!inked(clean, dust));
});

test('the grain of a faint page becomes paper, its letters and points stay; the soft rims of a clean page stay as they are', () => {
  const letters = [40, 80, 160, 200].map((x) => spot(x, 100, 24, 30));
  const point = spot(137, 126, 4, 4);
  const { grey } = pageOf([...letters, point]);
  const clean = withoutGrain({ ...grey, data: grey.data.map((tone, i) => (i % 37 === 0 && tone === 255 ? 200 : tone)) });
  assert.ok(clean.data.some((tone) => tone === 200));
  const grainy = withoutGrain({ ...grey, data: grey.data.map((tone, i) => (tone === 255 ? 160 + ((i * 7919) % 96) : tone)) });
  assert.ok([...letters, point].every((s) => inked(grainy, s)));
  assert.ok(grainy.data.every((tone) => tone === 0 || tone === 255));
});

test('which way up a page is can be tried on its fullest rows', () => {
  const rows = [[60, 2], [700, 6]].flatMap(([y, count]) => Array.from({ length: count }, (_, i) => spot(40 + 40 * i, y, 24, 30)));
  const { grey } = pageOf(rows, 400, 1000);
  const cells = rows.map((s) => ({ x: s.left, y: s.top, w: 24, h: 30 }));
  const sample = fullestRows({ read: grey, cells, letter: 30 });
  assert.deepEqual([sample.width, sample.height], [400, 360]);
  assert.equal(sample.data.filter((tone) => tone === 0).length, 6 * 24 * 30);
  const turned = upsideDown(sample);
  assert.equal(turned.data[turned.data.length - 1 - sample.data.indexOf(0)], 0);
  assert.deepEqual(upsideDown(turned).data, sample.data);
});

test('text at the very edge of a picture is not wiped', () => {
  const letters = [5, 60, 110].flatMap((y) => [2, 40, 80, 120].map((x) => spot(x, y, 24, 30)));
  const { grey, ink } = pageOf(letters, 150, 142);
  assert.ok(letters.every((s) => inked(cleaned(grey, ink, 30).grey, s)));
});

test('a lone figure far to the right of the text is no margin to be wiped', () => {
  const letters = [100, 200].flatMap((y) => [40, 80, 120, 160].map((x) => spot(x, y, 24, 30)));
  const alone = spot(820, 100, 20, 30);
  const { grey, ink } = pageOf([...letters, alone]);
  assert.ok(inked(cleaned(grey, ink, 30).grey, alone));
});

test('ink that stands together is one cell with its comma and point; dots that lead to a sum part it from the words', () => {
  const figures = [40, 76, 112].map((x) => spot(x, 100, 24, 30));
  const cells = cellsOf([...figures, spot(148, 122, 6, 14), spot(184, 100, 24, 30), spot(220, 100, 24, 30)], 30);
  assert.deepEqual(cells.map((c) => [c.x, c.w]), [[40, 204]]);
  const led = cellsOf([...figures, ...[150, 170, 190, 210, 230].map((x) => spot(x, 126, 4, 4)), spot(250, 100, 24, 30), spot(280, 100, 24, 30)], 30);
  assert.deepEqual(led.map((c) => [c.x, c.w]), [[40, 96], [250, 54]]);
});

test('letters wider than high are a fax drawn once a row', () => {
  const row = (w, h) => Array.from({ length: 40 }, (_, i) => spot(40 * i, 10, w, h));
  assert.equal(isSquashed(row(24, 15), 15), true);
  assert.equal(isSquashed(row(20, 28), 28), false);
});

/** Rows of a statement, words at the left and sums far at the right, each letter moved as `move` says. */
const rowsMoved = (move) =>
  Array.from({ length: 12 }, (_, row) => [...Array.from({ length: 14 }, (_, i) => 100 + 22 * i), ...Array.from({ length: 5 }, (_, i) => 1300 + 22 * i)].map((x) => [x, 200 + 50 * row]))
    .flat()
    .map(([x, y]) => { const [mx, my] = move(x, y); return spot(Math.round(mx), Math.round(my), 14, 20); });

test('a page on its side has letters that look wide; it is turned, not stretched', () => {
  const [width, height] = [900, 1500];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const s of rowsMoved((x, y) => [x, y]))
    for (let x = s.left; x <= s.right; x++) for (let y = s.top; y <= s.bottom; y++) rgba.fill(0, ((height - 1 - x) * width + y) * 4, ((height - 1 - x) * width + y) * 4 + 3);
  const { shown, turnedBy } = straighten(rgba, width, height);
  assert.equal(Math.abs(Math.round(turnedBy / 90)) % 2, 1);
  assert.ok(Math.abs(shown.width / shown.height - height / width) < 0.1);
});

test('a page askew is levelled by letters near each other, so that sums do not fall into the next row', () => {
  for (const degrees of [-4, -2.2, 1, 2.2, 3]) {
    const t = Math.tan((degrees * Math.PI) / 180);
    const turn = turnOf(rowsMoved((x, y) => [x, y + x * t]), 20);
    assert.equal(turn.quarters, 0);
    assert.ok(Math.abs(turn.degrees - degrees) < 0.15, `${degrees}: ${turn.degrees}`);
  }
});

test('lines that spread like a fan, as on a page seen from one side, come out level; level lines stay', () => {
  const page = { width: 1600, height: 1600 };
  const straight = fanOf(rowsMoved((x, y) => [x, y]), page, 0, 20);
  assert.deepEqual(straight, { degrees: 0, fan: 0 });
  const fan = 1e-4;
  const seen = fanOf(rowsMoved((x, y) => [x, 800 + (y - 800) * (1 + (x - 800) * fan)]), page, 0, 20);
  assert.ok(Math.abs(seen.fan - fan) < 0.15 * fan, String(seen.fan));
});

const word = (text, x, y, w, confidence = 95) => ({ text, x, y, w, h: 30, confidence });
const blank = { width: 1000, height: 600, data: new Uint8Array(600_000).fill(255) };
/** A reader that sees these figures one below the other on any sheet, in this order. */
const sees = (...looks) => async () => (looks.shift() ?? []).map((text, i) => word(text, 30, 24 + 99 * i + 15, 80));

test('a second look: agreed sums stay, what was seen otherwise keeps every reading, ink without a sum keeps its row', async () => {
  const names = ['Paint', 'Carpet', 'Blinds'].map((text, i) => word(text, 40, 100 + 60 * i, 120));
  const cells = [...names, word('', 800, 100, 100), word('', 800, 160, 100), word('', 800, 220, 100)];
  const words = [...names, word('50.00', 800, 100, 100), word('80.00', 800, 160, 100)];
  const looked = await secondLook(words, { cells, shown: blank, whole: blank, read: blank }, sees(['50.00', '60.00', '/'], ['60.00', '-']));
  const sums = looked.filter((w) => w.x === 800).sort((a, b) => a.y - b.y);
  assert.deepEqual(sums.map((w) => [w.text, w.readings, w.unread]), [['50.00', undefined, undefined], ['60.00', ['60.00', '80.00'], undefined], ['0.00', undefined, true]]);
  assert.ok(sums[0].confidence > 85 && sums[1].confidence < 50);
});

/** Reads "words 12.00" a line; the last line is the total, which comes out or not. */
const plainReader = async (text) => {
  const rows = text.split('\n').map((l, i) => ({ line: i + 1, start: l.search(/\S+$/), end: l.length, amount: l.trim().split(/\s+/).pop() }));
  const total = rows.pop();
  const closes = rows.reduce((sum, r) => sum + Math.round(100 * r.amount), 0) === Math.round(100 * total.amount);
  const place = ({ line, start, end }) => ({ line, start, end });
  return {
    lines: rows.map((r) => ({ text: '', amount: r.amount, role: 'charge', spans: [], amountSpan: place(r) })), statedTotal: total.amount,
    spans: { statedTotal: place(total) }, unread: [], uncertainCharges: [], dates: {},
    arithmeticConfirmed: closes ? [{ code: 'sum', line: total.line, lines: rows.map((r) => r.line) }] : [], arithmeticErrors: closes ? [] : [{ code: 'sum', line: total.line }],
  };
};
const pictured = (rows) => ({
  kind: 'picture', name: '', pages: [], close() {},
  lines: rows.map(([name, sum, readings, unread]) => {
    const text = `${name}    ${sum}`;
    return { text, page: 0, pieces: [{ start: name.length + 4, end: text.length, box: {}, confidence: readings ? 30 : 95, ...(readings && { readings }), ...(unread && { unread }) }] };
  }),
});

test('the paper\'s own sums settle what two looks saw differently', async () => {
  const { source, reading, sums } = await settle(pictured([['Paint', '60.00', ['60.00', '50.00', '80.00']], ['Carpet', '20.00'], ['Total', '100.00']]), plainReader);
  assert.equal(reading.lines[0].amount, '80.00');
  assert.equal(source.lines[0].text.slice(source.lines[0].pieces[0].start), '80.00');
  assert.deepEqual([[...sums.settled].sort(), [...sums.off]], [[1, 2, 3], []]);
});

test('where they come out more than one way, or a sum is missing, nothing is settled and all are to be checked', async () => {
  const two = await settle(pictured([['Paint', '10.00', ['10.00', '30.00']], ['Carpet', '10.00', ['10.00', '30.00']], ['Total', '40.00']]), plainReader);
  assert.deepEqual(two.reading.lines.map((l) => l.amount), ['10.00', '10.00']);
  assert.deepEqual([1, 2, 3].filter((line) => !two.sums.off.has(line)), []);
  const unread = await settle(pictured([['Paint', '40.00'], ['Carpet', '0.00', undefined, true], ['Total', '40.00']]), plainReader);
  assert.equal(unread.sums.settled.size, 0);
});

test('a row of words beside a stain where sums stand keeps a place for its sum', async () => {
  const names = ['Paint', 'Carpet', 'Blinds'].map((text, i) => word(text, 40, 100 + 60 * i, 120));
  const words = [...names, word('50.00', 800, 100, 100), word('70.00', 800, 220, 100)];
  const shown = { ...blank, data: blank.data.slice() };
  const page = { cells: words.map(({ x, y, w, h }) => ({ x, y, w, h })), shown, whole: blank, read: blank };
  const placesOf = (looked) => looked.filter((w) => w.unread).map((w) => [w.x, w.y]);
  assert.deepEqual(placesOf(await secondLook(words, page, sees(['50.00', '70.00']))), []);
  for (let y = 150; y < 200; y++) shown.data.fill(60, y * 1000 + 790, y * 1000 + 910);
  assert.deepEqual(placesOf(await secondLook(words, page, sees(['50.00', '70.00', '']))), [[800, 160]]);
});
