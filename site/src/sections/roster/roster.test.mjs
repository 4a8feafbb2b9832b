// The cases at hand: opened together, sorted, kept as a table.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
  ICAL,
  browser,
  example,
  fitsWidth,
  open,
  openMany,
  parseCsv,
  press,
  site,
  taken,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

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
  await chooser.setFiles([
    example('all-fair'),
    { name: 'list.json', mimeType: 'application/json', buffer: Buffer.from('[]') },
  ]);
  await page.getByRole('status').getByText('Opened 1 cases. 1 files were no case files.').waitFor();
  await finish();
});

test('a case is found by its name; only what falls in this week is shown; days and totals go out for all', async () => {
  const { page, finish } = await open(browser, site.address);
  await openMany(page, ['twelve-charges', 'answer-in-time', 'all-fair', 'little-known']);
  await page.locator('.roster tbody tr', { hasText: 'Nov 30, 2026' }).waitFor();
  const names = () => page.locator('.roster tbody tr th .link').allInnerTexts();
  const all = await names();
  await page.getByLabel('Find a case').click();
  await page.keyboard.type('larch', { delay: 40 });
  assert.deepEqual(
    await names(),
    all.filter((n) => /larch/i.test(n)),
  );
  assert.equal((await names()).length, 1);
  await page.getByLabel('Find a case').fill('');
  await page.getByLabel('Only this week and what is past').check();
  const week = await names();
  assert.ok(week.some((n) => /due soon/.test(n)));
  assert.ok(week.length < all.length, week.join());
  await page.getByLabel('Only this week and what is past').uncheck();
  assert.equal((await names()).length, all.length);

  const calendar = ICAL.parse(await (await taken(page, 'All days as a calendar')).text());
  const events = new ICAL.Component(calendar).getAllSubcomponents('vevent');
  const due = events.find((e) => String(e.getFirstPropertyValue('dtstart')).startsWith('2026-11-30'));
  assert.ok(due, 'the day of the answer is in it');
  assert.ok(new Set(events.map((e) => e.getFirstPropertyValue('uid'))).size === events.length);

  const totals = await (await taken(page, 'Totals without names')).text();
  const rows = parseCsv(totals);
  assert.equal(rows.length, all.length + 1);
  assert.ok(rows.some((r) => r[1] === '3284.00'));
  for (const name of all) assert.ok(!totals.includes(name), name);
  await finish();
});
