// The cases at hand: opened together, sorted, kept as a table.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
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
