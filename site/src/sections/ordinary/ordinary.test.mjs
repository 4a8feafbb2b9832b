// The charges that look like ordinary wear.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { launch, open, openExample, ready, serve } from '../../../../tests/browser/harness.mjs';

let browser, site;
before(async () => {
  [browser, site] = await Promise.all([launch(), serve()]);
});
after(async () => {
  await browser.close();
  await site.close();
});

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
