// What came with the statement: a tick list; what is missing is said once it is known.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, unfold, until, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('papers are ticked as come or not, what is missing follows, and each consequence stands once', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await unfold(page, 'papers');
  await page.locator('.papers-list li').first().waitFor();
  const lacks = () => page.locator('.papers-list li').count();
  const before = await lacks();
  const receipts = page.locator('.papers').getByRole('group', { name: /receipts/i });
  assert.ok(await receipts.getByRole('radio', { name: 'No', exact: true }).isChecked());
  await receipts.getByRole('radio', { name: 'Yes' }).check();
  await until(async () => (await lacks()) < before);
  // Nobody has answered the rest yet: nothing of it is called missing.
  assert.equal(
    await page
      .locator('.papers')
      .getByText(/Check whether/)
      .count(),
    0,
  );
  const long = (await page.locator('.papers').innerText()).match(/[A-Z][^.]{40,}\./g) ?? [];
  assert.deepEqual(
    long.filter((s, i) => long.indexOf(s) !== i),
    [],
  );
  await finish();
});
