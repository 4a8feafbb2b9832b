// The ways out: calendar, table, report.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import {
  axe,
  browser,
  ICAL,
  open,
  openExample,
  parseCsv,
  photo,
  press,
  site,
  taken,
  unfold,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('the days ahead go into a calendar that another program reads', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /due soon/);
  await unfold(page, 'takeaway');
  const text = await (await taken(page, 'Calendar')).text();
  const root = new ICAL.Component(ICAL.parse(text));
  const events = root.getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
  await page.locator('.days details').evaluateAll((all) => all.forEach((d) => (d.open = true)));
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
  await unfold(page, 'takeaway');
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
  await unfold(page, 'takeaway');
  await unfold(page, 'evidence');
  await page
    .locator('.evidence input[type=file]')
    .setInputFiles([{ name: 'door.jpg', mimeType: 'image/jpeg', buffer: await photo(page, '2026-09-29') }]);
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
  assert.deepEqual(
    (await axe(other)).filter((v) => !v.startsWith('region') && !v.startsWith('landmark')),
    [],
  );
  await other.close();
  page.on('dialog', (d) => d.accept());
  await press(page, 'Clear all');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(copy);
  await page.locator('.headline').waitFor();
  assert.equal(await page.locator('.headline').innerText(), sums);
  await finish();
});
