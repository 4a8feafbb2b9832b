// A copy of what the engine is made of and tested with, in build/mutation: what is changed there never touches the checkout.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { ROOT } from '../wasm/engines.mjs';

/** Code and law have a copy each, so that both can be tried at once. */
export const TREE = path.join(ROOT, 'build/mutation', path.basename(process.argv[1] ?? 'code', '.mjs') === 'packs' ? 'packs' : 'tree');
export const BUILD = path.join(TREE, 'build/native');

export const run = (command, args, options = {}) => spawnSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28, ...options });

/** Brings the copy up to date and configures it; files that did not change keep their time, so little is built again. */
export function copyTree() {
  fs.mkdirSync(TREE, { recursive: true });
  const wanted = run('git', ['-C', ROOT, 'ls-files', '--cached', '--others', '--exclude-standard', 'CMakeLists.txt', 'README.md', 'engine', 'wasm', 'examples', 'tests', 'site/src', '.clang-format']).stdout.trim().split('\n');
  for (const file of wanted) {
    const from = path.join(ROOT, file), to = path.join(TREE, file);
    if (!fs.existsSync(from)) continue;
    const text = fs.readFileSync(from);
    if (fs.existsSync(to) && fs.readFileSync(to).equals(text)) continue;
    fs.mkdirSync(path.dirname(to), { recursive: true });
    fs.writeFileSync(to, text);
  }
  const kept = new Set(wanted);
  for (const folder of ['engine', 'tests', 'examples'])
    for (const file of run('find', [folder, '-type', 'f', '-not', '-path', '*/node_modules/*'], { cwd: TREE }).stdout.trim().split('\n'))
      if (file && !kept.has(file) && !file.startsWith('tests/out/')) fs.rmSync(path.join(TREE, file));
  const modules = path.join(TREE, 'tests/node_modules');
  if (!fs.existsSync(modules)) fs.symlinkSync(path.join(ROOT, 'tests/node_modules'), modules);
  const done = run('cmake', ['-S', TREE, '-B', BUILD, '-G', 'Ninja', '-DCMAKE_BUILD_TYPE=Release']);
  if (done.status !== 0) throw new Error(done.stdout + done.stderr);
}
