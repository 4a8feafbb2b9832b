// On paper: the case's own name first, what a person hands over in order, nothing to press, few pages.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, withPage } from './harness.mjs';

withPage();

/** Pages that twelve charges with their letter may take. */
const most = 6;

test('twelve charges with result, days and letter take six pages at most, under the name of the case', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await page.locator('.sheet .paragraph').first().waitFor();
  const pdf = (await page.pdf({ format: 'Letter', preferCSSPageSize: true })).toString('latin1');
  const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  assert.ok(pages >= 1 && pages <= most, `${pages} pages`);
  await page.emulateMedia({ media: 'print' });
  const words = await page.locator('body').innerText();
  const order = ['Twelve charges, Quince Court', 'The charges', 'Days that count', 'Dear [landlord', 'Before you rely on this'];
  const places = order.map((o) => words.indexOf(o));
  assert.ok(places.every((p, i) => p >= 0 && (i === 0 || p > places[i - 1])), places.join());
  // Nothing to press and no way to other parts of the page is left.
  assert.deepEqual(await page.locator('button:visible').allInnerTexts().then((all) => all.filter((t) => !/\n/.test(t) && t.trim() !== '')), []);
  assert.doesNotMatch(words, /All cautions|one file|licenses/);
  await finish();
});
