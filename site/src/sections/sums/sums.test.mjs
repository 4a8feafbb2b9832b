// What it comes to: the headline by the facts, the parts adding up.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  browser,
  cameBack,
  open,
  openExample,
  site,
  typeCharge,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

const cents = (text) => Number(text.replace(/[^\d]/g, '')) * (text.includes('\u2212') ? -1 : 1);

test('without a deposit only the fair charges are named; with one, the refund', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, 'Small nail holes', '90');
  await page.locator('.headline').getByText('$90 of $90 does not look fair to charge').waitFor();
  await page.getByText('Enter the deposit to see what should come back.').waitFor();
  await page.getByLabel('Deposit', { exact: true }).fill('500');
  // Nobody has said what came back: no sum is called paid, and none still due.
  await page.locator('.headline').getByText('should come back to you in all').waitFor();
  assert.match(await page.locator('.sum', { hasText: 'Paid back' }).innerText(), /not known/);
  assert.equal(await page.getByText('Still to be paid back').count(), 0);
  await cameBack(page, '410');
  await page.locator('.headline').getByText('more may be due to you').waitFor();
  await page.getByLabel('Paid back so far').fill('500');
  await page
    .locator('.headline')
    .getByText(/The refund looks right/)
    .waitFor();
  await finish();
});

test('the parts of the fair refund add up to it', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  const refund = page
    .locator('.sum')
    .filter({ has: page.getByText('Fair refund', { exact: true }) })
    .first();
  await refund.locator('summary').click();
  const parts = await refund.locator('.parts-list .figure').allInnerTexts();
  const sum = parts.reduce((total, part) => total + cents(part), 0);
  assert.equal(sum, cents(await refund.locator('.sum-figure .figure').innerText()));
  await finish();
});

test('unpaid rent that is more than the deposit is said to be owed by the tenant', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Charges that are fair/);
  await page
    .locator('.headline')
    .getByText(/may still be owed by you/)
    .waitFor();
  await finish();
});
