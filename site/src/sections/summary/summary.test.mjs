// The page for the client: what was found, what to do by when, what to bring, whom to ask; printed alone.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
  browser,
  changeFacts,
  open,
  openExample,
  press,
  site,
  unfold,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('one page in plain words, printed alone, with nothing private on it', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /due soon/);
  assert.equal(await page.locator('.summary').count(), 0, 'it is the adviser’s');
  await changeFacts(page);
  await page.getByRole('radio', { name: 'helping a tenant' }).check();
  await unfold(page, 'client');
  await page.getByLabel('Private note').fill('says the dog did it');
  await unfold(page, 'summary');
  const words = await page.locator('.summary-page').innerText();
  for (const heading of ['What we found', 'What to do, and by when', 'What to bring next time', 'Where to ask'])
    assert.ok(words.includes(heading), heading);
  // The day that costs a right, with what is lost.
  assert.match(words, /November 30/);
  assert.match(words, /Information, not legal advice/);
  assert.doesNotMatch(words, /the dog/);
  assert.ok((await page.locator('.summary-page .help-list li').count()) >= 1);
  assert.deepEqual(await axe(page), []);
  await page.evaluate(() => (window.print = () => undefined));
  await press(page, 'Print this page');
  await page.emulateMedia({ media: 'print' });
  const paper = await page.locator('body').innerText();
  assert.match(paper, /What we found/);
  assert.doesNotMatch(paper, /Days that count|A letter|the dog/);
  await finish();
});
