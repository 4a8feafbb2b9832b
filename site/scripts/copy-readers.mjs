// Copies what reads PDFs and pictures from its packages to the site's own files, so that the page asks no other host for it:
//   site/public/generated/pdf-<version>/   the worker of pdfjs-dist
//   site/public/generated/ocr-<version>/   the worker, the cores and the English and Spanish data of tesseract.js
//   site/src/generated/readers.json        { pdf, ocr }: the two folders
// Each folder carries the licences of what lies in it. Its name holds the version, so that a browser may keep the files for good.
import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '..');
const PUBLIC = path.join(SITE, 'public/generated');
const require = createRequire(import.meta.url);

const folderOf = (name) => path.dirname(require.resolve(`${name}/package.json`));
const versionOf = (name) => JSON.parse(fs.readFileSync(path.join(folderOf(name), 'package.json'), 'utf8')).version;

/** The core for each kind of processor; the reader takes the fastest one the browser can run. */
const cores = ['relaxedsimd-lstm', 'simd-lstm', 'lstm'];

/**
 * A worker is bound by the policy that comes with its own file, where a host sends the page's policy with every file. It then may load
 * scripts from beside itself and from nowhere else.
 */
const ownScriptsOnly = `self.trustedTypes?.createPolicy('default', {
  createScriptURL(address) {
    if (!new URL(address, location.href).href.startsWith(new URL('./', location.href).href)) throw new TypeError('No script from ' + address);
    return address;
  },
});
`;

/** What goes where: [package, file in it, name here, what stands before it]. A worker gets the ending .js, which every server knows. */
const readers = {
  pdf: {
    of: 'pdfjs-dist',
    files: [
      ['pdfjs-dist', 'legacy/build/pdf.worker.min.mjs', 'worker.js'],
      ['pdfjs-dist', 'LICENSE', 'LICENSE.txt'],
    ],
  },
  ocr: {
    of: 'tesseract.js',
    // Counts what is changed in the files beside their version.
    own: 1,
    files: [
      ['tesseract.js', 'dist/worker.min.js', 'worker.js', ownScriptsOnly],
      ['tesseract.js', 'dist/worker.min.js.LICENSE.txt', 'worker.js.LICENSE.txt'],
      ['tesseract.js', 'LICENSE.md', 'LICENSE.md'],
      ...cores.flatMap((c) => ['js', 'wasm'].map((ending) => ['tesseract.js-core', `tesseract-core-${c}.${ending}`, `tesseract-core-${c}.${ending}`])),
      ['@tesseract.js-data/eng', '4.0.0_best_int/eng.traineddata.gz', 'eng.traineddata.gz'],
      ['@tesseract.js-data/spa', '4.0.0_best_int/spa.traineddata.gz', 'spa.traineddata.gz'],
    ],
  },
};

function copyReader(name, { of, own, files }) {
  const folder = `${name}-${versionOf(of)}${own ? `-${own}` : ''}`;
  for (const old of fs.readdirSync(PUBLIC)) if (old.startsWith(`${name}-`) && old !== folder) fs.rmSync(path.join(PUBLIC, old), { recursive: true });
  fs.mkdirSync(path.join(PUBLIC, folder), { recursive: true });
  for (const [from, file, as, before] of files) copyIfOther(path.join(folderOf(from), file), path.join(PUBLIC, folder, as), before);
  return folder;
}

function copyIfOther(from, to, before = '') {
  if (fs.existsSync(to) && fs.statSync(to).size === fs.statSync(from).size + before.length) return;
  if (before) fs.writeFileSync(to, before + fs.readFileSync(from, 'utf8'));
  else fs.copyFileSync(from, to);
}

fs.mkdirSync(PUBLIC, { recursive: true });
fs.mkdirSync(path.join(SITE, 'src/generated'), { recursive: true });
const folders = Object.fromEntries(Object.entries(readers).map(([name, reader]) => [name, copyReader(name, reader)]));
fs.writeFileSync(path.join(SITE, 'src/generated/readers.json'), `${JSON.stringify(folders, null, 2)}\n`);
console.log(Object.values(folders).join(', '));
