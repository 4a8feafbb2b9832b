// The ledger: typing, faults, steps, moving and taking back.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  browser,
  figure,
  open,
  openExample,
  row,
  site,
  still,
  taken,
  typeCharge,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('each keystroke is answered, and a half-typed value takes only itself away', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const before = await page.locator('.headline-sum').innerText();
  await page.locator('#amount-1').fill('17x');
  await page
    .locator('.left-out')
    .getByText(/Charge 2:.*Write a sum/)
    .waitFor();
  assert.equal(await page.locator('#amount-1').getAttribute('aria-invalid'), 'true');
  assert.notEqual(await figure(page, 1), '');
  await page.locator('#amount-1').fill('175');
  await still(page);
  assert.equal(await page.locator('.left-out').count(), 0);
  assert.equal(await page.locator('.headline-sum').innerText(), before);
  await page.getByRole('textbox', { name: 'Moved out' }).fill('2026-02-30');
  await page
    .locator('.left-out')
    .getByText(/Write a date/)
    .waitFor();
  await finish();
});

test('every figure opens to its parts, and each step names its source', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await row(page, 1).locator('.charge-fair').click();
  const steps = row(page, 1).locator('.step');
  assert.ok((await steps.count()) >= 3);
  for (const step of await steps.all())
    assert.notEqual((await step.locator('.sources').first().innerText()).trim(), '');
  await page
    .locator('.sum')
    .filter({ has: page.getByText('Fair charges', { exact: true }) })
    .locator('summary')
    .click();
  const parts = await page.locator('.sum[open] .parts-list .figure').allInnerTexts();
  assert.equal(parts.length, 4);
  await finish();
});

test('markup in a description is shown as text', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, '<img src=x onerror=alert(1)> <b>bold</b>', '10');
  await page.locator('.sum', { hasText: 'Charged in all' }).locator('summary').click();
  assert.equal(
    await page.locator('.parts-list li').first().locator('span').first().innerText(),
    '<img src=x onerror=alert(1)> <b>bold</b>',
  );
  assert.equal(await page.locator('main img, main b').count(), 0);
  await finish();
});

test('lines are copied, moved and taken out, and every change can be taken back', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const texts = () =>
    page.locator('.charge:not([data-empty]) .charge-text').evaluateAll((all) => all.map((t) => t.value.slice(0, 9)));
  const start = await texts();
  await row(page, 2).getByRole('button', { name: /known/i }).click();
  await row(page, 2).getByRole('button', { name: 'Move up' }).click();
  assert.deepEqual(await texts(), [start[1], start[0], start[2], start[3]]);
  await row(page, 1).getByRole('button', { name: 'Copy this charge' }).click();
  assert.equal((await texts()).length, 5);
  await row(page, 1).getByRole('button', { name: 'Take it out' }).click();
  assert.equal((await texts()).length, 4);
  const status = page.getByRole('status');
  await status.getByText(/Taken out: Furniture scuffs/).waitFor();
  await status.getByRole('button', { name: 'Undo' }).click();
  for (let i = 0; i < 2; i++) await page.getByRole('button', { name: 'Undo' }).first().click();
  assert.deepEqual(await texts(), start);
  await page.getByRole('button', { name: 'Redo' }).click();
  assert.deepEqual(await texts(), [start[1], start[0], start[2], start[3]]);
  await finish();
});
