// Sums read by the page from PDFs and scans of the corpus
//
// Drives the built page in Chromium as a person would: each PDF and each scan of tests/reference/corpus is handed over, and what the
// review shows is compared with the labelled sums. Prints, for each kind, the share of sums that are right, those that are not right but
// marked for the person, and those wrong without a mark; sums that no label has count as wrong. Needs site/dist (site/run --build-only).
//
//   node tests/reference/measure-bringin.mjs             the PDFs and the scans as they are
//   node tests/reference/measure-bringin.mjs --photos    besides, the scans as photos: turned, askew, dim, small
//   node tests/reference/measure-bringin.mjs --write     writes the figures to tests/reference/reading.md under "PDFs and scans"
import fs from 'node:fs';
import path from 'node:path';
import { asPhoto, choose, CORPUS, expectedOf, found, goThere, reviewed } from '../browser/bring-in-files.mjs';
import { launch, open, ROOT, serve } from '../browser/harness.mjs';
import { writePart } from './scans/report.mjs';

const REPORT = path.join(ROOT, 'tests/reference/reading.md');
const HEADING = '## PDFs and scans';
/** Aims: every sum of a PDF right; of scans nine in ten right and the others marked. */
const aims = { pdf: 1, scan: 0.9 };

const photos = [
  { name: 'upside down, half the light', degrees: 180, light: 0.5 },
  { name: 'on its side and 7° askew, light 0.7', degrees: 277, light: 0.7 },
  { name: '3° askew, light 0.6, about 80 dots an inch', degrees: 3, light: 0.6, scale: 0.55 },
];

const numbersIn = (folder) => fs.readdirSync(path.join(CORPUS, folder)).map((f) => f.slice(0, 2)).sort();

/** The longest run of sums that stand in both lists in the same order (longest common subsequence), as pairs of indexes. */
function matched(labels, read) {
  const best = Array.from({ length: labels.length + 1 }, () => new Array(read.length + 1).fill(0));
  for (let i = labels.length - 1; i >= 0; i--)
    for (let j = read.length - 1; j >= 0; j--)
      best[i][j] = labels[i] === read[j] ? best[i + 1][j + 1] + 1 : Math.max(best[i + 1][j], best[i][j + 1]);
  const pairs = [];
  for (let i = 0, j = 0; i < labels.length && j < read.length; ) {
    if (labels[i] === read[j]) pairs.push([i++, j++]);
    else if (best[i + 1][j] >= best[i][j + 1]) i++;
    else j++;
  }
  return pairs;
}

/** How the rows of the review compare with the labels. A label without a row of its own is missed unless a marked row stands in its place. */
function compare(expected, rows) {
  const labels = expected.lines.map((l) => l.amount).filter((a) => Number(a) !== 0);
  const kept = rows.filter((r) => Number(r.amount) !== 0);
  const pairs = matched(labels, kept.map((r) => r.amount));
  const unread = labels.length - pairs.length;
  const others = kept.filter((_, j) => !pairs.some(([, at]) => at === j));
  const marked = others.filter((r) => r.open).length;
  return { labels: labels.length, right: pairs.length, marked: Math.min(unread, marked), missed: Math.max(0, unread - others.length), wrong: others.length - marked };
}

const sum = (all) => all.reduce((a, b) => Object.fromEntries(Object.keys(a).map((k) => [k, a[k] + b[k]])));

async function readOne(browser, site, number, file, photo) {
  const { page, finish } = await open(browser, site.address);
  await goThere(page);
  await choose(page, photo ? await asPhoto(page, file, photo) : file);
  await reviewed(page, 300_000);
  const rows = await found(page);
  await finish();
  const result = compare(expectedOf(number), rows);
  const { labels, right, marked, missed, wrong } = result;
  console.log(`  ${number}: ${right} of ${labels} right, ${marked} marked, ${missed} missing, ${wrong} wrong without a mark`);
  if (right < labels || wrong) for (const r of rows) console.log(`      ${r.open ? '?' : ' '} ${r.amount.padStart(9)}  ${r.text.slice(0, 70)}`);
  return result;
}

async function readAll(browser, site, name, folder, photo) {
  console.log(name);
  const results = [];
  for (const number of numbersIn(folder))
    results.push(await readOne(browser, site, number, path.join(CORPUS, folder, `${number}.${folder === 'pdf' ? 'pdf' : 'png'}`), photo));
  return { name, files: results.length, ...sum(results) };
}

const share = (n, of) => `${((100 * n) / of).toFixed(1)} %`;

function report(all) {
  const rows = all.map((r) => `| ${r.name} | ${r.files} | ${r.labels} | ${r.right} (${share(r.right, r.labels)}) | ${r.marked} | ${r.missed} | ${r.wrong} |`);
  return [
    'Written by `node tests/reference/measure-bringin.mjs --photos --write`: what the built page shows in Chromium for the corpus, against its labels.', '',
    '| | files | sums | right | not right, marked | missing | wrong without a mark |', '| --- | --- | --- | --- | --- | --- | --- |', ...rows, '',
  ].join('\n');
}

const [browser, site] = await Promise.all([launch(), serve()]);
let all;
try {
  all = [await readAll(browser, site, 'PDFs', 'pdf'), await readAll(browser, site, 'scans', 'scans')];
  if (process.argv.includes('--photos')) for (const photo of photos) all.push(await readAll(browser, site, `photos: ${photo.name}`, 'scans', photo));
} finally {
  await browser.close();
  await site.close();
}

const text = report(all);
console.log(`\n${text}`);
if (process.argv.includes('--write')) writePart(REPORT, HEADING, text);

const [pdfs, scans] = all;
const failures = [
  pdfs.right / pdfs.labels < aims.pdf || pdfs.wrong ? 'a sum of a PDF is not right' : '',
  scans.right / scans.labels < aims.scan ? 'fewer than nine in ten sums of scans are right' : '',
  scans.wrong || scans.missed ? 'a sum of a scan is wrong or missing without a mark' : '',
].filter(Boolean);
failures.forEach((f) => console.log(f));
process.exitCode = failures.length ? 1 : 0;
