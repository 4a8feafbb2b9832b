// Version 1 of the format: files of it are judged as they always were, and as the same case in the present version. The table of what was
// renamed is sound, the engine's translation agrees with a second one, and the page's with both.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { program } from '../built.mjs';
import { answerInVersion1, caseInVersion1, caseInVersion2, table } from './version-1.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const ROOT = path.join(HERE, '../..');
const OLD = path.join(HERE, 'version-1');
const TODAY = '2026-11-25';

const run = (args, input) => spawnSync(program(), args, { input, encoding: 'utf8', maxBuffer: 1 << 28 });
const answers = (args, texts) => run(args, texts.map((t) => t.replace(/\s*\n\s*/g, ' ') + '\n').join('')).stdout.trimEnd().split('\n');
const judged = (texts) => answers(['batch', '--today', TODAY, '-'], texts);

const examples = fs.readdirSync(OLD).filter((f) => f.endsWith('.json') && !f.endsWith('.expected.json')).map((f) => path.basename(f, '.json'));
const old = (name) => fs.readFileSync(path.join(OLD, `${name}.json`), 'utf8');

test('examples of version 1 are those of today in the names they had', () => {
  assert.ok(examples.length > 8);
  for (const name of examples) {
    const present = fs.readFileSync(path.join(ROOT, 'examples', `${name}.json`), 'utf8');
    assert.deepEqual(JSON.parse(caseInVersion2(old(name))), JSON.parse(present), name);
    assert.equal(caseInVersion1(caseInVersion2(old(name))), old(name), name);
  }
});

test('examples of version 1 are judged as they were', () => {
  const figures = ({ low, likely, high }) => [low, likely, high];
  judged(examples.map(old)).forEach((text, i) => {
    const a = JSON.parse(text);
    const expected = JSON.parse(fs.readFileSync(path.join(OLD, `${examples[i]}.expected.json`), 'utf8'));
    assert.equal(a.wearline, 1);
    assert.deepEqual(a.lines.map((l) => ({ id: l.id, verdict: l.verdict, fair: figures(l.fair) })), expected.lines, examples[i]);
    assert.deepEqual(a.dates.map((d) => ({ id: d.id, last: d.last && [d.last.earliest, d.last.latest], state: d.state })), expected.dates, examples[i]);
    assert.deepEqual(a.audit.map((n) => n.code), expected.audit, examples[i]);
    assert.deepEqual([a.remedies.least, a.remedies.most], expected.award, examples[i]);
  });
});

/** Every case of the tree that is kept in version 1. */
function casesOfVersion1() {
  const found = [];
  const walk = (value) => {
    if (Array.isArray(value)) return value.forEach(walk);
    if (typeof value !== 'object' || value === null) return;
    if (value.wearline === 1 && Array.isArray(value.lines)) found.push(JSON.stringify(value));
    else Object.values(value).forEach(walk);
  };
  for (const folder of ['law', 'letters/cases', 'decided-dates', 'version-1'])
    for (const file of fs.readdirSync(path.join(HERE, folder), { recursive: true }))
      if (file.endsWith('.json') && !file.endsWith('.expected.json')) walk(JSON.parse(fs.readFileSync(path.join(HERE, folder, file), 'utf8')));
  return found;
}

test('a case is answered alike in both versions, byte for byte after translation', () => {
  const cases = casesOfVersion1();
  assert.ok(cases.length > 700, `${cases.length} cases`);
  const first = judged(cases);
  const second = judged(cases.map(caseInVersion2));
  second.forEach((text, i) => {
    assert.match(text, /^\{"wearline":2,/);
    assert.equal(answerInVersion1(text, 'assessment'), first[i], cases[i].slice(0, 200));
  });
});

test('a letter is written alike in both versions', () => {
  for (const name of examples) {
    const letter = (file) => run(['letter', '--json', '--language', 'es', '--today', TODAY, file]).stdout;
    const present = letter(path.join(ROOT, 'examples', `${name}.json`));
    assert.equal(answerInVersion1(present, 'letter'), letter(path.join(OLD, `${name}.json`)), name);
  }
});

test('what has no case in it is in version 1 unless asked for 2', () => {
  const text = 'Carpet replaced, pet stain, bedroom 2, new at move-in 2022 420.00\nCleaning 90.00\nTotal 510.00\n';
  const words = text.split('\n')[0] + '\n';
  const read = (format) => run(['read', '--json', ...format, '-'], text).stdout;
  assert.equal(JSON.parse(read([])).wearline, 1);
  assert.equal(caseInVersion1(read(['--format', '2'])), read([]));
  const known = (format) => run(['recognize', '--json', ...format], words).stdout;
  assert.equal('wearline' in JSON.parse(known([])), false);
  assert.equal(JSON.parse(known(['--format', '2'])).wearline, 2);
  assert.equal(answerInVersion1(known(['--format', '2']), 'recognition'), known([]));
  const broken = (format) => JSON.parse(run(['check', '--json', ...format, '-'], '{').stdout);
  assert.equal(broken([]).wearline, 1);
  assert.equal(broken(['--format', '2']).wearline, 2);
});

test('faults name things as the file does, and the right name of the other version', () => {
  const faults = (file) => JSON.parse(run(['check', '--json', '-'], JSON.stringify(file)).stdout);
  const one = faults({ wearline: 1, statement: { how: 'pigeon' }, lines: [{ id: '1', repairCost: '1.00', parts: [{ nature: 'labor', amount: '1.00' }] }] });
  assert.equal(one.wearline, 1);
  assert.deepEqual(one.errors.map((e) => [e.code, e.at, e.near]), [
    ['unknown-name', '/statement/how', null],
    ['unknown-member', '/lines/0/repairCost', 'repairPrice'],
    ['unknown-name', '/lines/0/parts/0/nature', 'labour'],
  ]);
  const two = faults({ wearline: 2, statement: { how: 'email' }, events: [{ kind: 'tenant-demand', on: '2026-01-01' }], lines: [{ id: '1', costComponents: [{ kind: 'labour', amount: '1.00' }] }] });
  assert.equal(two.wearline, 2);
  assert.deepEqual(two.errors.map((e) => [e.code, e.at, e.near]), [
    ['unknown-member', '/statement/how', 'deliveryMethod'],
    ['unknown-member', '/events/0/on', 'date'],
    ['missing-member', '/events/0', null],
    ['unknown-name', '/lines/0/costComponents/0/kind', 'labor'],
  ]);
  const three = faults({ wearline: 3, somethingNew: true, lines: [] });
  assert.deepEqual(three.errors.map((e) => [e.code, e.at]), [['unknown-version', '/wearline']]);
  assert.match(three.errors[0].text, /newer Wearline/);
});

test('the table is sound: no two names of a place were one, no name stands for another', () => {
  const places = [];
  const walk = (members) => {
    places.push(members);
    for (const place of Object.values(members)) if (place.members) walk({ ...table.shapes[place.shape], ...place.members });
  };
  Object.values(table.shapes).forEach(walk);
  for (const document of Object.values(table.documents)) walk({ ...table.shapes[document.shape], ...document.members });
  for (const members of places) {
    const former = Object.values(members).map((m) => m.was).filter((was) => typeof was === 'string');
    assert.equal(new Set(former).size, former.length, former.join());
    for (const [now, { was }] of Object.entries(members)) assert.notEqual(was, now);
  }
  for (const [list, words] of Object.entries(table.words)) {
    assert.equal(new Set(Object.values(words)).size, Object.keys(words).length, list);
    for (const now of Object.keys(words)) assert.ok(!Object.values(words).includes(now), `${list}: ${now}`);
  }
});

test('the page tells every rename', () => {
  const page = fs.readFileSync(path.join(ROOT, 'engine/rules/schema/README.md'), 'utf8');
  assert.ok(page.includes(renames()), 'engine/rules/schema/README.md: node tests/reference/version-1.test.mjs --write');
});

/** What was renamed, as a table for people. */
function renames() {
  const rows = [];
  const walk = (where, place, seen = []) => {
    const members = { ...table.shapes[place.shape], ...place.members };
    for (const [now, inner] of Object.entries(members)) {
      const at = `${where}.${now}`.replace(/^\./, '');
      if (inner.was === null) rows.push(`| \`${at}\` | not there |`);
      else if (inner.was) rows.push(`| \`${at}\` | \`${inner.was}\` |`);
      if (inner.shape && seen.includes(inner.shape)) continue;
      walk(at, inner, [...seen, inner.shape]);
    }
  };
  for (const [name, document] of Object.entries(table.documents)) {
    rows.push(`| **${name}** | |`);
    walk('', document);
  }
  const words = Object.entries(table.words).filter(([list]) => list !== 'version').flatMap(([list, all]) => Object.entries(all).map(([now, was]) => `| ${list} | \`${now}\` | \`${was}\` |`));
  return ['| member now | in version 1 |', '| --- | --- |', ...rows, '', '| words of | now | in version 1 |', '| --- | --- | --- |', ...words].join('\n');
}

if (process.argv.includes('--write')) {
  const file = path.join(ROOT, 'engine/rules/schema/README.md');
  const text = fs.readFileSync(file, 'utf8');
  fs.writeFileSync(file, `${text.slice(0, text.indexOf('| member now |'))}${renames()}\n`);
}
