// The foot: privacy, the one file to keep.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('the one file is offered and is there', async () => {
  const { page, finish } = await open(browser, site.address);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep this page as one file' }).click(),
  ]);
  assert.equal(download.suggestedFilename(), 'wearline.html');
  await finish();
});
