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
const subject = { wearline: 2, title: 'Larch Lane', lines: [{ id: '2', text: '<script>alert(1)</script>', amount: '12.00', note: 'private' }] };

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
  const back = fromFile({ wearline: 2, lines: [{ text: 'Paint', amount: '10.00' }] });
  assert.deepEqual(back.subject.lines, [{ text: 'Paint', amount: '10.00', id: '1' }]);
  assert.equal(back.id, '');
});

test('what is handed out holds no private note and nothing the page keeps', () => {
  assert.doesNotMatch(JSON.stringify(toHandOut({ ...subject, walkThrough: { items: [{ id: 't1', room: 'r1', element: 'carpet', conditionAtMoveOut: 'damaged' }] } })), /walkThrough|damaged/);
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
  const wrong = [null, [], 5, 'x', {}, { wearline: 2, lines: 5 }];
  for (const data of wrong) assert.equal(asCase(data), undefined);
  const odd = JSON.parse(`{"wearline":2,"title":5,"side":[],"lines":[null,7,{"text":{"a":1},"amount":"1.00","costComponents":"x","supportingDocuments":[1,"photos"]},{"id":"1"},{"id":"1"}],
    "deposits":{"a":1},"statement":{"enclosedDocuments":"x","missingDocuments":["photos",3]},"events":[{"kind":1},{"kind":"a","date":"2026"}],"tenancy":7,"__proto__":{"x":1}}`);
  const { subject: c, dropped } = asCase(odd);
  assert.deepEqual(c.lines.map((l) => l.id), ['2', '1', '3']);
  assert.deepEqual(c.lines[0], { amount: '1.00', supportingDocuments: ['photos'], id: '2' });
  assert.deepEqual(c.statement, { missingDocuments: ['photos'] });
  assert.deepEqual(c.events, [{ kind: 'a', date: '2026' }]);
  assert.equal({}.x, undefined);
  for (const at of ['/title', '/side', '/lines/0', '/lines/1', '/lines/2/text', '/lines/2/costComponents', '/lines/2/supportingDocuments/0', '/deposits', '/statement/enclosedDocuments', '/events/0', '/tenancy'])
    assert.ok(dropped.includes(at), at);
});

test('too much is left out and named, too', () => {
  const { subject: c, dropped } = asCase({ wearline: 2, lines: Array.from({ length: mostLines + 3 }, () => ({ amount: '1'.repeat(longestText + 1) })) });
  assert.equal(c.lines.length, mostLines);
  assert.ok(dropped.length > 0 && dropped.length <= 100);
  let deep = {};
  for (let i = 0; i < 50_000; i++) deep = { deep };
  assert.deepEqual(asCase({ wearline: 2, lines: [], tenancy: deep }).dropped.length, 1);
});

test('a file of version 1 is opened in the present names, with its letters; what is not known stays as it is', () => {
  const old = {
    wearline: 1,
    statement: { how: 'text', came: true, enclosed: ['itemised'] },
    events: [{ what: 'papers-requested', on: '2026-09-01', how: 'email' }],
    circumstances: { 'rent-stabilised': true },
    lines: [{ id: '1', atMoveIn: 'good', parts: [{ nature: 'labour', amount: '1.00', ages: false }], proof: ['photos'], notFromWords: ['atMoveIn', 'count'], own: 1 }],
    walkThrough: { things: [{ id: 't1', room: 'r1', element: 'mould-treatment', moveOut: 'dirty', putRight: '2026-08-01' }], leaving: ['keys'] },
    page: { letter: { kind: 'ask-for-papers', own: { 'ask-for-papers/ask': { text: 'Mine', insteadOf: 'Theirs' } }, off: [], on: [] } },
  };
  const opened = fromFile(structuredClone(old));
  assert.deepEqual(opened.subject, {
    wearline: 2,
    statement: { deliveryMethod: 'text-message', statementReceived: true, enclosedDocuments: ['itemized'] },
    events: [{ kind: 'documents-requested', date: '2026-09-01', deliveryMethod: 'email' }],
    circumstances: { 'rent-stabilized': true },
    lines: [{ id: '1', conditionAtMoveIn: 'good', costComponents: [{ kind: 'labor', amount: '1.00', depreciates: false }], supportingDocuments: ['photos'], dismissedFacts: ['conditionAtMoveIn', 'count'], own: 1 }],
    walkThrough: { items: [{ id: 't1', room: 'r1', element: 'mold-treatment', conditionAtMoveOut: 'dirty', remedied: '2026-08-01' }], moveOutTasks: ['keys'] },
  });
  assert.deepEqual(opened.dropped, []);
  assert.equal(opened.letter.kind, 'request-documents');
  assert.deepEqual(Object.keys(opened.letter.own), ['request-documents/ask']);
});

test('a damaged store gives what can still be read, and never fails', () => {
  const good = { file: 'a.json', subject, exhibits: [], letter, id, changed: 'x' };
  for (const data of [5, 'text', [], {}, { sheets: 'x' }, { wearline: 2, front: -4, sheets: [] }]) {
    const found = asKept(data);
    assert.deepEqual(found.kept.sheets, []);
    assert.equal(found.kept.front, 0);
  }
  for (const sheet of [null, 7, {}, { subject: null }, { subject: { wearline: 2, lines: 3 } }]) {
    const { kept, damaged } = asKept({ wearline: 2, front: 9, revision: 4, sheets: [sheet, good] });
    assert.equal(damaged, 1);
    assert.deepEqual(kept.sheets.map((s) => s.subject), [subject]);
    assert.deepEqual([kept.front, kept.revision], [0, 4]);
  }
  assert.equal(asKept(undefined), 'nothing');
  assert.equal(asKept({ wearline: 3, sheets: [] }), 'unknown');
  // As an earlier version of the page kept it.
  const old = asKept({ wearline: 1, front: 0, sheets: [{ file: '', subject: { ...subject, wearline: 1 }, exhibits: [] }] });
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
