// The desk with an engine that answers when the test says so: the newest answer counts, closing can be taken back, clearing cannot.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

globalThis.document = { baseURI: 'https://wearline.example/', documentElement: {} };
const { Desk } = await source('app/desk.ts');

/** An engine whose answers wait until they are given. */
function heldEngine() {
  const asked = [];
  return {
    asked,
    version: 'test',
    assess: (subject) => new Promise((done) => asked.push({ subject, answer: (more = {}) => done({ lines: subject.lines, errors: [], ...more }) })),
    catalogue: async () => ({ elements: [] }),
    complete: () => Promise.reject(new Error('not here')),
    load: async () => [],
    letter: async () => ({ paragraphs: [] }),
  };
}
const soon = () => new Promise((done) => setTimeout(done, 5));
const line = (id, text) => ({ id, text, element: 'carpet' });

test('only the answer to the last question is shown, whichever comes last', async () => {
  const d = new Desk();
  const engine = (d.engine = heldEngine());
  d.put({ ...d.case, lines: [line('1', 'a')] });
  d.put({ ...d.case, lines: [line('1', 'b')] });
  assert.equal(d.judging, true);
  engine.asked[1].answer();
  await soon();
  assert.equal(d.result.lines[0].text, 'b');
  engine.asked[0].answer();
  await soon();
  assert.equal(d.result.lines[0].text, 'b');
  assert.equal(d.judging, false);
});

test('a value that cannot be read is left out and named; the rest is judged', async () => {
  const d = new Desk();
  const engine = (d.engine = heldEngine());
  d.put({ ...d.case, title: 'x', statement: { sent: 'yesterday' }, lines: [line('1', 'a')] });
  engine.asked[0].answer({ errors: [{ code: 'bad-date', at: '/statement/sent', text: 'no date' }] });
  await soon();
  assert.equal('statement' in engine.asked[1].subject, false);
  engine.asked[1].answer();
  await soon();
  assert.deepEqual(d.sheet.faults.map((f) => f.at), ['/statement/sent']);
  assert.equal(d.result.lines.length, 1);
});

test('a closed case can be put back; after clearing nothing can', () => {
  const d = new Desk();
  d.put({ ...d.case, title: 'first', lines: [line('1', 'a')] });
  d.newSheet();
  d.put({ ...d.case, title: 'second', lines: [line('1', 'b')] });
  d.close();
  assert.deepEqual(d.sheets.map((s) => s.history.now.title), ['first']);
  d.notice.acts[0].act();
  assert.deepEqual(d.sheets.map((s) => s.history.now.title), ['first', 'second']);
  assert.equal(d.case.title, 'second');
  let cleared = 0;
  d.onClear(() => cleared++);
  d.clearAll();
  assert.deepEqual([d.sheets.length, d.blank, d.notice, d.canUndo, cleared], [1, true, null, false, 1]);
});

test('what is said about work that could be lost stays until it is closed', () => {
  const d = new Desk();
  d.warn('no room');
  assert.equal(d.notice.stays, true);
  d.tell('moved');
  assert.equal(d.notice.stays, undefined);
});

test('past midnight every case is judged anew by the new day', async () => {
  const d = new Desk();
  const engine = (d.engine = heldEngine());
  d.put({ ...d.case, lines: [line('1', 'a')] });
  engine.asked[0].answer();
  await soon();
  d.newDay(d.today);
  assert.equal(engine.asked.length, 1);
  d.newDay('2031-01-01');
  assert.equal(engine.asked.length, 2);
  assert.equal(d.today, '2031-01-01');
});
