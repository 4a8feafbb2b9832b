// The foot: privacy, the one file to keep.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { launch, open, serve } from '../../../../tests/browser/harness.mjs';

let browser, site;
before(async () => {
  [browser, site] = await Promise.all([launch(), serve()]);
});
after(async () => {
  await browser.close();
  await site.close();
});

test('the one file is offered and is there', async () => {
  const { page, finish } = await open(browser, site.address);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep this page as one file' }).click(),
  ]);
  assert.equal(download.suggestedFilename(), 'wearline.html');
  await finish();
});
