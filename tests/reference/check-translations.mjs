// Translations of the law packs: whole, with the same numbers, and made from the English of today.
//   node tests/reference/check-translations.mjs [US-WA ...]         one line a pack, 'N passed, N failed', exit code 1 on failure
//   node tests/reference/check-translations.mjs --seal [US-WA ...]  first marks the translations as made from the English of today
import fs from 'node:fs';
import path from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { jsonFiles, readJson, RULES } from './wordcheck/catalogue.mjs';
import { schemaProblems } from './packcheck/world.mjs';
import { englishOf, sealed, translationProblems } from './wordcheck/translations.mjs';

const SHOWN = 15;
const PACKS = path.join(RULES, 'law');
const WORDS = path.join(RULES, 'law-es');
// Federal and local rules over the packs, and their sentences.
const LAYERS = path.join(RULES, 'law-layers');
const LAYER_WORDS = path.join(RULES, 'law-layers-es');
const without = (ending) => (name) => name.slice(0, -ending.length);

export const wordsValidator = () => new Ajv2020({ allErrors: true, strict: true }).compile(readJson(path.join(RULES, 'schema/law-words.schema.json')));

/** What is wrong with the Spanish of one pack; `overlay` is null where there is none. */
export function problemsOf(pack, overlay, validate) {
  if (!pack) return ['there is no pack of this name'];
  if (!overlay) return ['is not in Spanish yet'];
  const schema = schemaProblems(validate, overlay);
  return schema.length ? schema : translationProblems(pack, overlay);
}

const fileOf = (folder, code) => path.join(folder, `${code}.json`);
const readOr = (file) => (fs.existsSync(file) ? readJson(file) : null);

/** The English and the Spanish of a pack or a layer, and where the Spanish lies. A layer's sentences are named by its id. */
function pairOf(code) {
  const layer = fs.existsSync(fileOf(LAYERS, code));
  const [english, spanish] = layer ? [LAYERS, LAYER_WORDS] : [PACKS, WORDS];
  const pack = readOr(fileOf(english, code)), file = fileOf(spanish, code);
  return { pack: layer && pack ? { checkThis: [], facts: [], events: [], ...pack } : pack, file, overlay: readOr(file), layer };
}

function writeSeal(code) {
  const { pack, overlay, file } = pairOf(code);
  if (pack && overlay) fs.writeFileSync(file, `${JSON.stringify(sealed(overlay, pack), null, 2)}\n`);
}

/** A layer's words in the shape of a pack's, for the one schema. */
const inShape = (overlay, layer) => {
  if (!overlay || !layer) return overlay;
  const { id, ...rest } = overlay;
  return { jurisdiction: 'US-WA', ...rest };
};

function check(code, validate) {
  try {
    const { pack, overlay, layer } = pairOf(code);
    if (layer && overlay && overlay.id !== code) return [`id ${overlay.id} is not the file's name`];
    return problemsOf(layer ? { ...pack, jurisdiction: 'US-WA' } : pack, inShape(overlay, layer), validate);
  } catch (e) { return [e.message]; }
}

function main(args) {
  const names = (folder) => (fs.existsSync(folder) ? jsonFiles(folder).map(without('.json')) : []);
  const there = names(WORDS);
  const packs = names(PACKS);
  const layers = [...new Set([...names(LAYERS), ...names(LAYER_WORDS)])];
  const wanted = args.filter((a) => !a.startsWith('--'));
  const codes = wanted.length ? wanted : [...new Set([...packs, ...there, ...layers])].sort();
  const strange = args.filter((a) => a.startsWith('--') && a !== '--seal');
  if (strange.length) { console.log(`There is no option ${strange.join(' ')}; see the head of this file.`); return 2; }
  if (args.includes('--seal')) codes.forEach(writeSeal);
  const validate = wordsValidator();
  let failed = 0;
  for (const code of codes) {
    const problems = check(code, validate);
    if (problems.length) failed += 1;
    console.log(`${problems.length ? 'FAIL' : 'ok  '} ${code}${problems.length > 1 ? ` ${problems.length} problems` : ''}`);
    for (const p of problems.slice(0, wanted.length ? Infinity : SHOWN)) console.log(`     ${p}`);
    if (!wanted.length && problems.length > SHOWN) console.log(`     and ${problems.length - SHOWN} more`);
  }
  const covered = packs.filter((code) => there.includes(code));
  const spoken = covered.flatMap((code) => Object.values(englishOf(readJson(fileOf(PACKS, code)))).flatMap(Object.keys)).length;
  console.log(`${covered.length} of ${packs.length} packs in Spanish, ${spoken} sentences; without: ${packs.filter((code) => !there.includes(code)).join(' ') || 'none'}`);
  console.log(`${codes.length - failed} passed, ${failed} failed`);
  return failed || !codes.length ? 1 : 0;
}

if (process.argv[1]?.endsWith('check-translations.mjs')) process.exitCode = main(process.argv.slice(2));
