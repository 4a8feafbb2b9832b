// The person an adviser helps: typed once, private, in the list of cases; the blank sheet for paper.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
  browser,
  changeFacts,
  open,
  openMany,
  press,
  site,
  taken,
  unfold,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

/** Two cases open, on the adviser's side. */
async function asAdviser() {
  const opened = await open(browser, site.address);
  await openMany(opened.page, ['answer-in-time', 'little-known']);
  await changeFacts(opened.page);
  await opened.page.getByRole('radio', { name: 'helping a tenant' }).check();
  return opened;
}

async function type(page, label, text) {
  await page.getByLabel(label, { exact: true }).click();
  await page.keyboard.type(text, { delay: 30 });
}

test('what is typed of a client stands in the list and the saved case, and in nothing that is handed out', async () => {
  const { page, finish } = await asAdviser();
  await unfold(page, 'client');
  await type(page, 'Initials or number', 'Q. 17');
  await type(page, 'How to reach them', 'after six, 555-0142');
  await type(page, 'Next contact', '12/2/2026');
  await type(page, 'Private note', 'says the dog did it');
  await page.keyboard.press('Tab');
  assert.equal(await page.getByLabel('Next contact').inputValue(), '12/2/2026');
  await page.locator('.client-case .fold-count', { hasText: 'Q. 17 · contact on Dec 2, 2026' }).waitFor();
  assert.deepEqual(await axe(page), []);
  const held = JSON.parse(await (await taken(page, 'Save')).text());
  assert.equal(held.page.client.note, 'says the dog did it');
  await unfold(page, 'takeaway');
  for (const way of ['One report of everything', 'The days for a calendar', 'The charges as a table']) {
    const button = page.getByRole('button', { name: way });
    if (!(await button.count()) || (await button.isDisabled())) continue;
    assert.doesNotMatch(await (await taken(page, way)).text(), /says the dog|555-0142|Q\. 17/, way);
  }
  assert.doesNotMatch(await (await taken(page, 'Keep as text')).text(), /says the dog|555-0142|Q\. 17/);
  await finish();
});

test('the blank intake sheet prints alone and holds nothing of any case', async () => {
  const { page, finish } = await asAdviser();
  await unfold(page, 'client');
  await type(page, 'Initials or number', 'Q. 17');
  const seen = page.evaluate(
    () =>
      new Promise((done) => {
        window.print = () => done([document.body.dataset.print, document.querySelector('.intake').innerText]);
      }),
  );
  await press(page, 'Print a blank intake sheet');
  const [what, words] = await seen;
  assert.equal(what, 'intake');
  assert.match(words, /Moved out and keys back on/);
  assert.match(words, /only if the client agrees/);
  assert.doesNotMatch(words, /Q\. 17|\$\d/);
  await finish();
});

test('a new case keeps the side', async () => {
  const { page, finish } = await asAdviser();
  await press(page, 'Another case');
  assert.ok(await page.getByRole('radio', { name: 'helping a tenant' }).isChecked());
  await finish();
});
