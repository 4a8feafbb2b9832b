// The tools of the case: keeping on the device, and clearing.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  browser,
  keptAmount,
  open,
  openExample,
  press,
  ready,
  site,
  until,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('nothing is kept unless asked; kept cases come back; clear all takes them away', async () => {
  const { page, finish } = await open(browser, site.address);
  page.on('dialog', (d) => d.accept());
  await openExample(page, /Little is known/);
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('.headline').count(), 0);
  await openExample(page, /Little is known/);
  await press(page, 'Keep on this device');
  await page
    .getByRole('status')
    .getByText(/stay in this browser/)
    .waitFor();
  await page.locator('#amount-0').fill('781.25');
  await until(async () => (await keptAmount(page)) === '781.25');
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('#amount-0').inputValue(), '781.25');
  await page.locator('.headline').waitFor();
  await press(page, 'Clear all');
  await page.reload();
  await ready(page);
  assert.equal(await page.locator('.headline').count(), 0);
  await finish();
});
