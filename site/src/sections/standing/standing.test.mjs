// Who is looking, and which law applies.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('the three sides see the same facts in their own words and order', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const first = () => page.locator('.results > section h2').first().innerText();
  assert.equal(await first(), 'What it comes to');
  await page.getByText('more should come back to you').waitFor();
  await page.getByRole('radio', { name: 'helping a tenant' }).check();
  await page.getByText('more should go back to the tenant').waitFor();
  await page.getByRole('radio', { name: 'the landlord' }).check();
  assert.equal(await first(), 'Days that count');
  await finish();
});

test('a place brings its law, and its towns where their rules differ', async () => {
  const { page, finish } = await open(browser, site.address);
  const place = page.getByLabel('State or province of the home');
  assert.equal(await page.getByLabel('City or county').count(), 0);
  await place.selectOption('US-IL');
  await page.getByText('The law used here: Illinois').waitFor();
  const towns = await page.getByLabel('City or county').evaluate((box) => [...box.list.options].map((o) => o.value));
  assert.ok(towns.includes('Chicago'), towns.join());
  await place.selectOption('');
  await page.getByText('Choose the state or province above to see its days.').waitFor();
  await finish();
});
