// The facts that hold for every charge.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, press, site, unfold, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('dates are typed as people write them and read back in words', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('Deposit', { exact: true }).fill('900');
  await unfold(page, 'tenancy');
  const box = page.getByRole('textbox', { name: 'Moved in' });
  for (const [typed, read] of [
    ['8/1/2022', 'Monday, August 1, 2022'],
    ['Aug 1, 2022', 'Monday, August 1, 2022'],
    ['1 august 2022', 'Monday, August 1, 2022'],
    ['31/7/2022', 'Sunday, July 31, 2022'],
    ['June 2019', 'Some time in June 2019'],
    ['about 2019', 'About 2019, a year more or less'],
    ['before 2020', '2019 or before'],
    ['by 2020', '2020 or before'],
    ['after June 2019', 'July 2019 or later'],
    ['2019 to 2021', 'Between 2019 and 2021'],
    ['2019/2021', 'Between 2019 and 2021'],
  ]) {
    await box.fill(typed);
    assert.equal(await page.locator('#f-tenancy-began-read').innerText(), read, typed);
  }
  await box.fill('2/30/2022');
  await box.blur();
  await page
    .locator('#f-tenancy-began-fault')
    .getByText(/Write a date such as/)
    .waitFor();
  assert.equal(await box.getAttribute('aria-invalid'), 'true');
  await finish();
});

test('a second deposit counts with the first', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await unfold(page, 'tenancy');
  await press(page, 'There was another deposit');
  await page.locator('#f-deposits-1-amount').fill('300');
  await page.locator('.sum', { hasText: 'Fair refund' }).first().locator('summary').click();
  await page.locator('.sum[open]').getByText('$2,150.00').waitFor();
  await press(page, 'Take the last deposit out');
  await page.locator('.sum[open]').getByText('$1,850.00').waitFor();
  await finish();
});
