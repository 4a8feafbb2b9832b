// The wording catalogue as files: every sentence by language, file and key.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../..');
export const RULES = path.join(ROOT, 'engine/rules');

export const readJson = (file) => JSON.parse(fs.readFileSync(file, 'utf8'));

export const jsonFiles = (folder) => (fs.existsSync(folder) ? fs.readdirSync(folder).filter((f) => f.endsWith('.json')).sort() : []);

/** { en: { "law.json": { key: sentence } }, es: ... } */
export function readCatalogue(folder = path.join(RULES, 'wording')) {
  const languages = fs.readdirSync(folder).filter((d) => fs.statSync(path.join(folder, d)).isDirectory()).sort();
  return Object.fromEntries(languages.map((language) => [language,
    Object.fromEntries(jsonFiles(path.join(folder, language)).map((file) => [file, readJson(path.join(folder, language, file))]))]));
}

/** The files below a folder whose names end in one of `endings`. */
export function filesUnder(folder, endings, without = /node_modules|generated|dist/) {
  return fs.readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const full = path.join(folder, entry.name);
    if (without.test(entry.name)) return [];
    if (entry.isDirectory()) return filesUnder(full, endings, without);
    return endings.some((e) => entry.name.endsWith(e)) ? [full] : [];
  });
}
