// The main job in a browser: a statement typed in by hand, read line by line, down to the letter.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { answering, axe, browser, changeFacts, figure, fitsWidth, ONE_FILE, open, openExample, openFacts, ready, ROOT, row, site, typeCharge, withPage } from './harness.mjs';

withPage();

/** The page as it is served, and the one file that opens from a disk: the same job, the same answers. */
const forms = { 'the page': () => site, 'the one file': () => ({ address: ONE_FILE }) };
const inEachForm = (what, job) => {
  for (const [form, at] of Object.entries(forms)) test(`${form}: ${what}`, () => job(at()));
};

inEachForm('a tenant types the charges and reads verdicts, fair sums and the refund', async (site) => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('State or province of the home').selectOption('US-WA');
  await typeCharge(page, 1, 'Replace carpet, living room', '900');
  await typeCharge(page, 2, 'Small nail holes', '$75');
  await typeCharge(page, 3, 'November rent', '1,200.50');
  assert.equal(await page.locator('#amount-2').inputValue(), '1,200.50');
  await page.getByLabel('Deposit', { exact: true }).fill('2000');
  await page.getByRole('radio', { name: 'Nothing yet' }).check();
  await page.getByRole('textbox', { name: 'Moved out' }).fill('july 31 2026');
  await page.getByRole('textbox', { name: 'Moved out' }).blur();
  await page.getByText('Friday, July 31, 2026').first().waitFor();

  await openFacts(page, 1);
  const thing = row(page, 1).getByRole('combobox', { name: 'Which thing is it about?' });
  await thing.click();
  await thing.fill('carp stain');
  await page.getByRole('option', { name: /Carpet: Stains/ }).waitFor();
  await page.keyboard.press('Enter');
  assert.ok(await page.getByRole('radio', { name: /^Stains/ }).isChecked());

  await openFacts(page, 2);
  const second = row(page, 2).getByRole('combobox', { name: 'Which thing is it about?' });
  await second.fill('nail holes');
  await page.getByRole('option', { name: /nail or pin holes/ }).click();
  await row(page, 2).getByText('Not fair: ordinary wear', { exact: true }).waitFor();
  assert.equal(await figure(page, 2), '0.00');
  await page.locator('.heap[data-heap=not-fair] .figure', { hasText: '$75' }).waitFor();
  assert.equal(await page.locator('.sums .figure').first().innerText(), '$2,175.50');
  await page.locator('.cautions li').first().waitFor();
  await finish();
});

// State of California, Department of Consumer Affairs, tenants' guide, suggested approach to carpets: a carpet of 1,000 with a life of
// 10 years, 8 years old when the tenant left: the landlord may charge 200 for the 2 years left.
inEachForm('the California carpet: 1,000 new, 10 years of life, 8 years old, 200 left to charge', async (site) => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('State or province of the home').selectOption('US-CA');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('6/30/2026');
  await typeCharge(page, 1, 'Carpet', '1000');
  await openFacts(page, 1);
  await page.getByRole('combobox', { name: 'Which thing is it about?' }).fill('carpet burns');
  await page.getByRole('option', { name: /Carpet: Burns/ }).click();
  const facts = row(page, 1).locator('.facts');
  await facts.getByLabel('What caused it').selectOption('tenant');
  await facts.getByLabel('State at move-in').selectOption('good');
  await facts.getByLabel('What was done').selectOption('replace');
  await facts.getByRole('textbox', { name: 'Put in or last done' }).fill('6/30/2018');
  await page.getByText('More about this charge').click();
  await page.getByLabel('Useful life in years').fill('10');
  // A repair may cost less, so the row shows a range up to that sum; the steps come to the sum itself.
  assert.match(await figure(page, 1), /(^| to )200\.00$/);
  assert.equal(await row(page, 1).locator('.step-sum strong').last().innerText(), '$200.00');
  await row(page, 1).locator('.steps').getByText(/8 years old/).first().waitFor();
  await finish();
});

inEachForm('a case is saved to a file and opens again as it was', async (site) => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await page.locator('#amount-11').fill('55.55');
  await page.locator('.sums').getByText('$3,289.55').first().waitFor();
  const sums = await page.locator('.sums').innerText();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save' }).click()]);
  const saved = JSON.parse(fs.readFileSync(await download.path(), 'utf8'));
  assert.equal(saved.lines[11].amount, '55.55');
  answering(page);
  await page.getByRole('button', { name: 'Clear all' }).click();
  await page.locator('.headline').waitFor({ state: 'detached' });
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open a case' }).click()]);
  await chooser.setFiles({ name: 'again.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(saved)) });
  await page.locator('.headline').waitFor();
  assert.equal(await page.locator('.sums').innerText(), sums);
  await finish();
});

inEachForm('files that are no case are refused in plain words and nothing is lost', async (site) => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Little is known/);
  for (const [name, text, says] of [
    ['broken.json', '{"wearline": 1, "lines": [', /broken\.json cannot be read/],
    ['other.json', '{"a": 1}', /other\.json is not a case file/],
  ]) {
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open a case' }).click()]);
    await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    await page.getByRole('status').getByText(says).waitFor();
  }
  assert.equal(await page.locator('.charge').count(), 4);
  await finish();
});

inEachForm('every example opens with one click and has a result', async (site) => {
  const { page, finish } = await open(browser, site.address);
  // A home walked through before the end has no charges and no result yet: walk.test.mjs opens those.
  const folder = path.join(ROOT, 'examples');
  const walks = fs.readdirSync(folder).filter((f) => f.endsWith('.json') && !f.endsWith('.expected.json'))
    .map((f) => JSON.parse(fs.readFileSync(path.join(folder, f), 'utf8'))).filter(({ lines }) => lines.length === 0);
  const charged = (title) => !walks.some((walk) => title.includes(walk.title));
  const titles = (await page.locator('.opening-examples button').allInnerTexts()).filter(charged);
  assert.ok(titles.length >= 5);
  let longest = 0;
  for (const title of titles) {
    await page.reload();
    await ready(page);
    await openExample(page, title);
    assert.equal(await page.locator('.left-out').count(), 0, title);
    const charges = await page.locator('.charge:not([data-empty])').count();
    assert.equal(await page.locator('.charge-verdict strong').count(), charges, title);
    longest = Math.max(longest, charges);
  }
  assert.equal(longest, 12);
  await finish();
});

inEachForm('the whole form works with the keyboard alone', async (site) => {
  const { page, finish } = await open(browser, site.address);
  await page.keyboard.press('Tab');
  assert.equal(await page.evaluate(() => document.activeElement.className), 'skip');
  await page.keyboard.press('Enter');
  await page.locator('#text-0').focus();
  await page.keyboard.type('Paint');
  await page.keyboard.press('Enter');
  await page.keyboard.type('120');
  await row(page, 1).locator('.charge-fair .figure').waitFor();
  await page.keyboard.press('Tab');
  assert.ok(await page.evaluate(() => document.activeElement.classList.contains('charge-opener')));
  await page.keyboard.press('Enter');
  await row(page, 1).locator('.steps').waitFor();
  await row(page, 1).locator('.row-question .finding').first().waitFor();
  await row(page, 1).locator('.row-facts > summary').focus();
  if (!(await row(page, 1).locator('.facts').count())) await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'Which thing is it about?' }).focus();
  await page.keyboard.type('paint');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.getByRole('radio', { name: /^Faded/ }).first().focus();
  await page.keyboard.press('Space');
  await row(page, 1).getByText('Not fair: ordinary wear', { exact: true }).waitFor();
  await page.getByRole('combobox', { name: 'Which thing is it about?' }).focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Escape');
  assert.equal(await page.getByRole('listbox').count(), 0);
  await finish();
});

for (const width of [320, 768, 1280]) {
  test(`nothing sticks out and axe finds nothing at ${width} pixels, in each main state`, async () => {
    for (const colorScheme of ['light', 'dark']) {
      const { page, finish } = await open(browser, site.address, { viewport: { width, height: 800 }, colorScheme, reducedMotion: 'reduce' });
      const clean = async (state) => {
        assert.ok(await fitsWidth(page), `${state} sticks out`);
        assert.deepEqual(await axe(page), [], `${state}, ${colorScheme}`);
      };
      await clean('empty');
      await openExample(page, /Twelve charges/);
      await clean('a result');
      await openFacts(page, 3);
      await clean('an open charge');
      await page.getByRole('combobox', { name: 'Which thing is it about?' }).first().click();
      await clean('the list of things');
      await page.keyboard.press('Escape');
      await page.locator('details').evaluateAll((all) => all.forEach((d) => (d.open = true)));
      await page.locator('.facts .fold').first().waitFor();
      await clean('all folds open');
      await changeFacts(page);
      await page.getByRole('textbox', { name: 'Moved out' }).fill('never');
      await page.locator('#amount-0').fill('-5');
      await page.locator('#amount-0').blur();
      await clean('faults');
      await finish();
    }
  });
}

test('on paper there is the result with its cautions and nothing to press', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Twelve charges/);
  await page.emulateMedia({ media: 'print' });
  for (const gone of ['.tools', '.strip', '.heaps', '.charges-add', '.notice']) assert.equal(await page.locator(gone).first().isVisible(), false, gone);
  for (const there of ['.headline', '.charge-verdict', '.cautions li', '.days']) assert.ok(await page.locator(there).first().isVisible(), there);
  const pdf = await page.pdf({ format: 'Letter' });
  assert.ok(pdf.length > 10_000);
  await finish();
});
