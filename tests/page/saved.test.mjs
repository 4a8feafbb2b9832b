// What is saved comes back whole, what comes from outside is looked at, what is handed out holds nothing private.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { source } from './source.mjs';

const { caseInReport, fromFile, inert, toFile, toHandOut } = await source('case/saved.ts');
const { asCase, longestText, mostLines } = await source('case/shape.ts');
const { asKept } = await source('app/keep.ts');
const { baseName } = await source('app/file-names.ts');

const id = 'a'.repeat(32);
const photo = { id: 1, name: 'door.jpg', type: 'image/jpeg', taken: '2026-09-29', dated: 'camera', line: '2', shows: 'move-out', note: 'north side' };
const letter = { kind: 'follow-up', own: { 'first/p1': { text: 'My words </script>', insteadOf: 'Theirs' } }, off: ['p2'], on: ['p3'] };
const subject = { wearline: 1, title: 'Larch Lane', lines: [{ id: '2', text: '<script>alert(1)</script>', amount: '12.00', note: 'private' }] };

test('a case, its letter and its photos come back from a file as they were, and no markup stands in it', async () => {
  const data = new Blob([new Uint8Array([255, 0, 216, 7])], { type: 'image/jpeg' });
  const client = { name: 'J. K.', contact: '', language: 'es', next: '2026-12-03', outcome: '', note: 'calls <after> six' };
  const text = await toFile({ subject, client, id, changed: '2026-11-25T12:00:00.000Z', version: 'v1', letter, exhibits: [{ ...photo, data }] });
  assert.ok(!text.includes('<'));
  const back = fromFile(JSON.parse(text));
  assert.deepEqual(back.subject, subject);
  assert.deepEqual(back.letter, letter);
  assert.deepEqual(back.client, client);
  assert.deepEqual([back.id, back.changed, back.version, back.dropped], [id, '2026-11-25T12:00:00.000Z', 'v1', []]);
  const [{ data: bytes, ...rest }] = back.exhibits;
  assert.deepEqual(rest, photo);
  assert.deepEqual([...new Uint8Array(await bytes.arrayBuffer())], [255, 0, 216, 7]);
});

test('a file that another program made opens too', () => {
  const back = fromFile({ wearline: 1, lines: [{ text: 'Paint', amount: '10.00' }] });
  assert.deepEqual(back.subject.lines, [{ text: 'Paint', amount: '10.00', id: '1' }]);
  assert.equal(back.id, '');
});

test('what is handed out holds no private note and nothing the page keeps', () => {
  assert.doesNotMatch(JSON.stringify(toHandOut({ ...subject, walkThrough: { things: [{ id: 't1', room: 'r1', element: 'carpet', moveOut: 'damaged' }] } })), /walkThrough|damaged/);
  const out = JSON.stringify(toHandOut({ ...subject, page: { letter, client: { note: 'private' } } }));
  assert.ok(!/private|My words|page/.test(out));
  assert.ok(out.includes('12.00'));
});

test('the case of a report is found by its place, in a time that grows with the file alone', () => {
  const open = '<script type="application/json" id="wearline-case">';
  assert.equal(caseInReport(`<p>x</p>${open}${inert(subject)}</script>`), inert(subject));
  assert.equal(caseInReport('<p>no report</p>'), undefined);
  assert.equal(caseInReport(open.repeat(200_000)), undefined);
});

test('wrong shapes are left out and named; nothing throws', () => {
  const wrong = [null, [], 5, 'x', {}, { wearline: 1, lines: 5 }];
  for (const data of wrong) assert.equal(asCase(data), undefined);
  const odd = JSON.parse(`{"wearline":1,"title":5,"side":[],"lines":[null,7,{"text":{"a":1},"amount":"1.00","parts":"x","proof":[1,"photos"]},{"id":"1"},{"id":"1"}],
    "deposits":{"a":1},"statement":{"enclosed":"x","missing":["photos",3]},"events":[{"what":1},{"what":"a","on":"2026"}],"tenancy":7,"__proto__":{"x":1}}`);
  const { subject: c, dropped } = asCase(odd);
  assert.deepEqual(c.lines.map((l) => l.id), ['2', '1', '3']);
  assert.deepEqual(c.lines[0], { amount: '1.00', proof: ['photos'], id: '2' });
  assert.deepEqual(c.statement, { missing: ['photos'] });
  assert.deepEqual(c.events, [{ what: 'a', on: '2026' }]);
  assert.equal({}.x, undefined);
  for (const at of ['/title', '/side', '/lines/0', '/lines/1', '/lines/2/text', '/lines/2/parts', '/lines/2/proof/0', '/deposits', '/statement/enclosed', '/events/0', '/tenancy'])
    assert.ok(dropped.includes(at), at);
});

test('too much is left out and named, too', () => {
  const { subject: c, dropped } = asCase({ wearline: 1, lines: Array.from({ length: mostLines + 3 }, () => ({ amount: '1'.repeat(longestText + 1) })) });
  assert.equal(c.lines.length, mostLines);
  assert.ok(dropped.length > 0 && dropped.length <= 100);
  let deep = {};
  for (let i = 0; i < 50_000; i++) deep = { deep };
  assert.deepEqual(asCase({ wearline: 1, lines: [], tenancy: deep }).dropped.length, 1);
});

test('a damaged store gives what can still be read, and never fails', () => {
  const good = { file: 'a.json', subject, exhibits: [], letter, id, changed: 'x' };
  for (const data of [5, 'text', [], {}, { sheets: 'x' }, { wearline: 1, front: -4, sheets: [] }]) {
    const found = asKept(data);
    assert.deepEqual(found.kept.sheets, []);
    assert.equal(found.kept.front, 0);
  }
  for (const sheet of [null, 7, {}, { subject: null }, { subject: { wearline: 1, lines: 3 } }]) {
    const { kept, damaged } = asKept({ wearline: 1, front: 9, revision: 4, sheets: [sheet, good] });
    assert.equal(damaged, 1);
    assert.deepEqual(kept.sheets.map((s) => s.subject), [subject]);
    assert.deepEqual([kept.front, kept.revision], [0, 4]);
  }
  assert.equal(asKept(undefined), 'nothing');
  assert.equal(asKept({ wearline: 2, sheets: [] }), 'unknown');
  // As an earlier version of the page kept it.
  const old = asKept({ wearline: 1, front: 0, sheets: [{ file: '', subject, exhibits: [] }] });
  assert.deepEqual([old.damaged, old.kept.sheets[0].id, old.kept.sheets[0].letter.kind], [0, '', '']);
});

test('two open cases never give the same file name', () => {
  const sheet = (n, title, file = '') => ({ id: String(n).repeat(32), file, history: { now: { title, jurisdiction: 'US-WA', lines: [] } } });
  const all = [sheet(1, 'Larch Lane'), sheet(2, 'Larch Lane'), sheet(3), sheet(4), sheet(5, 'Únique'), sheet(6, 'x', 'case.json'), sheet(7, 'y', 'case.json')];
  const names = all.map((s) => baseName(s, all));
  assert.equal(new Set(names).size, all.length);
  assert.equal(names[4], 'unique');
  assert.equal(baseName(all[5], [all[5]]), 'case');
});
