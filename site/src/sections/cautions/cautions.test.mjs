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

test('where to ask for help in the place stands beneath the cautions, each with its address', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const help = page.locator('.cautions-help');
  await help.locator('summary', { hasText: 'Where to ask for help' }).click();
  const entries = await help.locator('li').all();
  assert.ok(entries.length >= 2);
  for (const entry of entries) assert.match((await entry.locator('a').getAttribute('href')) ?? '', /^https:\/\//);
  await finish();
});
