// Who is looking, and which law applies.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, changeFacts, open, openExample, site, withPage } from '../../../../tests/browser/harness.mjs';

withPage();

test('the three sides see the same facts in their own words', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByText('more should come back to you').first().waitFor();
  await changeFacts(page);
  await page.getByRole('radio', { name: 'helping a tenant' }).check();
  await page.getByText('more should go back to the tenant').first().waitFor();
  await page.getByText('Has any of the deposit come back?').waitFor();
  await page.getByRole('radio', { name: 'the landlord' }).check();
  await page.getByText('Has any of it been paid back?').waitFor();
  assert.equal(await page.getByText('Did a written statement come?').count(), 0);
  await page.getByText(/^\d charges: drop/).waitFor();
  await finish();
});

test('known, the facts stand in one line; they open to be changed and fold again, and the cursor goes along', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const line = page.locator('.standing-line');
  assert.match(
    (await line.innerText()).replace(/\s+/g, ' '),
    /the tenant · Washington · out Jul 31, 2026 · \$1,850\.00 held · \$260\.00 back/,
  );
  await page.getByRole('button', { name: /^Change/ }).click();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'place');
  await page.getByLabel('Paid back so far').fill('300');
  await page.getByRole('button', { name: 'Done: fold this up' }).click();
  await line.getByText('$300.00 back').waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'facts-change');
  await finish();
});

test('nothing that starts no clock of the place is asked; what does is', async () => {
  const { page, finish } = await open(browser, site.address);
  const place = page.getByLabel('State or province of the home');
  await place.selectOption('US-TX');
  await page.getByLabel('Deposit', { exact: true }).fill('900');
  await page.locator('.standing').getByRole('textbox', { name: 'New address given' }).waitFor();
  assert.equal(await page.locator('.standing').getByRole('textbox', { name: 'Lease ended' }).count(), 0);
  await place.selectOption('US-WA');
  await page.locator('.standing').getByRole('textbox', { name: 'Lease ended' }).waitFor();
  assert.equal(await page.locator('.standing').getByRole('textbox', { name: 'New address given' }).count(), 0);
  await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
  await page.getByRole('button', { name: 'The same day as the move' }).click();
  assert.equal(await page.locator('.standing').getByRole('textbox', { name: 'Lease ended' }).inputValue(), '9/30/2026');
  await finish();
});

test('a place brings its law, and its towns where their rules differ', async () => {
  const { page, finish } = await open(browser, site.address);
  const place = page.getByLabel('State or province of the home');
  assert.equal(await page.getByLabel('City or county').count(), 0);
  await place.selectOption('US-IL');
  await page.getByLabel('City or county').waitFor();
  const towns = await page.getByLabel('City or county').evaluate((box) => [...box.list.options].map((o) => o.value));
  assert.ok(towns.includes('Chicago'), towns.join());
  await place.selectOption('');
  await page.getByLabel('Deposit', { exact: true }).fill('900');
  await page.getByText('Choose the state or province above to see its days.').waitFor();
  await finish();
});

test('each label of the facts stands right over its own box, at every width', async () => {
  for (const width of [390, 768, 1024, 1280]) {
    const { page, finish } = await open(browser, site.address, { viewport: { width, height: 900 } });
    await page.getByRole('radio', { name: 'the landlord' }).check();
    await page.getByLabel('State or province of the home').selectOption('US-CO');
    await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
    await page.getByRole('radio', { name: 'Some or all' }).check();
    await page.locator('.standing-same').waitFor();
    const gaps = await page.locator('.standing .field').evaluateAll((fields) =>
      fields.map((f) => {
        const [label, box] = ['label, .field-asks', '.entry, .one-of'].map((which) =>
          f.querySelector(which)?.getBoundingClientRect(),
        );
        return label && box && !f.querySelector('legend')
          ? { what: f.textContent.trim().slice(0, 20), gap: Math.round(box.top - label.bottom) }
          : null;
      }),
    );
    const told = gaps.filter(Boolean);
    assert.ok(told.length >= 7, `${told.length} fields`);
    assert.deepEqual(
      told.filter(({ gap }) => gap < 0 || gap > 60),
      [],
      `at ${width} pixels`,
    );
    await finish();
  }
});

test('a city or county with rules of its own says how to tell that the home is inside; another says that none are known', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('State or province of the home').selectOption('US-IL');
  const town = page.getByLabel('City or county');
  const help = page.locator('.standing-town');
  await help.getByText('pick yours if it is in the list').waitFor();
  await town.pressSequentially('Oak Park', { delay: 30 });
  await help.getByText('Oak Park').waitFor();
  await town.fill('');
  await town.pressSequentially('Peoria', { delay: 30 });
  await help.getByText('Those of the state are counted').waitFor();
  await finish();
});
