// What the browser tests share: the built page behind a small file server, Chromium, and a watch over what the page must never do.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import http from 'node:http';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import { after, before } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createGzip } from 'node:zlib';
import { parse as parseCsv } from 'csv-parse/sync';
import ICAL from 'ical.js';
import piexif from 'piexifjs';
import { chromium } from 'playwright-core';

export { ICAL, parseCsv };

export const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..');
export const DIST = path.join(ROOT, 'site/dist');
/** The page as one file, opened from the disk. */
export const ONE_FILE = pathToFileURL(path.join(DIST, 'wearline.html')).href;
export const OUT = path.join(ROOT, 'tests/out');
export const TODAY = '2026-11-25';

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const types = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.mjs': 'text/javascript', '.css': 'text/css', '.json': 'application/json',
  '.wasm': 'application/wasm', '.svg': 'image/svg+xml', '.png': 'image/png', '.webmanifest': 'application/manifest+json',
};

const shrinks = new Set(['.html', '.js', '.mjs', '.css', '.json', '.wasm', '.svg', '.webmanifest']);

/**
 * Serves a folder on a free port, under a path of its own, gzipped, as a clinic's site would hold it; `headers` go with every file,
 * `sent` is told the name of each. Resolves to { address, close }.
 */
export function serve(folder = DIST, under = '/help/deposits/', headers = {}, sent = () => {}) {
  const server = http.createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://localhost');
    const file = path.join(folder, pathname.startsWith(under) ? pathname.slice(under.length) || 'index.html' : 'no-such-file');
    if (!file.startsWith(folder) || !fs.existsSync(file) || fs.statSync(file).isDirectory()) {
      response.writeHead(404).end();
      return;
    }
    sent(path.relative(folder, file));
    const kind = path.extname(file);
    const gzip = shrinks.has(kind) && /\bgzip\b/.test(request.headers['accept-encoding'] ?? '');
    response.writeHead(200, { ...headers, 'content-type': types[kind] ?? 'application/octet-stream', ...(gzip && { 'content-encoding': 'gzip', vary: 'accept-encoding' }) });
    const content = fs.createReadStream(file);
    (gzip ? content.pipe(createGzip()) : content).pipe(response);
  });
  return new Promise((done) => {
    server.listen(0, '127.0.0.1', () => {
      done({ address: `http://127.0.0.1:${server.address().port}${under}`, close: () => new Promise((end) => server.close(end)) });
    });
  });
}

export const launch = () =>
  chromium.launch({
    executablePath: process.env.WEARLINE_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });

/** Chromium and the served page of a test file that says `withPage()`; there before its first test. */
export let browser, site;
export function withPage() {
  before(async () => {
    [browser, site] = await Promise.all([launch(), serve()]);
  });
  after(async () => {
    await browser.close();
    await site.close();
  });
}

/**
 * A fresh page on the given address. `watched.wrong` collects errors, policy violations and requests to other hosts;
 * `finish` fails if there were any.
 */
export async function open(browser, address, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-US', timezoneId: 'America/Los_Angeles', ...options });
  const page = await context.newPage();
  const wrong = [];
  page.on('pageerror', (e) => wrong.push(`error: ${e.message}`));
  page.on('console', (m) => ['error', 'warning'].includes(m.type()) && wrong.push(`console: ${m.text()}`));
  page.on('request', (r) => {
    const url = r.url();
    const own = address.startsWith('file:') ? address : address.replace(/[^/]*$/, '');
    if (!url.startsWith(own) && !/^(blob|data):/.test(url)) wrong.push(`request: ${url}`);
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (e) => console.error(`policy: ${e.violatedDirective} ${e.blockedURI}`));
  });
  await page.clock.setFixedTime(new Date(`${TODAY}T12:00:00-08:00`));
  await page.goto(address);
  await ready(page);
  return {
    page,
    context,
    wrong,
    /** `expected`: what a test provokes on purpose. */
    async finish(expected = /(?!)/) {
      await context.close();
      assert.deepEqual(wrong.filter((w) => !expected.test(w)), []);
    },
  };
}

/** Somebody is at the page; waits until the engine is in. */
export async function ready(page) {
  await page.locator('.footer').waitFor();
  const { x, y } = await page.evaluate(() => ({ x: innerWidth - 1, y: innerHeight - 1 }));
  const engineIn = page.locator('.footer', { hasText: /\d+\.\d+\.\d+/ }).waitFor();
  await page.mouse.move(x, y);
  await page.mouse.move(x - 1, y);
  await engineIn;
}

/** Answers every question of the browser as `yes` says at that moment; gives what was asked. A page that is gone takes its question with it. */
export function answering(page, yes = () => true) {
  const asked = [];
  page.on('dialog', async (d) => {
    asked.push(`${d.type()} ${d.message()}`);
    await (yes() ? d.accept() : d.dismiss()).catch((e) => {
      if (!/has been closed|No dialog is showing/.test(e.message)) throw e;
    });
  });
  return asked;
}

/** Waits until what is shown is the result of what was entered last. */
export const still = (page) => page.locator('#page[aria-busy=false]').waitFor({ state: 'attached' });

/** Waits until the page keeps its files for a visit without a network. */
export const keepsFiles = (page) =>
  page.evaluate(async () => {
    const { active, installing, waiting } = await navigator.serviceWorker.ready;
    const worker = active ?? waiting ?? installing;
    if (worker.state !== 'activated') await new Promise((done) => worker.addEventListener('statechange', () => worker.state === 'activated' && done()));
  });

export const openExample = async (page, title) => {
  await page.getByRole('button', { name: title }).click();
  await page.locator('.headline').waitFor();
  await still(page);
};

/** Every finding of axe on what is shown, as short lines; no rule is left out. */
export async function axe(page) {
  await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }),
  );
  return found.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.target.join(' ')} ${n.failureSummary.split('\n')[1] ?? ''}`.trim()));
}

/** True if nothing sticks out to the side. */
export const fitsWidth = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

/** The row of a charge, from 1. */
export const row = (page, n) => page.locator('.charge').nth(n - 1);

/** Opens the row of a charge, from 1, to its question and steps. */
export async function openRow(page, n) {
  const opener = row(page, n).locator('.charge-opener');
  if ((await opener.getAttribute('aria-expanded')) !== 'true') await opener.click();
  await row(page, n).locator('.charge-tools').waitFor();
}

/** Opens it, and the facts that are folded in it. */
export async function openFacts(page, n) {
  await openRow(page, n);
  if (!(await row(page, n).locator('.facts').count())) await row(page, n).locator('.row-facts > summary').click();
  await row(page, n).locator('.facts').waitFor();
}

/** Opens a part of the page that is folded until wanted. */
export async function unfold(page, name) {
  const part = page.locator(`.folded.${name} > details`);
  if (!(await part.evaluate((p) => p.open))) await part.locator('summary').first().click();
}

/** Unfolds the facts that decide, where they are folded to one line. */
export async function changeFacts(page) {
  const change = page.locator('#facts-change');
  if (await change.count()) await change.click();
  await page.locator('#place').waitFor();
}

/** Says that something came back, and how much. */
export async function cameBack(page, amount) {
  await page.getByRole('radio', { name: 'Some or all' }).check();
  await page.getByLabel('Paid back so far').fill(amount);
}

/** The fair sum of a charge, from 1. */
export async function figure(page, n) {
  await still(page);
  return row(page, n).locator('.charge-fair .figure').innerText();
}

/** Types a charge into the empty row with the keyboard and leaves the cursor in the next one. */
export async function typeCharge(page, n, text, amount) {
  await page.locator(`#text-${n - 1}`).fill(text);
  await page.keyboard.press('Enter');
  await page.keyboard.type(amount);
  await page.keyboard.press('Enter');
  await still(page);
}

/** Waits until `holds` is true; fails after ten seconds. */
export async function until(holds) {
  for (let i = 0; i < 200; i++) {
    if (await holds()) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  assert.fail('it did not come to hold in ten seconds');
}

/** Presses the first button of exactly that name. */
export const press = (page, name) => page.getByRole('button', { name, exact: true }).first().click();
/** What comes down when a button is pressed. */
export async function taken(page, name) {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, name)]);
  return { name: download.suggestedFilename(), path: await download.path(), text: () => download.path().then((p) => fs.readFileSync(p, 'utf8')) };
}
/** What a word processor other than the one that wrote it reads in a document: LibreOffice makes a PDF of it, its text comes back. */
export function asPrinted(document) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-office-'));
  try {
    const run = (...command) => execFileSync(command[0], command.slice(1), { stdio: 'pipe', timeout: 120_000 });
    const file = path.join(folder, 'letter.docx');
    fs.copyFileSync(document, file);
    run('soffice', `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile'))}`, '--headless', '--convert-to', 'pdf', '--outdir', folder, file);
    return run('pdftotext', '-raw', path.join(folder, 'letter.pdf'), '-').toString();
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}
/** An example case as a file to choose. */
export const example = (slug) => ({
  name: `${slug}.json`, mimeType: 'application/json', buffer: fs.readFileSync(new URL(`../../examples/${slug}.json`, import.meta.url)),
});
/** Opens several examples at once. */
export async function openMany(page, slugs) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(slugs.map(example));
  await page.locator('.roster tbody tr').nth(slugs.length - 1).waitFor();
}

/** The sum of the first charge as the browser's store has it. */
export const keptAmount = (page) =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const opening = indexedDB.open('keyval-store');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('keyval').objectStore('keyval').get('wearline');
          asked.onsuccess = () => done(asked.result?.sheets[0].subject.lines[0].amount);
        };
      }),
  );

/** A photo as a camera makes it, with the day in its EXIF. */
export async function photo(page, day) {
  const jpeg = (await page.screenshot({ type: 'jpeg', clip: { x: 0, y: 0, width: 60, height: 40 } })).toString('latin1');
  if (!day) return Buffer.from(jpeg, 'latin1');
  const exif = piexif.dump({ Exif: { [piexif.ExifIFD.DateTimeOriginal]: `${day.replace(/-/g, ':')} 10:30:00` } });
  return Buffer.from(piexif.insert(exif, jpeg), 'latin1');
}
