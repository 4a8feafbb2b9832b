// How many small changes to the engine's code its tests notice:
//   node tests/mutation/code.mjs [COUNT] [SEED] [ROOM] [--reference]      build/mutation/code-SEED.json holds what was tried
// Each change is compiled alone and linked before the library, in a copy of the tree. With --reference, what the engine's own tests let
// pass is shown to the checks of tests/reference too, which takes minutes each. Prints the share caught, room by room, and each survivor with its place.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { random } from '../wasm/generated.mjs';
import { changed, changesOf } from './changes.mjs';
import { BUILD, TREE, copyTree, run } from './tree.mjs';

const ROOMS = {
  judging: ['judging'],
  'money and counting': ['values', 'wear/valuation.cpp', 'law/counting.cpp', 'law/holidays.cpp', 'law/interest.cpp', 'law/deadlines.cpp', 'law/remedies.cpp'],
  reading: ['reading'],
  letters: ['letters'],
};
/** What else would notice, where the engine's own tests do not. */
const CHECKS = {
  judging: ['measure-agreement', 'check-examples', 'check-phrases', 'worked-examples.test'],
  'money and counting': ['check-counting', 'check-holidays', 'check-examples', 'measure-agreement', 'worked-examples.test'],
  reading: ['measure-reading', 'measure-facts', 'check-examples'],
  letters: ['check-letters', 'check-readability'],
};
/** The tests beside a room are asked first: most changes are noticed there. */
const NEAR = {
  judging: '[#judgment_test],[#audit_test]',
  'money and counting': '[#money_test],[#names_test],[#calendar_test],[#counting_test],[#deadlines_test],[#law_money_test],[#law_cases_test]',
  reading: '[#reading_words_test],[#reading_statement_test],[#reading_recognizer_test],[#word_facts_test]',
  letters: '[#letter_test]',
};
const SLOW = 'No letter has a gap*';
const SOURCES = path.join(TREE, 'engine/src');

const filesOf = (parts) => parts.flatMap((part) => {
  const full = path.join(SOURCES, part);
  return part.endsWith('.cpp') ? [part] : fs.readdirSync(full).filter((name) => name.endsWith('.cpp')).sort().map((name) => `${part}/${name}`);
});

/** Compiles a changed source as its file is compiled, with little optimization: it is for one run. */
function compiler(commands, file) {
  const own = commands.find((entry) => entry.file === path.join(SOURCES, file));
  const always = own.command.replace(/ -O\d /, ' -O1 ').replace(/ -o .*$/, '');
  return (source, object) => run('sh', ['-c', `${always} -w -I'${path.dirname(own.file)}' -o '${object}' -c '${source}'`], { cwd: own.directory });
}

function linker() {
  const objects = run('find', [path.join(BUILD, 'tests/engine/CMakeFiles/engine_tests.dir'), '-name', '*.o']).stdout.trim().split('\n');
  return (object, program) => run('g++', [...objects, object, path.join(BUILD, 'engine/libwearline.a'), '-pthread', '-o', program]);
}

const engineTests = (program, tests) => run(program, ['-#', '-a', ...tests], { timeout: 300_000 }).status === 0;

/** Whether a check of tests/reference notices the change when the programs are built with it. */
function referenceNotices(room, file, mutant, original) {
  fs.writeFileSync(path.join(SOURCES, file), mutant);
  try {
    if (run('ninja', ['-C', BUILD, 'programs']).status !== 0) return 'build';
    return CHECKS[room].find((check) => {
      const script = `tests/reference/${check}.mjs`;
      return run('node', check.endsWith('.test') ? ['--test', script] : [script], { cwd: TREE, timeout: 600_000 }).status !== 0;
    });
  } finally {
    fs.writeFileSync(path.join(SOURCES, file), original);
  }
}

function main() {
  const [count = '60', seed = '1', only] = process.argv.slice(2).filter((word) => !word.startsWith('--'));
  const reference = process.argv.includes('--reference');
  copyTree();
  for (const target of reference ? ['engine_tests', 'programs'] : ['engine_tests'])
    if (spawnSync('ninja', ['-C', BUILD, target], { stdio: ['ignore', 'ignore', 'inherit'] }).status !== 0) throw new Error(`${target} cannot be built`);
  const commands = JSON.parse(fs.readFileSync(path.join(BUILD, 'compile_commands.json'), 'utf8'));
  const link = linker();
  const { pick } = random(Number(seed));
  const rooms = Object.keys(ROOMS).filter((room) => !only || room.startsWith(only));
  const sites = Object.fromEntries(rooms.map((room) => [room, filesOf(ROOMS[room]).flatMap((file) =>
    changesOf(fs.readFileSync(path.join(SOURCES, file), 'utf8')).map((change) => ({ file, ...change })))]));
  console.log(rooms.map((room) => `${room}: ${sites[room].length} changes are possible`).join('\n'));

  const tried = [];
  let refused = 0;
  const object = path.join(BUILD, 'mutant.o'), source = path.join(BUILD, 'mutant.cpp'), program = path.join(BUILD, 'mutant_tests');
  while (tried.length < Number(count)) {
    const room = rooms[tried.length % rooms.length];
    const change = pick(sites[room]);
    if (tried.some((one) => one.file === change.file && one.at === change.at && one.to === change.to)) continue;
    const original = fs.readFileSync(path.join(SOURCES, change.file), 'utf8');
    const mutant = changed(original, change);
    fs.writeFileSync(source, mutant);
    if (compiler(commands, change.file)(source, object).status !== 0) { // no program: drawn again
      if ((refused += 1) > 3 * Number(count)) throw new Error('hardly any change can be compiled');
      continue;
    }
    if (link(object, program).status !== 0) throw new Error('the tests cannot be linked');
    let by = engineTests(program, [NEAR[room]]) && engineTests(program, [`~${SLOW}`]) ? '' : 'engine tests';
    if (!by && room === 'letters' && !engineTests(program, [SLOW])) by = 'engine tests';
    if (!by && reference) by = referenceNotices(room, change.file, mutant, original) ?? '';
    const row = original.split('\n')[change.line - 1].trim();
    tried.push({ room, ...change, row, by });
    console.log(`${tried.length} ${by ? `caught by ${by}` : 'SURVIVES'}: ${change.file}:${change.line} ${change.kind}: ${original.slice(change.at, change.at + change.length).trim().slice(0, 60)} -> ${change.to.trim().slice(0, 70)}   | ${row.slice(0, 120)}`);
    fs.writeFileSync(path.join(BUILD, `../../../code-${seed}.json`), JSON.stringify(tried, null, 1));
  }
  const share = (list, test) => `${list.filter(test).length} of ${list.length} (${Math.round((100 * list.filter(test).length) / list.length)} %)`;
  for (const room of rooms) {
    const own = tried.filter((one) => one.room === room);
    console.log(`${room}: ${share(own, ({ by }) => by === 'engine tests')}${reference ? `, with tests/reference ${share(own, ({ by }) => by)}` : ''}`);
  }
  console.log(`all: ${share(tried, ({ by }) => by === 'engine tests')}${reference ? `, with tests/reference ${share(tried, ({ by }) => by)}` : ''}, seed ${seed}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
