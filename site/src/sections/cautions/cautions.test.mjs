// The cautions: always there, on every side, and on paper.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, changeFacts, open, openExample, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('they stand with every result, whatever the side, and are printed', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await changeFacts(page);
  for (const side of ['the tenant', 'helping a tenant', 'the landlord']) {
    await page.getByRole('radio', { name: side }).check();
    assert.ok((await page.locator('.cautions li').count()) >= 4, side);
    await page
      .locator('.cautions')
      .getByText(/not legal advice/)
      .waitFor();
  }
  await page.emulateMedia({ media: 'print' });
  assert.ok(await page.locator('.cautions li').first().isVisible());
  await finish();
});
