// What a newcomer sees, and that it goes once there is a case.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, site, typeCharge, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('it says what the page does, for each side, and leaves when the first charge is typed', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByRole('heading', { name: 'Was it fair to keep that money?' }).waitFor();
  await page.getByRole('radio', { name: 'the landlord' }).check();
  await page.getByRole('heading', { name: 'Will your statement stand up?' }).waitFor();
  await typeCharge(page, 1, 'Cleaning', '80');
  assert.equal(await page.locator('.opening').count(), 0);
  await finish();
});
