// What the statement lacks: papers the law wants, and sums that do not add up.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { launch, open, openExample, serve, until } from '../../../../tests/browser/harness.mjs';

let browser, site;
before(async () => {
  [browser, site] = await Promise.all([launch(), serve()]);
});
after(async () => {
  await browser.close();
  await site.close();
});

test('a total that is not the sum of the charges is said', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  const before = await page.locator('.papers-list li').allInnerTexts();
  await page.locator('#amount-0').fill('1000');
  await until(async () =>
    (await page.locator('.papers-list li').allInnerTexts()).some(
      (t) => !before.includes(t) && /3,134\.00|3,284\.00/.test(t),
    ),
  );
  await finish();
});
