// On a narrow screen: four places and the line that matters; on a desk the same links stand beside the result.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, open, openExample, site, typeCharge, until, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

const phone = { viewport: { width: 360, height: 740 }, reducedMotion: 'reduce' };
const inView = (page, id) =>
  page
    .locator(`#${id}`)
    .evaluate((t) => t.getBoundingClientRect().top < innerHeight && t.getBoundingClientRect().top >= 0);

test('each place is one tap away, the way back works, and on paper it is not there', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await openExample(page, /Twelve charges/);
  await page.locator('.strip').getByRole('link', { name: 'Letter' }).waitFor();
  for (const [name, id] of [
    ['Letter', 'letter'],
    ['Days', 'days'],
    ['Charges', 'charges-title'],
    ['Result', 'result'],
  ]) {
    await page.locator('.strip').getByRole('link', { name }).click();
    await until(() => inView(page, id));
    await until(async () => (await page.locator('.strip [aria-current]').innerText()).startsWith(name));
  }
  await page.goBack();
  await until(() => inView(page, 'charges-title'));
  await page.emulateMedia({ media: 'print' });
  assert.equal(await page.locator('.strip').isVisible(), false);
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize({ width: 1280, height: 900 });
  assert.equal(await page.locator('.strip').isVisible(), false);
  assert.ok(await page.locator('.desk-places').getByRole('link', { name: 'Letter' }).isVisible());
  await finish();
});

test('a day of one’s own stands above the places, else the money', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await openExample(page, /due soon/);
  assert.match(
    await page.locator('.strip-line').innerText(),
    /Answer the statement: by Monday, November 30\. 5 days left\./,
  );
  await page.getByRole('button', { name: 'Case', exact: true }).click();
  page.on('dialog', (d) => d.accept());
  await page.getByRole('button', { name: 'Clear all' }).click();
  await openExample(page, /Carpet and scuffs/);
  const sum = await page.locator('.headline-sum').innerText();
  assert.ok((await page.locator('.strip-line').innerText()).includes(sum));
  await finish();
});

test('the line above the places is read whole, in both languages, on the narrowest phone', async () => {
  for (const locale of ['en-US', 'es-MX']) {
    const { page, finish } = await open(browser, site.address, {
      ...phone,
      viewport: { width: 320, height: 568 },
      locale,
    });
    await typeCharge(page, 1, 'Repaint living room, scuffs', '400');
    const line = page.locator('.strip-line');
    await line.waitFor();
    const { cut, height } = await line.evaluate((e) => ({
      cut: e.scrollWidth > e.clientWidth || e.scrollHeight > e.clientHeight,
      height: e.closest('.strip').getBoundingClientRect().height,
    }));
    assert.ok(!cut, await line.innerText());
    assert.ok(height < 115, `${height} px`);
    await finish();
  }
});
