// The charges that look like ordinary wear.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, ready, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('it lists them with their sums, and is absent where there are none', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  assert.deepEqual(
    (await page.locator('.ordinary li').allInnerTexts()).map((t) => t.replace(/\s+/g, ' ')),
    ['Furniture scuffs, hallway - repaint $175.00', 'Routine carpet cleaning $110.00'],
  );
  await page.reload();
  await ready(page);
  await openExample(page, /Charges that are fair/);
  assert.equal(await page.locator('.ordinary').count(), 0);
  await finish();
});
