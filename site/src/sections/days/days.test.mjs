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
  await first.getByText('5 days left.').waitFor();
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
  await page
    .locator('.days .fold > summary')
    .getByText(/All days in order/)
    .click();
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

test('what a fact is missing for is folded, and a day that must not come too early is no last day', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  assert.equal(await page.locator('.days > .days-list .day[data-state="undetermined"]').count(), 0);
  const shown = await page.locator('.days > .days-list .day').allInnerTexts();
  assert.ok(shown.length >= 1 && shown.every((t) => !/Not before/.test(t)), shown.join());
  await page
    .locator('.days .fold > summary')
    .getByText(/A fact is missing/)
    .click();
  assert.ok(await page.locator('.days .fold .day[data-state="undetermined"]').first().isVisible());
  await finish();
});
