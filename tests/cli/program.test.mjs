// The program as a person at a terminal meets it: its options and their page, many cases at once, streams, days, law, errors.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';

import ICAL from 'ical.js';

import { program, ROOT } from '../built.mjs';

const PROGRAM = program();
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-cli-'));
after(() => fs.rmSync(folder, { recursive: true, force: true }));

function wearline(args, input = '', expect = 0) {
  const done = spawnSync(PROGRAM, args, { input, encoding: 'utf8', maxBuffer: 1 << 28, cwd: ROOT });
  assert.equal(done.status, expect, `${args.join(' ')}\n${done.stdout.slice(0, 500)}\n${done.stderr}`);
  return done;
}
const lines = (text) => text.split('\n').filter(Boolean);
const example = (name) => JSON.parse(fs.readFileSync(path.join(ROOT, 'examples', `${name}.json`)));
const COMMANDS = ['check', 'read', 'recognize', 'letter', 'dates', 'law', 'batch', 'validate'];
const EXAMPLES = ['all-fair', 'answer-in-time', 'before-sending', 'carpet-and-scuffs', 'little-known', 'twelve-charges'];

test('every command and option stands in the manual page and in the completion', () => {
  const page = fs.readFileSync(path.join(ROOT, 'engine/cli/wearline.1'), 'utf8').replaceAll('\\-', '-');
  const completion = fs.readFileSync(path.join(ROOT, 'engine/cli/wearline.bash'), 'utf8');
  const listed = [...wearline(['--help']).stdout.matchAll(/^ {2}([a-z]+)[ ,]/gm)].map((m) => m[1]);
  assert.deepEqual(listed.sort(), [...COMMANDS].sort());
  for (const command of COMMANDS) {
    const synopsis = page.split(/^\.br$|^\.SH/m).find((part) => part.includes(`wearline ${command}`)) ?? '';
    const options = [...wearline([command, '--help']).stdout.matchAll(/--[a-z]+/g)].map((m) => m[0]);
    assert.ok(options.length > 1);
    for (const option of options) {
      if (option !== '--help') assert.ok(synopsis.includes(option), `${command} ${option} is not in the manual page`);
      assert.match(completion, new RegExp(`\\b${command}\\).*${option}\\b`), `${command} ${option} is not completed`);
    }
  }
});

test('the version stands alone, and with those of the libraries as their headers say', () => {
  const headers = (file) => fs.readFileSync(path.join('/usr/include', file), 'utf8');
  const number = (text, name) => ['MAJOR', 'MINOR', 'PATCH'].map((part) => text.match(new RegExp(`define ${name}_VERSION_${part}\\s+(\\d+)`))[1]).join('.');
  const project = fs.readFileSync(path.join(ROOT, 'CMakeLists.txt'), 'utf8').match(/VERSION ([\d.]+) LANGUAGES/)[1];
  assert.equal(wearline(['--version']).stdout, `${project}\n`);
  const said = lines(wearline(['--version', '--verbose']).stdout);
  assert.deepEqual(said.slice(0, 2), [`wearline ${project}`, `nlohmann_json ${number(headers('nlohmann/detail/abi_macros.hpp'), 'NLOHMANN_JSON')}`]);
  assert.match(said[2], /^date \d+\.\d+\.\d+$/);
  assert.equal(said[3], `CLI11 ${number(headers('CLI/Version.hpp'), 'CLI11')}`);
  assert.match(said[4], /^(GCC|Clang) \d+\.\d+\.\d+$/);
  assert.deepEqual(lines(wearline(['--verbose', '--version']).stdout), said);
});

test('a mistyped command is named, and an unknown file, place and option', () => {
  assert.match(wearline(['chek', 'x'], '', 2).stderr, /no command 'chek'.*Did you mean 'check'/);
  assert.match(wearline(['check', '/nowhere.json'], '', 2).stderr, /nowhere\.json cannot be read/);
  assert.match(wearline(['law', 'US-WQ'], '', 2).stderr, /no law file for "US-WQ".*nearest is US-W/);
  assert.match(wearline(['letter', '--kind', 'nope', 'examples/all-fair.json'], '', 2).stderr, /kind/);
});

test('a folder stands for its cases; each answer and each error names its file; the others are judged all the same', () => {
  fs.writeFileSync(path.join(folder, 'good.json'), JSON.stringify(example('all-fair')));
  fs.writeFileSync(path.join(folder, 'wrong.json'), JSON.stringify({ wearline: 1, lines: [{ id: '1', amuont: '5.00' }] }));
  fs.writeFileSync(path.join(folder, 'other.json'), '{"no": "case"}');
  const answers = lines(wearline(['check', '--json', '--today', '2026-09-01', folder], '', 2).stdout).map((line) => JSON.parse(line));
  assert.deepEqual(answers.map((a) => path.basename(a.file)), ['good.json', 'wrong.json']);
  assert.deepEqual(answers[0].errors, []);
  assert.equal(answers[1].errors[0].near, 'amount');
  assert.match(wearline(['check', folder], '', 2).stderr, /wrong\.json: \/lines\/0\/amuont: .*\[unknown-member\]/);
  const { file, ...alone } = answers[0];
  assert.deepEqual(JSON.parse(wearline(['check', '--json', '--today', '2026-09-01', path.join(folder, 'good.json')]).stdout), alone);
});

test('batch answers in order what check answers, whatever the number of threads; bad cases are records beside the good ones', () => {
  const cases = Array.from({ length: 300 }, (_, i) => {
    const c = example(EXAMPLES[i % EXAMPLES.length]);
    c.lines.forEach((line) => { if (line.amount) line.amount = `${3000 + i}.0${i % 10}`; });
    return JSON.stringify(c);
  });
  cases[7] = '{"wearline":1,"lines":[{"id":"1","amount":5}]}';
  cases[8] = 'not JSON';
  const input = cases.join('\n');
  const one = wearline(['batch', '--threads', '1', '--today', '2026-09-01', '-'], input, 2).stdout;
  assert.equal(wearline(['batch', '--threads', '4', '--today', '2026-09-01', '-'], input, 2).stdout, one);
  const answers = lines(one);
  assert.equal(answers.length, 300);
  assert.equal(JSON.parse(answers[7]).errors[0].at, '/lines/0/amount');
  assert.notEqual(JSON.parse(answers[8]).errors.length, 0);
  for (const i of [0, 1, 2, 3, 4, 5])
    assert.equal(answers[i], wearline(['check', '--json', '--today', '2026-09-01', '-'], cases[i]).stdout.trim());
});

test('cut into parts and put together again, a stream gives the same answers and the same total', () => {
  const cases = Array.from({ length: 60 }, (_, i) => JSON.stringify(example(EXAMPLES[i % EXAMPLES.length])));
  const batch = (part) => lines(wearline(['batch', '--today', '2026-09-01', '-'], part.join('\n')).stdout);
  const total = (answers) => answers.reduce((cents, a) => cents + Math.round(100 * Number(JSON.parse(a).totals.claimed)), 0);
  const whole = batch(cases);
  const parts = [0, 1, 2].flatMap((k) => batch(cases.slice(20 * k, 20 * k + 20)));
  assert.deepEqual(parts, whole);
  const charged = EXAMPLES.flatMap((name) => example(name).lines).reduce((cents, l) => cents + (l.credit ? -1 : 1) * Math.round(100 * Number(l.amount ?? 0)), 0);
  assert.equal(total(whole), 10 * charged);
});

test('days: soonest first, and as a calendar that another library reads (RFC 5545)', () => {
  const days = lines(wearline(['dates', '--json', '--today', '2026-09-01', 'examples']).stdout).map((line) => JSON.parse(line));
  const known = days.map((d) => d.day).filter(Boolean);
  assert.ok(known.length > 3);
  assert.deepEqual(known, [...known].sort());
  const open = days.filter((d) => d.state === 'open' && d.day >= '2026-09-01');
  assert.ok(open.length > 0);
  const text = wearline(['dates', '--ics', '--today', '2026-09-01', 'examples']).stdout;
  assert.ok(text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75));
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
  assert.deepEqual(events.map((e) => e.startDate.toString()).sort(), open.map((d) => d.day).sort());
  assert.ok(events.every((e) => e.summary && e.description && e.component.getAllSubcomponents('valarm').length === 2));
});

test('law prints every rule of the file with its source', () => {
  const pack = JSON.parse(fs.readFileSync(path.join(ROOT, 'engine/rules/law/US-WA.json')));
  const printed = wearline(['law', 'US-WA']).stdout;
  const rules = Object.values(pack).filter(Array.isArray).flat().filter((rule) => rule?.id && rule.text);
  assert.ok(rules.length > 10);
  for (const rule of rules) assert.ok(printed.includes(`/${rule.id}\n`), rule.id);
  assert.match(printed, /RCW 59\.18\.280\(1\)\(a\) \(statute-text\)/);
});

test('validate refuses a folder in which a file waits for ever, and names it', () => {
  const rules = path.join(folder, 'rules');
  fs.cpSync(path.join(ROOT, 'engine/rules'), rules, { recursive: true });
  wearline(['validate', '--rules', rules]);
  fs.rmSync(path.join(rules, 'law/US-WA.json'));
  assert.match(wearline(['validate', '--rules', rules], '', 2).stderr, /law-es\/US-WA\.json#: .*\[waits-for-others\]/);
});
