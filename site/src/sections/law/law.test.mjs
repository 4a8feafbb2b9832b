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
  taken,
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
  await rules.first().waitFor();
  for (const rule of await rules.all()) assert.match(await rule.locator('.sources').first().innerText(), /RCW/);
  await finish();
});

test('what the case is silent on and was taken as usual is said, on the page and in the report', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await unfold(page, 'law');
  const said = page.locator('.law .law-assumed');
  await said.locator('summary').click();
  const items = said.locator('li');
  await items.first().waitFor();
  const texts = await items.allInnerTexts();
  assert.ok(texts.length > 0);
  for (const text of texts) assert.match(text, /taken as|was used/);
  await page.locator('.sheet .paragraph').first().waitFor();
  await unfold(page, 'takeaway');
  const report = await (await taken(page, 'Report')).text();
  for (const text of texts) assert.ok(report.includes(text), text);
  await finish();
});

const packOf = (code) => JSON.parse(fs.readFileSync(path.join(ROOT, 'engine/rules/law', `${code}.json`), 'utf8'));
const places = fs.readdirSync(path.join(ROOT, 'engine/rules/law')).flatMap((f) => /^(..-.+)\.json$/.exec(f)?.[1] ?? []);

test('a place whose law was read second-hand says so, and no other', async () => {
  const weak = places.find((code) => packOf(code).weak);
  const read = places.find((code) => !packOf(code).weak);
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await changeFacts(page);
  const said = page.locator('.law').getByText(/second-hand sources/);
  await page.getByLabel('State or province of the home').selectOption(read);
  await page.getByText(`The law used here: ${packOf(read).name}`).waitFor();
  await unfold(page, 'law');
  assert.equal(await said.count(), 0);
  await page.getByLabel('State or province of the home').selectOption(weak);
  await page.getByText(`The law used here: ${packOf(weak).name}`).waitFor();
  await said.waitFor();
  await finish();
});

test('every rule of the place can be read, each with its source, in the page’s language', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await unfold(page, 'law');
  const whole = page.locator('.whole-law');
  await whole.getByText('Every rule of this law').click();
  await whole.getByRole('heading', { name: 'Days to keep' }).waitFor();
  const pack = packOf('US-WA');
  const rules = Object.entries(pack).filter(
    ([name, all]) => Array.isArray(all) && !['facts', 'events', 'checkThis', 'help'].includes(name),
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

test('cities and counties with rules of their own are listed with how to tell; one press takes their rules in', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await unfold(page, 'law');
  const list = page.locator('.law-localities');
  await list.locator('summary').click();
  const seattle = list.locator('li', { hasText: 'Seattle' }).first();
  await seattle.getByRole('button', { name: /^The home is here/ }).click();
  await list.locator('li', { hasText: 'Used here' }).waitFor();
  assert.equal(await list.locator('li', { hasText: 'Used here' }).count(), 1);
  await page.locator('.standing-line', { hasText: 'Seattle' }).waitFor();
  await finish();
});
