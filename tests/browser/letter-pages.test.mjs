// How long letters are on paper: the .docx of every letter of the reference cases, set by a word processor other than the one that
// wrote it. Names and addresses stand as their labels; two lines of an address are left over.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { source } from '../page/source.mjs';
import { caseOf, list, paragraphsOf, written } from '../reference/letters/written.mjs';
import { caseInVersion2, wordNow } from '../reference/version-1.mjs';

const paper = 11 * 72, margin = 42; // in points, site/src/out/word.ts

/** Pages of each document, the last as far as it is filled. */
function pagesOf(folder, names) {
  const office = ['-env:UserInstallation=' + pathToFileURL(path.join(folder, 'profile')), '--headless', '--convert-to', 'pdf', '--outdir', folder];
  // One call takes no more than some 250 documents.
  for (let from = 0; from < names.length; from += 100)
    execFileSync('soffice', [...office, ...names.slice(from, from + 100).map((name) => path.join(folder, `${name}.docx`))], { stdio: 'pipe', timeout: 300_000 });
  return names.map((name) => {
    const pages = execFileSync('pdftotext', ['-bbox', path.join(folder, `${name}.pdf`), '-']).toString().split('<page ').slice(1);
    const lowest = Math.max(...[...pages.at(-1).matchAll(/yMax="([\d.]+)"/g)].map((m) => Number(m[1])));
    return pages.length - 1 + (lowest - margin) / (paper - 2 * margin);
  });
}

test('a letter takes one page up to six charges and a page and a half up to twelve; sheet and note take one', async () => {
  const { word } = await source('out/word.ts');
  const letters = list().letters;
  // As the page asks for them: in the present version of the format.
  const present = (one) => JSON.parse(caseInVersion2(JSON.stringify(caseOf(one.case))));
  const answers = written(
    letters.map((one) => ({ one, file: present(one), options: { kind: wordNow('letter', one.kind), language: one.language } })),
  );
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-pages-'));
  try {
    const names = letters.map((_, i) => String(i));
    for (const [i, one] of letters.entries()) {
      const file = await word(answers[i].title, paragraphsOf(answers[i], one.language), one.kind === 'adviser-note');
      fs.writeFileSync(path.join(folder, `${i}.docx`), Buffer.from(await file.arrayBuffer()));
    }
    const pages = pagesOf(folder, names);
    const long = letters.flatMap((one, i) => {
      const sent = one.kind !== 'adviser-note' && one.kind !== 'small-claims-sheet';
      const most = sent && caseOf(one.case).lines.length > 6 ? 1.5 : 1;
      return pages[i] > most ? [`${one.case} ${one.kind} ${one.language}: ${pages[i].toFixed(2)}`] : [];
    });
    assert.deepEqual(long, []);
    assert.ok(pages.every((n) => n > 0.1));
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
});
