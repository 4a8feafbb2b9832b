// What a court may add, and the law that was used.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { launch, open, openExample, serve } from '../../../../tests/browser/harness.mjs';

let browser, site;
before(async () => {
  [browser, site] = await Promise.all([launch(), serve()]);
});
after(async () => {
  await browser.close();
  await site.close();
});

test('the law is named with the day it was read, and each rule with its citation', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByText('The law used here: Washington').waitFor();
  await page
    .locator('.law')
    .getByText(/Last read against its sources on/)
    .waitFor();
  const rules = page.locator('.added .rules > li');
  assert.ok((await rules.count()) >= 1);
  for (const rule of await rules.all()) assert.match(await rule.locator('.sources').first().innerText(), /RCW/);
  await finish();
});

test('a place whose law was read second-hand says so', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByLabel('State or province of the home').selectOption('US-FL');
  await page
    .locator('.law')
    .getByText(/second-hand sources/)
    .waitFor();
  await finish();
});
