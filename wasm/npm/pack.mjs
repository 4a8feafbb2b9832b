// Packs the engine as an npm package: node wasm/npm/pack.mjs [FOLDER]. Needs the build of the page's engine and the bundled rules
// (.ci/setup.sh: build_wasm, bundle_rules). Writes build/npm/package, and the .tgz into FOLDER (build/npm if absent); prints its path.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const ROOT = path.join(HERE, '../..');
const SITE = path.join(ROOT, 'site');
const OUT = path.join(ROOT, 'build/npm');
const PACKAGE = path.join(OUT, 'package');
const target = path.resolve(process.argv[2] ?? OUT);

const version = /project\(wearline[^)]*VERSION ([0-9.]+)/s.exec(fs.readFileSync(path.join(ROOT, 'CMakeLists.txt'), 'utf8'))[1];
const copy = (from, to) => fs.cpSync(from, path.join(PACKAGE, to), { recursive: true });

fs.rmSync(PACKAGE, { recursive: true, force: true });
fs.mkdirSync(PACKAGE, { recursive: true });
for (const file of ['index.mjs', 'index.d.ts', 'README.md']) copy(path.join(HERE, file), file);
for (const file of ['wearline.mjs', 'wearline.wasm']) copy(path.join(SITE, 'src/generated/engine', file), file);
copy(path.join(ROOT, 'LICENSE'), 'LICENSE');
const schemas = path.join(ROOT, 'engine/rules/schema');
for (const file of fs.readdirSync(schemas).filter((f) => /^(case|case-1|common|assessment|letter|reading|recognition|catalogue)\.schema\.json$/.test(f)))
  copy(path.join(schemas, file), `schema/${file}`);
copy(path.join(SITE, 'public/generated/rules'), 'rules');
copy(path.join(SITE, 'src/generated/rules-index.json'), 'rules/index.json');
fs.writeFileSync(path.join(PACKAGE, 'package.json'), `${JSON.stringify({
  name: 'wearline',
  version,
  description: 'Checks deductions from a rental deposit: wear or damage, fair share, legal days, letter.',
  license: 'MIT',
  type: 'module',
  exports: { '.': { types: './index.d.ts', default: './index.mjs' }, './schema/*': './schema/*' },
  types: './index.d.ts',
  engines: { node: '>=18' },
  sideEffects: false
}, null, 2)}\n`);

fs.mkdirSync(target, { recursive: true });
const packed = spawnSync('npm', ['pack', '--silent', '--pack-destination', target], { cwd: PACKAGE, encoding: 'utf8' });
if (packed.status !== 0) {
  console.error(packed.stderr);
  process.exit(1);
}
console.log(path.join(target, packed.stdout.trim().split('\n').at(-1)));
