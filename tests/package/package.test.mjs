// The installed project as another program meets it: cmake --install into an empty folder, a build outside the tree that finds it,
// and the installed program with the installed rules.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { BUILD, ROOT } from '../built.mjs';

const HERE = path.join(ROOT, 'tests/package');
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-package-'));
const prefix = path.join(folder, 'usr');
after(() => fs.rmSync(folder, { recursive: true, force: true }));

function run(command, args, options = {}) {
  const done = spawnSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 26, ...options });
  assert.equal(done.status, options.expect ?? 0, `${command} ${args.join(' ')}\n${done.stdout}\n${done.stderr}`);
  return done;
}

const bare = { PATH: process.env.PATH, HOME: folder };
const program = path.join(prefix, 'bin/wearline');

test('install brings the library, three headers, the rules, the program, its page and its completion', () => {
  run('cmake', ['--install', BUILD, '--prefix', prefix]);
  assert.deepEqual(fs.readdirSync(path.join(prefix, 'include/wearline')).sort(), ['day.h', 'engine.h', 'fault.h']);
  for (const file of ['bin/wearline', 'share/wearline/rules/facts.json', 'share/wearline/rules/law/US-WA.json', 'share/man/man1/wearline.1', 'share/bash-completion/completions/wearline'])
    assert.ok(fs.existsSync(path.join(prefix, file)), file);
});

test('a project outside the tree finds it, and its own JSON library still throws', () => {
  const build = path.join(folder, 'consumer');
  run('cmake', ['-S', HERE, '-B', build, `-DCMAKE_PREFIX_PATH=${prefix}`]);
  run('cmake', ['--build', build]);
  const { stdout } = run(path.join(build, 'consumer'), []);
  assert.deepEqual(JSON.parse(stdout).errors, []);
});

test('the installed program reads the installed rules, and others where it is told', () => {
  const moved = path.join(folder, 'elsewhere');
  fs.cpSync(path.join(prefix, 'share/wearline/rules'), moved, { recursive: true });
  fs.rmSync(path.join(moved, 'law/US-WA.json'));
  fs.rmSync(path.join(moved, 'law-es/US-WA.json'));
  const rulesOf = (args, env) => JSON.parse(run(program, ['validate', '--json', ...args], { env }).stdout).rules;
  assert.equal(fs.realpathSync(rulesOf([], bare)), fs.realpathSync(path.join(prefix, 'share/wearline/rules')));
  assert.equal(rulesOf([], { ...bare, WEARLINE_RULES: moved }), moved);
  assert.equal(rulesOf(['--rules', moved], { ...bare, WEARLINE_RULES: '/nowhere' }), moved);
  run(program, ['law', 'US-WA'], { env: bare });
  const gone = run(program, ['law', 'US-WA'], { env: { ...bare, WEARLINE_RULES: moved }, expect: 2 });
  assert.match(gone.stderr, /There is no law file for "US-WA"/);
});

test('as part of another build it adds a library and nothing else', () => {
  const source = path.join(folder, 'parent');
  fs.mkdirSync(source);
  fs.writeFileSync(path.join(source, 'CMakeLists.txt'), `cmake_minimum_required(VERSION 3.25)
project(parent LANGUAGES CXX)
add_subdirectory(${ROOT} engine)
get_property(standard TARGET wearline PROPERTY INTERFACE_COMPILE_DEFINITIONS)
message(STATUS "standard '\${CMAKE_CXX_STANDARD}' tests '\${WEARLINE_TESTS}' type '\${CMAKE_BUILD_TYPE}' definitions '\${standard}' program '\${WEARLINE_PROGRAM}'")
`);
  const { stdout } = run('cmake', ['-S', source, '-B', path.join(folder, 'parent-build'), '-DCMAKE_DISABLE_FIND_PACKAGE_Catch2=ON']);
  assert.match(stdout, /standard '' tests 'OFF' type '' definitions '' program 'OFF'/);
});
