// The days that count: what the tenant must not miss first, then the picture, then the rest.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('a day that costs the tenant a right stands first, with how far it is and how it was counted', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /due soon/);
  const first = page.locator('.day').first();
  assert.equal(await first.getAttribute('data-loud'), 'yes');
  await first.getByText('Answer the statement').first().waitFor();
  await first.getByText('Monday, November 30, 2026').first().waitFor();
  await first.getByText('5 days from now.').waitFor();
  await first.locator('summary').click();
  await first.getByText(/7 days after November 23, 2026/).waitFor();
  await first
    .locator('.sources')
    .getByText(/MCL 554\.612/)
    .first()
    .waitFor();
  await finish();
});

test('the picture names every dated duty and today, in order', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /due soon/);
  const stops = await page.locator('.timeline li').allInnerTexts();
  assert.ok(stops.some((s) => s.startsWith('Today')));
  const days = stops.map((s) => /[A-Z][a-z]{2} \d{1,2}, \d{4}/.exec(s)?.[0]).map((s) => new Date(s).getTime());
  assert.ok(days.length >= 6);
  assert.deepEqual(
    days,
    [...days].sort((a, b) => a - b),
  );
  await finish();
});
