// A landlord's whole run from an empty page, typed key by key: what is done is counted, lateness comes first, and nothing is said in a
// tenant's words.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openRow, OUT, row, site, still, until, withPage } from './harness.mjs';
import fs from 'node:fs';
import path from 'node:path';

withPage();

const charges = [
  ['Carpet in the living room, burn', '640', '2022'], ['Hole in bedroom door', '180', '2019'], ['Oven cleaning', '120', '2018'], ['Broken blinds', '96', '2024'],
];
/** What a tenant is told or asked; a landlord is not. */
const tenantsWords = /Ask for (?:the|a) |came to you|your landlord|I dispute|you were charged|Write to the landlord|come back to you|due to you|It still works|Did a written statement come/;

test('four charges with age, state, bill and photo up to the statement take 28 actions at most', async () => {
  const { page, finish } = await open(browser, site.address);
  let actions = 0;
  const act = async (done) => {
    actions++;
    await done;
  };
  const type = (text) => page.keyboard.type(text, { delay: 15 });
  await act(page.getByRole('radio', { name: 'the landlord' }).check());
  await act(page.locator('#place').selectOption('US-WA'));
  await act(page.getByRole('textbox', { name: 'Moved out' }).click());
  await type('10/20/2026');
  await act(page.getByLabel('Deposit', { exact: true }).click());
  await type('1900');
  await page.locator('#text-0').click();
  for (const [text, amount] of charges) {
    await act(type(text));
    await page.keyboard.press('Enter');
    await act(type(amount));
    await page.keyboard.press('Enter');
  }
  await act(page.getByRole('button', { name: 'The same day as the move' }).click());
  await still(page);
  assert.match(await page.locator('.next-act').innerText(), /late/i);

  for (const paper of ['Bill', 'Photo']) await act(page.locator('.charges').getByRole('button', { name: paper, exact: true }).click());
  for (const [i, [, , year]] of charges.entries()) {
    await act(row(page, i + 1).getByRole('textbox', { name: 'Year put in' }).click());
    await type(year);
  }
  for (const [i] of charges.entries()) {
    await act(openRow(page, i + 1));
    const asked = row(page, i + 1).locator('.row-question');
    await asked.locator('h3').waitFor();
    const field = asked.locator('select').first();
    await act((await field.count()) ? field.selectOption('tenant') : asked.locator('.finding input').first().check());
    await still(page);
  }
  await act(page.locator('.outlook').getByRole('link', { name: 'Letter' }).click());
  await page.locator('.sheet .paragraph').first().waitFor();
  fs.mkdirSync(OUT, { recursive: true });
  fs.writeFileSync(path.join(OUT, 'landlord.txt'), `A landlord's statement of four charges: ${actions} actions\n`);
  assert.ok(actions <= 28, `${actions} actions`);
  await until(async () => /late/i.test(await page.locator('.next').innerText()));
  for (const part of ['.outlook', '.charges', '.unknowns', '.letter', '.days'])
    for (const text of await page.locator(part).allInnerTexts()) assert.doesNotMatch(text, tenantsWords, part);
  await finish();
});
