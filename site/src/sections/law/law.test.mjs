// What a court may add, and the law that was used.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import {
  axe,
  browser,
  changeFacts,
  open,
  openExample,
  ROOT,
  site,
  unfold,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('the law is named with the day it was read, and each rule with its citation', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByText('The law used here: Washington').waitFor();
  await unfold(page, 'law');
  await unfold(page, 'added');
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
  await changeFacts(page);
  await page.getByLabel('State or province of the home').selectOption('US-FL');
  await unfold(page, 'law');
  await page
    .locator('.law')
    .getByText(/second-hand sources/)
    .waitFor();
  await finish();
});

test('every rule of the place can be read, each with its source, in the page’s language', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await unfold(page, 'law');
  const whole = page.locator('.whole-law');
  await whole.getByText('Every rule of this law').click();
  await whole.getByRole('heading', { name: 'Days to keep' }).waitFor();
  const pack = JSON.parse(fs.readFileSync(path.join(ROOT, 'engine/rules/law/US-WA.json'), 'utf8'));
  const rules = Object.entries(pack).filter(
    ([name, all]) => Array.isArray(all) && !['facts', 'events', 'checkThis'].includes(name),
  );
  const shown = await whole.locator('.rules > li').allInnerTexts();
  assert.equal(shown.length, rules.flatMap(([, all]) => all).length);
  for (const rule of rules.flatMap(([, all]) => all)) {
    const text = shown.find((t) => t.includes(rule.text));
    assert.ok(text, rule.text);
    for (const id of rule.source ?? []) assert.ok(text.includes(pack.sources[id].cite) || rule.source.length > 2, id);
  }
  assert.deepEqual(await axe(page), []);
  await page.getByRole('button', { name: 'Español' }).click();
  await whole.getByRole('heading', { name: 'Plazos' }).waitFor();
  const spanish = JSON.parse(fs.readFileSync(path.join(ROOT, 'engine/rules/law-es/US-WA.json'), 'utf8')).rules;
  await whole.getByText(spanish.statement.text).waitFor();
  await finish();
});
