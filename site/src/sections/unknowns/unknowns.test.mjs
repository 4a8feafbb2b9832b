// The open questions: the one that moves the most first, answered on the spot.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, until, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('they are ranked by money, and an answer given here narrows the result', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Little is known/);
  const swings = (await page.locator('.swing').allInnerTexts()).map((s) => Number(s.replace(/[^\d.]/g, '')));
  assert.ok(swings.length >= 3);
  assert.deepEqual(
    swings,
    [...swings].sort((a, b) => b - a),
  );
  const range = () => page.locator('.headline-range').innerText();
  const before = await range();
  const first = page.locator('.question').first();
  await first.getByRole('textbox').fill('2012');
  await until(async () => (await range()) !== before);
  await finish();
});
