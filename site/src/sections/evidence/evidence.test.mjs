// Photos and papers: their days and what is doubtful about them.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
  browser,
  open,
  openExample,
  photo,
  press,
  site,
  unfold,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('photos carry their own day, and a day that does not fit is said', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const files = [];
  for (const [name, day] of [
    ['stain.jpg', '2026-07-31'],
    ['old.jpg', '2025-01-05'],
    ['plain.jpg', ''],
  ])
    files.push({ name, mimeType: 'image/jpeg', buffer: await photo(page, day) });
  files.push({ name: 'bill.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.4\n') });
  await unfold(page, 'evidence');
  await page.locator('.evidence input[type=file]').setInputFiles(files);
  const exhibit = (n) => page.locator('.exhibit').nth(n);
  await exhibit(3).waitFor();
  await exhibit(0).getByText('Taken on July 31, 2026, by the camera’s clock.').waitFor();
  assert.equal(await exhibit(0).locator('.fault').count(), 0);
  await exhibit(1)
    .getByText(/more than a month older than the move-out/)
    .waitFor();
  await exhibit(2)
    .getByText(/The photo itself names no day/)
    .waitFor();
  await exhibit(0).getByLabel('Belongs to').selectOption('1');
  await exhibit(0).getByLabel('Note').fill('Stain by the window');
  assert.equal(
    await exhibit(0)
      .locator('img')
      .evaluate((i) => i.complete && i.naturalWidth),
    60,
  );
  await exhibit(1).getByLabel('Shows').selectOption('move-in');
  await exhibit(1)
    .getByText(/more than a month after the move-in/)
    .waitFor();
  assert.deepEqual(await axe(page), []);
  await page.evaluate(() => (window.print = () => {}));
  await press(page, 'Print the list');
  await page.emulateMedia({ media: 'print' });
  assert.ok(await exhibit(0).isVisible());
  assert.equal(await page.locator('.charges').isVisible(), false);
  await finish();
});
