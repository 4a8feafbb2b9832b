// Sums read by the page from worn pages
//
// Drives the built page in Chromium as a person would: each page of tests/reference/scans is handed over as a picture, and what the review
// shows is compared with what the page says. A page is whole if every sum is right or stands there to be checked or typed in, no sum is
// wrong without a mark, and the total is called met only where all its rows are right. Needs site/dist (site/run --build-only) and the fonts
// of `needs_of scans` in .ci/setup.sh.
//
//   node tests/reference/measure-scans.mjs shaped            the half the reading was shaped on
//   node tests/reference/measure-scans.mjs held              the other half
//   node tests/reference/measure-scans.mjs shaped held --write   writes the figures to tests/reference/reading.md under "Worn pages"
//   ... --only 04,fax      pages whose name or wear holds one of these;  --site FOLDER  another build of the page
import fs from 'node:fs';
import path from 'node:path';
import { choose, found, foundFacts, goThere, reviewed } from '../browser/bring-in-files.mjs';
import { DIST, launch, open, ROOT, serve } from '../browser/harness.mjs';
import { pagesOf, pictureOf, sheetOf } from './scans/pages.mjs';
import { score, shown } from './scans/score.mjs';
import { writePart } from './scans/report.mjs';

const REPORT = path.join(ROOT, 'tests/reference/reading.md');
/** Of a hundred pages, and sums wrong without a mark. */
const aims = { whole: 95, wrong: 0 };

const args = process.argv.slice(2);
const valueOf = (name) => (args.includes(name) ? args[args.indexOf(name) + 1] : undefined);
const only = valueOf('--only')?.split(',');
const sets = args.filter((a) => ['shaped', 'held'].includes(a));

async function readOne(browser, site, page, file) {
  const { page: tab, finish } = await open(browser, site.address);
  await goThere(tab);
  const began = Date.now();
  await choose(tab, file);
  await Promise.race([reviewed(tab, 300_000), tab.locator('.bring .fault').first().waitFor({ timeout: 300_000 })]);
  const seconds = (Date.now() - began) / 1000;
  const rows = await found(tab);
  const facts = await foundFacts(tab);
  const confirmed = (await tab.getByText('That is the total the statement gives.').count()) > 0;
  const others = await tab.locator('.bring-check, .tray-text, .bring-choice').allInnerTexts();
  await finish();
  const result = score(page, rows, facts, confirmed);
  const { whole, right, sums, asked, marked, extra, missing, wrong, mixed, factsWrong, confirmedWrongly } = result;
  console.log(`${whole ? ' ' : '*'} ${page.name} (${page.wear}): ${right} of ${sums} right, ${asked} of them asked about; ${marked} marked, ${extra} rows too many, ${missing} missing, ${wrong} wrong, ${mixed} beside other words, ${factsWrong} facts wrong${confirmedWrongly ? ', TOTAL CONFIRMED' : ''}; ${seconds.toFixed(1)} s`);
  if (right < sums || !whole || extra) {
    console.log(`      says  ${page.charges.map(shown).join('  ')} | ${Object.values(page.stated).map((cents) => shown({ cents })).join(' ')}`);
    for (const r of rows) console.log(`      ${r.open ? '?' : ' '} ${r.amount.padStart(9)}  ${r.text.slice(0, 70)}`);
    for (const f of facts) console.log(`      ${f.open ? '?' : ' '} ${f.amount.padStart(9)}  ${f.at}`);
    for (const text of others) console.log(`        - ${text.slice(0, 150)}`);
  }
  return { ...result, seconds, pages: 1 };
}

const sum = (all) => all.reduce((a, b) => Object.fromEntries(Object.keys(a).map((k) => [k, a[k] + b[k]])));

function report(all) {
  return [
    'Written by `node tests/reference/measure-scans.mjs shaped held --write`: what the built page shows in Chromium for pages drawn and worn by',
    '`tests/reference/scans`, against what they say. A page is whole if every sum is right or marked, none wrong without a mark, and its total is',
    'called met only where it is. The reading was shaped on the first half; the second was first read when that was done.', '',
    '| | pages | whole | sums | right | of these asked about | not right, marked | rows too many, marked | missing | wrong without a mark | beside other words | stated sums wrong | total met wrongly | seconds a page |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...all.map(([name, r]) => `| ${name} | ${r.pages} | ${r.whole} | ${r.sums} | ${r.right} (${((100 * r.right) / r.sums).toFixed(1)} %) | ${r.asked} | ${r.marked} | ${r.extra} | ${r.missing} | ${r.wrong} | ${r.mixed} | ${r.factsWrong} | ${r.confirmedWrongly} | ${(r.seconds / r.pages).toFixed(1)} |`), '',
  ].join('\n');
}

const browser = await launch();
const site = await serve(valueOf('--site') ?? DIST);
const all = [];
try {
  const sheet = await sheetOf(browser);
  for (const set of sets) {
    const results = [];
    for (const page of pagesOf(set)) {
      if (only && !only.some((o) => `${page.name} ${page.wear}`.includes(o))) continue;
      results.push(await readOne(browser, site, page, await pictureOf(sheet, page)));
    }
    all.push([set, sum(results)]);
  }
} finally {
  await browser.close();
  await site.close();
}
console.log(`\n${report(all)}`);
if (args.includes('--write')) writePart(REPORT, '## Worn pages', report(all));
process.exitCode = all.every(([, r]) => (100 * r.whole) / r.pages >= aims.whole && r.wrong <= aims.wrong) ? 0 : 1;
