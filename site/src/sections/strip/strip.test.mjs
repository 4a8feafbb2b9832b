// On a narrow screen the figure stays in view and leads to the result.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, until, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('it shows the sum on a phone and jumps to it; on a wide screen it is not there', async () => {
  const { page, finish } = await open(browser, site.address, {
    viewport: { width: 360, height: 740 },
    reducedMotion: 'reduce',
  });
  await openExample(page, /Carpet and scuffs/);
  const link = page.getByRole('link', { name: /See the result/ });
  const sum = await page.locator('.headline-sum').innerText();
  assert.ok((await link.innerText()).includes(sum));
  await link.click();
  await until(() =>
    page
      .locator('#sums-title')
      .evaluate((t) => t.getBoundingClientRect().top < innerHeight && t.getBoundingClientRect().top >= 0),
  );
  await page.setViewportSize({ width: 1280, height: 900 });
  assert.equal(await link.isVisible(), false);
  await finish();
});
