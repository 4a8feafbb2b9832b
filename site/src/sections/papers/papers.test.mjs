// What the statement lacks: papers the law wants, and sums that do not add up.
import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import { browser, open, openExample, site, until, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

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
