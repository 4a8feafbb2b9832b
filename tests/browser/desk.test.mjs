// More than one case, keeping on the device, photos with their dates, and every way out of the page.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { parse as parseCsv } from 'csv-parse/sync';
import { strFromU8, unzipSync } from 'fflate';
import ICAL from 'ical.js';
import piexif from 'piexifjs';
import { axe, fitsWidth, launch, open, openExample, ready, serve, until } from './harness.mjs';

let browser, site;
before(async () => {
  [browser, site] = await Promise.all([launch(), serve()]);
});
after(async () => {
  await browser.close();
  await site.close();
});

const press = (page, name) => page.getByRole('button', { name, exact: true }).first().click();
async function taken(page, name) {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, name)]);
  return { name: download.suggestedFilename(), path: await download.path(), text: () => download.path().then((p) => fs.readFileSync(p, 'utf8')) };
}
const example = (slug) => ({
  name: `${slug}.json`, mimeType: 'application/json', buffer: fs.readFileSync(new URL(`../../examples/${slug}.json`, import.meta.url)),
});
async function openMany(page, slugs) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(slugs.map(example));
  await page.locator('.roster tbody tr').nth(slugs.length - 1).waitFor();
}

test('a clinic opens many cases at once, sorts them, and keeps the table as CSV', async () => {
  const { page, finish } = await open(browser, site.address);
  await openMany(page, ['twelve-charges', 'answer-in-time', 'all-fair', 'little-known']);
  await page.locator('.roster tbody tr', { hasText: 'Nov 30, 2026' }).waitFor();
  const names = () => page.locator('.roster tbody tr th .link').allInnerTexts();
  // The answer that is due in five days comes first.
  assert.match((await names())[0], /due soon/);
  await page.getByRole('columnheader', { name: 'Charged' }).getByRole('button').click();
  assert.match((await names())[0], /Twelve charges/);
  assert.equal(await page.locator('[data-column="claimed"]').getAttribute('aria-sort'), 'ascending');
  await page.getByRole('columnheader', { name: 'Charged' }).getByRole('button').click();
  assert.match((await names()).at(-1), /Twelve charges/);
  const file = await taken(page, 'Keep as CSV');
  const text = await file.text();
  assert.match(text, /\r\n$/);
  const rows = parseCsv(text);
  assert.equal(rows.length, 5);
  assert.deepEqual(rows[0].slice(0, 2), ['Case', 'Place']);
  assert.equal(rows.at(-1)[4], '3284.00');
  await page.locator('.roster tbody tr', { hasText: 'Larch Lane' }).getByRole('button').click();
  assert.equal(await page.locator('#text-0').inputValue(), 'October rent, not paid');
  assert.deepEqual(await axe(page), []);
  await page.setViewportSize({ width: 320, height: 800 });
  assert.ok(await fitsWidth(page));
  await finish();
});

test('a folder of files: cases are opened, the rest is counted', async () => {
  const { page, finish } = await open(browser, site.address);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles([example('all-fair'), { name: 'list.json', mimeType: 'application/json', buffer: Buffer.from('[]') }]);
  await page.getByRole('status').getByText('Opened 1 cases. 1 files were no case files.').waitFor();
  await finish();
});

/** The sum of the first charge as the browser's store has it. */
const keptAmount = (page) =>
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

test('nothing is kept unless asked; kept cases come back; clear all takes them away', async () => {
  const { page, finish } = await open(browser, site.address);
  page.on('dialog', (d) => d.accept());
  await openExample(page, /Little is known/);
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('.headline').count(), 0);
  await openExample(page, /Little is known/);
  await press(page, 'Keep on this device');
  await page.getByRole('status').getByText(/stay in this browser/).waitFor();
  await page.locator('#amount-0').fill('781.25');
  await until(async () => (await keptAmount(page)) === '781.25');
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('#amount-0').inputValue(), '781.25');
  await page.locator('.headline').waitFor();
  await press(page, 'Clear all');
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('.headline').count(), 0);
  await finish();
});

/** A photo as a camera makes it, with the day in its EXIF. */
async function photo(page, day) {
  const jpeg = (await page.screenshot({ type: 'jpeg', clip: { x: 0, y: 0, width: 60, height: 40 } })).toString('latin1');
  if (!day) return Buffer.from(jpeg, 'latin1');
  const exif = piexif.dump({ Exif: { [piexif.ExifIFD.DateTimeOriginal]: `${day.replace(/-/g, ':')} 10:30:00` } });
  return Buffer.from(piexif.insert(exif, jpeg), 'latin1');
}

test('photos carry their own day, and a day that does not fit is said', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const files = [];
  for (const [name, day] of [['stain.jpg', '2026-07-31'], ['old.jpg', '2025-01-05'], ['plain.jpg', '']])
    files.push({ name, mimeType: 'image/jpeg', buffer: await photo(page, day) });
  files.push({ name: 'bill.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.4\n') });
  await page.locator('.evidence input[type=file]').setInputFiles(files);
  const exhibit = (n) => page.locator('.exhibit').nth(n);
  await exhibit(3).waitFor();
  await exhibit(0).getByText('Taken on July 31, 2026, by the camera’s clock.').waitFor();
  assert.equal(await exhibit(0).locator('.fault').count(), 0);
  await exhibit(1).getByText(/more than a month older than the move-out/).waitFor();
  await exhibit(2).getByText(/The photo itself names no day/).waitFor();
  await exhibit(0).getByLabel('Belongs to').selectOption('1');
  await exhibit(0).getByLabel('Note').fill('Stain by the window');
  assert.equal(await exhibit(0).locator('img').evaluate((i) => i.complete && i.naturalWidth), 60);
  await exhibit(1).getByLabel('Shows').selectOption('move-in');
  await exhibit(1).getByText(/more than a month after the move-in/).waitFor();
  assert.deepEqual(await axe(page), []);
  await page.evaluate(() => (window.print = () => {}));
  await press(page, 'Print the list');
  await page.emulateMedia({ media: 'print' });
  assert.ok(await exhibit(0).isVisible());
  assert.equal(await page.locator('.charges').isVisible(), false);
  await finish();
});

test('the days ahead go into a calendar that another program reads', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /due soon/);
  const text = await (await taken(page, 'Calendar')).text();
  const root = new ICAL.Component(ICAL.parse(text));
  const events = root.getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
  const shown = await page.locator('.day[data-state="open"]').count();
  assert.equal(events.length, shown);
  const answer = events.find((e) => e.summary.startsWith('Answer the statement'));
  assert.equal(answer.startDate.toString(), '2026-11-30');
  assert.ok(answer.startDate.isDate);
  for (const e of events) assert.equal(e.component.getAllSubcomponents('valarm').length, 2);
  assert.ok(text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75));
  await finish();
});

test('the charges go into a table that a spreadsheet cannot mistake for formulas', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.locator('#text-1').fill('=1+1, "quoted"\nsecond line');
  const rows = parseCsv(await (await taken(page, 'Table')).text());
  assert.equal(rows.length, 5);
  assert.equal(rows[2][1], `'=1+1, "quoted"\nsecond line`);
  assert.equal(rows[1][2], '1240.00');
  await finish();
});

test('the report stands alone, holds every charge and step, and opens here again', async () => {
  const { page, context, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await page.locator('.evidence input[type=file]').setInputFiles([{ name: 'door.jpg', mimeType: 'image/jpeg', buffer: await photo(page, '2026-09-29') }]);
  await page.locator('.exhibit').waitFor();
  const sums = await page.locator('.headline').innerText();
  const file = await taken(page, 'Report');
  const copy = `${file.path}.html`;
  fs.copyFileSync(file.path, copy);
  const other = await context.newPage();
  await other.goto(pathToFileURL(copy).href);
  assert.equal(await other.locator('h3').count(), 12);
  assert.ok((await other.locator('ol li').count()) >= 12);
  assert.equal(await other.locator('img').evaluate((i) => i.naturalWidth), 60);
  assert.deepEqual((await axe(other)).filter((v) => !v.startsWith('region') && !v.startsWith('landmark')), []);
  await other.close();
  page.on('dialog', (d) => d.accept());
  await press(page, 'Clear all');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(copy);
  await page.locator('.headline').waitFor();
  assert.equal(await page.locator('.headline').innerText(), sums);
  await finish();
});

test('the letter goes out as text and as a .docx with the same words', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const text = await (await taken(page, 'Keep as text')).text();
  assert.match(text, /Re: My security deposit/);
  assert.doesNotMatch(text, /not legal advice/);
  const zip = unzipSync(fs.readFileSync((await taken(page, 'Keep as .docx')).path));
  const words = strFromU8(zip['word/document.xml'])
    .replace(/<[^>]+>/g, ' ').replace(/&amp;/g, '&').replace(/&apos;/g, "'").replace(/&quot;/g, '"').replace(/\s+/g, ' ');
  const sentences = text.split(/\n+/).filter((l) => /[.:]$/.test(l) && !/^\d/.test(l));
  assert.ok(sentences.length > 8);
  for (const sentence of sentences) assert.ok(words.includes(sentence), sentence);
  await finish();
});

test('own words in the letter survive new facts, and what the facts changed beneath them is said', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const second = page.locator('.paragraph').filter({ has: page.locator('.paragraph-print', { hasText: /^About charge 2/ }) });
  await second.locator('textarea').fill('Charge 2 is plain wear. I do not owe it.');
  const mine = page.locator('.paragraph').filter({ has: page.locator('.paragraph-print', { hasText: 'Charge 2 is plain wear.' }) });
  await mine.getByText('In your own words.').waitFor();
  await page.locator('#amount-1').fill('180');
  await mine.getByText('The facts changed since you wrote this.').waitFor();
  assert.equal(await mine.locator('textarea').inputValue(), 'Charge 2 is plain wear. I do not owe it.');
  const text = await (await taken(page, 'Keep as text')).text();
  assert.ok(text.includes('Charge 2 is plain wear. I do not owe it.'));
  await mine.getByRole('button', { name: 'Take the draft’s words' }).click();
  await page.locator('.paragraph-print', { hasText: /^About charge 2.*\$180\.00/ }).waitFor({ state: 'attached' });
  await second.locator('.paragraph-switch input').uncheck();
  assert.doesNotMatch(await (await taken(page, 'Keep as text')).text(), /About charge 2 /);
  await finish();
});

test('in Spanish the letter stays English and a copy to read stands below', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.locator('.letter-copy summary').click();
  assert.equal(await page.locator('article.sheet').getAttribute('lang'), 'en');
  assert.equal(await page.locator('.letter-copy .sheet').getAttribute('lang'), 'es');
  await page.locator('.letter-copy').getByText(/depósito/).first().waitFor();
  assert.equal(await page.locator('html').getAttribute('lang'), 'es');
  assert.deepEqual(await axe(page), []);
  await finish();
});
