// The versions of C++ libraries that DEVELOPERS.md names are those of the headers that the builds take. With --write they are renewed.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const DOCUMENT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../DEVELOPERS.md');
const text = (file) => fs.readFileSync(file, 'utf8');
const defined = (file, name) => ['MAJOR', 'MINOR', 'PATCH'].map((part) => text(file).match(new RegExp(`#\\s*define ${name}_${part}\\s+(\\d+)`))[1]).join('.');
const major = (compiler) => execFileSync(compiler, ['-dumpversion'], { encoding: 'utf8' }).trim().split('.')[0];

/** What the table calls it, and where it says its version itself. The headers of date say none; its CMake package does. */
const SAID_BY = {
  nlohmann_json: () => defined('/usr/include/nlohmann/detail/abi_macros.hpp', 'NLOHMANN_JSON_VERSION'),
  'date (Howard Hinnant)': () => {
    const gnu = fs.readdirSync('/usr/lib').find((name) => fs.existsSync(`/usr/lib/${name}/cmake/date/dateConfigVersion.cmake`));
    return text(`/usr/lib/${gnu}/cmake/date/dateConfigVersion.cmake`).match(/set\(PACKAGE_VERSION "([\d.]+)"/)[1];
  },
  CLI11: () => defined('/usr/include/CLI/Version.hpp', 'CLI11_VERSION'),
  Emscripten: () => text('/usr/share/emscripten/emscripten-version.txt').match(/[\d.]+/)[0],
  Catch2: () => defined('/usr/include/catch2/catch.hpp', 'CATCH_VERSION'),
  'GCC, Clang': () => `${major('g++')}, ${major('clang++-14')}`,
};

let document = text(DOCUMENT);
const faults = [];
for (const [name, said] of Object.entries(SAID_BY)) {
  const row = document.split('\n').find((line) => line.startsWith(`| ${name} |`));
  const stated = row?.split('|')[2].trim(), found = said();
  if (stated === found) continue;
  if (row && process.argv.includes('--write')) document = document.replace(row, row.replace(`| ${stated} |`, `| ${found} |`));
  else faults.push(`DEVELOPERS.md gives ${name} as ${stated ?? 'nothing'}, its own files say ${found}`);
}
if (process.argv.includes('--write')) fs.writeFileSync(DOCUMENT, document);
for (const fault of faults) console.log(fault);
console.log(`${Object.keys(SAID_BY).length - faults.length} passed, ${faults.length} failed`);
process.exitCode = faults.length ? 1 : 0;
