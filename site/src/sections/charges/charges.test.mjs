// The ledger: typing, faults, steps, moving and taking back.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axe,
  browser,
  changeFacts,
  figure,
  open,
  openExample,
  openFacts,
  openRow,
  press,
  row,
  site,
  still,
  taken,
  typeCharge,
  until,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('each keystroke is answered, and a half-typed value takes only itself away', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const before = await page.locator('.headline-sum').innerText();
  await page.locator('#amount-1').fill('17x');
  await still(page);
  // Nobody is corrected in the middle of a word.
  assert.equal(await page.locator('.left-out, .fault').count(), 0);
  await page.locator('#amount-1').blur();
  await page
    .locator('.left-out')
    .getByText(/Charge 2:.*Write a sum/)
    .waitFor();
  assert.equal(await page.locator('#amount-1').getAttribute('aria-invalid'), 'true');
  assert.notEqual(await figure(page, 1), '');
  await page.locator('#amount-1').fill('175');
  await still(page);
  assert.equal(await page.locator('.left-out').count(), 0);
  assert.equal(await page.locator('.headline-sum').innerText(), before);
  await changeFacts(page);
  await page.getByRole('textbox', { name: 'Moved out' }).fill('2026-02-30');
  await page.getByRole('textbox', { name: 'Moved out' }).blur();
  await page
    .locator('.left-out')
    .getByText(/Moved out: Write a date/)
    .waitFor();
  // The way to what could not be read is a link.
  await page.locator('.left-out').getByRole('link', { name: 'Moved out' }).click();
  assert.equal(await page.evaluate(() => location.hash), '#f-tenancy-possessionReturned');
  await finish();
});

test('every figure opens to its parts, and each step names its source', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await openRow(page, 1);
  const steps = row(page, 1).locator('.step');
  assert.ok((await steps.count()) >= 3);
  for (const step of await steps.all())
    assert.notEqual((await step.locator('.sources').first().innerText()).trim(), '');
  await row(page, 1)
    .locator('.alike', { hasText: /disputes .*They are examples, not law\./ })
    .waitFor();
  await page
    .locator('.sum')
    .filter({ has: page.getByText('Fair charges', { exact: true }) })
    .locator('summary')
    .click();
  const parts = await page.locator('.sum[open] .parts-list .figure').allInnerTexts();
  assert.equal(parts.length, 4);
  await finish();
});

test('markup in a description is shown as text', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, '<img src=x onerror=alert(1)> <b>bold</b>', '10');
  await page.locator('.sum', { hasText: 'Charged in all' }).locator('summary').click();
  assert.equal(
    await page.locator('.parts-list li').first().locator('span').first().innerText(),
    '<img src=x onerror=alert(1)> <b>bold</b>',
  );
  assert.equal(await page.locator('main img, main b').count(), 0);
  await finish();
});

test('lines are copied, moved and taken out, and every change can be taken back', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const texts = () =>
    page.locator('.charge:not([data-empty]) .charge-text').evaluateAll((all) => all.map((t) => t.value.slice(0, 9)));
  const start = await texts();
  await openRow(page, 2);
  await row(page, 2)
    .getByRole('button', { name: /^Move up/ })
    .click();
  assert.deepEqual(await texts(), [start[1], start[0], start[2], start[3]]);
  await row(page, 1)
    .getByRole('button', { name: /^Copy this charge/ })
    .click();
  assert.equal((await texts()).length, 5);
  await openRow(page, 1);
  await row(page, 1)
    .getByRole('button', { name: /^Take it out/ })
    .click();
  assert.equal((await texts()).length, 4);
  // The cursor goes to the charge that took its place.
  assert.equal(await page.evaluate(() => document.activeElement.id), 'text-0');
  const status = page.getByRole('status');
  await status.getByText(/Taken out: Furniture scuffs/).waitFor();
  await status.getByRole('button', { name: 'Undo' }).click();
  for (let i = 0; i < 2; i++) await page.getByRole('button', { name: 'Undo' }).first().click();
  assert.deepEqual(await texts(), start);
  await page.getByRole('button', { name: 'Redo' }).click();
  assert.deepEqual(await texts(), [start[1], start[0], start[2], start[3]]);
  await finish();
});

test('a closed row says what follows for the money and why, in one line; one row lies open at a time', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  const said = await page
    .locator('.charge-verdict')
    .evaluateAll((all) =>
      all.map((v) => [v.querySelector('strong').textContent, v.querySelector('.charge-why').textContent]),
    );
  assert.equal(said.length, 12);
  for (const [verdict, why] of said) {
    assert.match(verdict, /^(Fair|Partly fair|Ask first|Not fair: .+|Nothing left to charge: .+)$/);
    assert.ok(why.length > 10, verdict);
    assert.doesNotMatch(why, /\(line \d/);
  }
  assert.ok(said.some(([v]) => v === 'Nothing left to charge: older than the 3 years such things last'));
  await openRow(page, 1);
  await openRow(page, 3);
  assert.equal(await page.locator('.charge-open:visible').count(), 1);
  await finish();
});

test('each heap of the money shows its charges alone, and all are shown again', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  const shown = () => page.locator('.charge:not([data-empty])').count();
  let sum = 0;
  for (const heap of ['not-fair', 'ask']) {
    await page.locator(`.heap[data-heap=${heap}]`).click();
    const outcomes = await page
      .locator('.charge:not([data-empty])')
      .evaluateAll((all) => all.map((c) => c.dataset.outcome));
    assert.deepEqual([...new Set(outcomes)], [heap]);
    sum += outcomes.length;
  }
  assert.equal(sum, 12);
  await page.getByRole('button', { name: 'Show all charges' }).click();
  assert.equal(await shown(), 12);
  await finish();
});

test('a thing read from the words is filled in, its faults stand at once, and one of them decides', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, 'Carpet', '400');
  await row(page, 1).getByText('Ask first').waitFor();
  await openRow(page, 1);
  await row(page, 1)
    .getByText(/Read as Carpet/)
    .waitFor();
  const group = row(page, 1).getByRole('group', { name: 'What was wrong with it?' });
  await group
    .getByRole('radio', { name: /^Worn|^Wear|^Traffic|^Flattened|^Matted/ })
    .first()
    .check();
  await row(page, 1)
    .getByText(/^Not fair: ordinary wear/)
    .waitFor();
  // The list stays, to be changed, and the cursor with it.
  assert.ok(await group.getByRole('radio', { checked: true }).evaluate((r) => r === document.activeElement));
  await openFacts(page, 1);
  assert.equal(await row(page, 1).getByRole('combobox', { name: 'Which thing is it about?' }).inputValue(), 'Carpet');
  await finish();
});

test('a total that is not the sum of the charges is said with the charges', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await page.locator('.charges-audit > summary').click();
  const before = await page.locator('.charges-audit li').allInnerTexts();
  await page.locator('#amount-0').fill('1000');
  await until(async () =>
    (await page.locator('.charges-audit li').allInnerTexts()).some(
      (t) => !before.includes(t) && /3,134\.00|3,284\.00/.test(t),
    ),
  );
  await finish();
});

test('a sum with a minus sign is offered as a credit, and the letter waits in sight for what cannot be read', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.locator('.sheet .paragraph').first().waitFor();
  await page.locator('#amount-2').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('-100', { delay: 40 });
  await page.keyboard.press('Tab');
  await still(page);
  await page.locator('.sheet[data-held]').waitFor();
  assert.ok((await page.locator('.left-out').innerText()).includes('3'));
  await page.getByRole('button', { name: 'This lowers the charges by $100.00' }).click();
  await still(page);
  assert.equal(await page.locator('#amount-2').inputValue(), '\u2212100.00');
  await page.locator('.sheet:not([data-held])').waitFor();
  await press(page, 'Undo');
  await still(page);
  assert.equal(await page.locator('#amount-2').inputValue(), '-100');
  await finish();
});

test('what the words say stands as marks beside the charge: one tap keeps one, one strikes it, and both come back', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('State or province of the home').selectOption('US-CA');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
  await page.locator('#text-0').click();
  await page.keyboard.type('Broken blind by your son, 2 yrs old', { delay: 15 });
  await page.keyboard.press('Enter');
  await page.keyboard.type('96', { delay: 30 });
  await page.keyboard.press('Enter');
  const mark = (field) => row(page, 1).locator(`.word-mark[data-field=${field}]`);
  await mark('ageYears').locator('q', { hasText: '2 yrs old' }).waitFor();
  await mark('cause').waitFor();
  const withAge = await figure(page, 1);
  assert.deepEqual(await axe(page), []);
  await mark('ageYears')
    .getByRole('button', { name: /^Strike this/ })
    .click();
  await until(async () => (await mark('ageYears').count()) === 0);
  await page.getByRole('status').getByText('Struck: "2 yrs old".').waitFor();
  assert.notEqual(await figure(page, 1), withAge);
  await row(page, 1)
    .getByRole('button', { name: /Read its words again/ })
    .click();
  await mark('ageYears').waitFor();
  assert.equal(await figure(page, 1), withAge);
  await mark('ageYears')
    .getByRole('button', { name: /^Keep this/ })
    .click();
  await until(async () => (await mark('ageYears').count()) === 0);
  assert.equal(await figure(page, 1), withAge);
  await openFacts(page, 1);
  const age = row(page, 1).getByLabel('Age in years, at the end');
  assert.equal(await age.inputValue(), '2');
  await finish();
});

test('a field wins over the words; where they differ that is marked, and the words can be taken instead', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, 'Carpet burned, laid in 2012', '900');
  const mark = row(page, 1).locator('.word-mark[data-field=installed]');
  await mark.locator('q', { hasText: 'laid in 2012' }).waitFor();
  await openFacts(page, 1);
  const installed = row(page, 1).locator('.facts').getByRole('textbox', { name: 'Put in or last done' });
  await installed.fill('2021');
  await installed.blur();
  await row(page, 1).locator('.word-mark[data-against]').waitFor();
  await mark.getByRole('button', { name: /^Take the words instead/ }).click();
  await until(async () => (await installed.inputValue()) === '2012');
  await until(async () => (await mark.count()) === 0);
  await finish();
});

test('the question of an opened row has what answers it right there, and a landlord reads no tenant’s words', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByRole('radio', { name: 'the landlord' }).check();
  await page.getByLabel('State or province of the home').selectOption('US-CO');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('10/20/2026');
  await typeCharge(page, 1, 'Carpet in the living room, burn', '640');
  await typeCharge(page, 2, 'Broken blinds', '96');
  for (const [n, year] of [
    [1, '2022'],
    [2, '2024'],
  ])
    await row(page, n).getByRole('textbox', { name: 'Year put in' }).fill(year);
  await still(page);
  await openRow(page, 1);
  const asked = row(page, 1).locator('.row-question');
  const question = await asked.locator('h3').innerText();
  await asked.getByLabel('What caused it').selectOption('tenant');
  await still(page);
  assert.notEqual(
    await asked
      .locator('h3')
      .innerText()
      .catch(() => ''),
    question,
  );
  assert.doesNotMatch(await page.locator('.charges').innerText(), /Ask for|It still works/);
  // A year that is known is not asked anew, but more exactly.
  assert.match(await row(page, 2).innerText(), /more exactly when it was installed/);
  await finish();
});
