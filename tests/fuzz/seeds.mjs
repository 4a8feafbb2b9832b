// Writes the first inputs of a fuzz target: node seeds.mjs TARGET FOLDER. They come from files this repository holds anyway.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..');
// Longer inputs only slow the search down.
const LONGEST = { read_statement: 1 << 12, line: 512, letter: 512 };

function files(folder, end) {
  const full = path.join(ROOT, folder);
  if (!fs.existsSync(full)) return [];
  return fs.readdirSync(full, { withFileTypes: true }).flatMap((entry) => {
    const inside = path.join(folder, entry.name);
    return entry.isDirectory() ? files(inside, end) : inside.endsWith(end) ? [inside] : [];
  });
}
const text = (file) => fs.readFileSync(path.join(ROOT, file), 'utf8');

const cases = () => [
  ...files('examples', '.json').filter((file) => !file.endsWith('.expected.json')).map(text),
  ...files('tests/reference/law', '.json').map((file) => JSON.stringify(JSON.parse(text(file)).case)),
];
const seeds = {
  case: cases,
  case_reader: cases,
  days: () => ['2019', '2019-06', '2019-06-14', '2019/2021', '../2020', '2019/..', '2019~', '2019-06~', '2024-02-29', '1900', '2199-12-31'],
  rulebook: () => files('engine/rules', '.json').map((file) => `${path.relative('engine/rules', file)}\n${JSON.stringify(JSON.parse(text(file)))}`),
  line: () => JSON.parse(text('tests/reference/facts/fact-lines.json')).map((line) => line.text),
  letter: () => ['{}', '{"kind":"demand","language":"es"}', '{"off":["law"],"on":["offer"],"names":{"sender":"A"}}', '{"kind":"court-sheet"}'],
  money: () => ['0.00', '1240.00', '9999999999.99', '-1.00', '1', '1.5', '.50'],
  read_statement: () => files('tests/reference/corpus', '.txt').map(text),
};

const [target, folder] = process.argv.slice(2);
const inputs = (seeds[target] ?? (() => []))().filter((input) => input.length <= (LONGEST[target] ?? 1 << 16));
fs.mkdirSync(folder, { recursive: true });
inputs.forEach((input, index) => fs.writeFileSync(path.join(folder, `seed-${String(index).padStart(4, '0')}`), input));
console.log(`${inputs.length} seeds`);
