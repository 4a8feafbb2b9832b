// Pictures of the main states at three widths, in tests/out, to be looked at. With WEARLINE_SCREENS=1 the README's picture is made anew.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { before, test } from 'node:test';
import { browser, open, openExample, openFacts, openRow, OUT, ROOT, row, site, withPage } from './harness.mjs';

withPage();
before(() => fs.mkdirSync(OUT, { recursive: true }));

const states = {
  empty: async () => {},
  result: async (page) => openExample(page, /Carpet and scuffs/),
  twelve: async (page) => openExample(page, /Twelve charges/),
  steps: async (page) => {
    await openExample(page, /Carpet and scuffs/);
    await openRow(page, 1);
    await row(page, 1).locator('.steps').waitFor();
  },
  facts: async (page) => {
    await openExample(page, /Carpet and scuffs/);
    await openFacts(page, 1);
  },
  landlord: async (page) => openExample(page, /landlord before sending/),
};

const hush = async (page) => {
  const close = page.locator('.notice button').last();
  if (await close.count()) await close.click();
};

for (const width of [320, 768, 1280]) {
  test(`pictures at ${width} pixels`, async () => {
    for (const [state, reach] of Object.entries(states)) {
      for (const colorScheme of state === 'steps' ? ['light', 'dark'] : ['light']) {
        const { page, finish } = await open(browser, site.address, { viewport: { width, height: 900 }, colorScheme });
        await reach(page);
        await hush(page);
        const file = path.join(OUT, `${state}-${width}${colorScheme === 'dark' ? '-dark' : ''}.png`);
        await page.screenshot({ path: file, fullPage: true });
        assert.ok(fs.statSync(file).size > 10_000);
        await finish();
      }
    }
  });
}

test('a picture of the page on paper', async () => {
  const { page, finish } = await open(browser, site.address, { viewport: { width: 816, height: 1056 } });
  await openExample(page, /Twelve charges/);
  await page.emulateMedia({ media: 'print' });
  await page.screenshot({ path: path.join(OUT, 'print.png'), fullPage: true });
  fs.writeFileSync(path.join(OUT, 'print.pdf'), await page.pdf({ format: 'Letter', preferCSSPageSize: true }));
  await finish();
});

test('the picture of the README', async () => {
  const { page, finish } = await open(browser, site.address, { viewport: { width: 1280, height: 860 } });
  await openExample(page, /Carpet and scuffs/);
  await hush(page);
  const shot = await page.screenshot();
  const file = path.join(ROOT, 'site/docs/page.png');
  if (process.env.WEARLINE_SCREENS) {
    fs.mkdirSync(path.dirname(file), { recursive: true });
    fs.writeFileSync(file, shot);
  }
  assert.ok(fs.existsSync(file), 'run once with WEARLINE_SCREENS=1');
  await finish();
});
