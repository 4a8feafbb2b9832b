// What a newcomer sees, and that it goes once there is a case.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, site, typeCharge, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('it says what the page does, for each side, and leaves when the first charge is typed', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByRole('heading', { name: 'Was it fair to keep that money?' }).waitFor();
  await page.getByRole('radio', { name: 'the landlord' }).check();
  await page.getByRole('heading', { name: 'Will your statement stand up?' }).waitFor();
  await typeCharge(page, 1, 'Cleaning', '80');
  assert.equal(await page.locator('.opening').count(), 0);
  await finish();
});

test('the first charge is ten stops of the Tab key away at most, on a desktop and on a phone', async () => {
  for (const viewport of [
    { width: 1280, height: 900 },
    { width: 390, height: 844 },
  ]) {
    const { page, finish } = await open(browser, site.address, { viewport });
    const stops = [];
    while (stops.length < 30 && stops.at(-1) !== 'text-0') {
      await page.keyboard.press('Tab');
      stops.push(
        await page.evaluate(
          () => document.activeElement.id || document.activeElement.textContent.trim() || document.activeElement.name,
        ),
      );
    }
    assert.ok(stops.length <= 10, stops.join(' | '));
    await finish();
  }
});
