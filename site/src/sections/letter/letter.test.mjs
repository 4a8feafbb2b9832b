// The letter: its ways out, own words, the copy to read.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  asPrinted,
  axe,
  browser,
  changeFacts,
  open,
  openExample,
  press,
  site,
  taken,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

test('the letter goes out as text and as a .docx with the same words', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const text = await (await taken(page, 'Keep as text')).text();
  assert.match(text, /Re: Security deposit/);
  assert.doesNotMatch(text, /not legal advice/);
  // Lines break where the paper ends: words are compared without the spaces between them.
  const close = (words) => words.replace(/\s+/g, '');
  const words = close(asPrinted((await taken(page, 'Keep as .docx')).path));
  const sentences = text.split(/\n+/).filter((l) => /[.:]$/.test(l) && !/^\d/.test(l));
  assert.ok(sentences.length > 8);
  for (const sentence of sentences) assert.ok(words.includes(close(sentence)), sentence);
  for (const sum of text.match(/\$[\d,]+\.\d\d/g)) assert.ok(words.includes(sum), sum);
  await finish();
});

test('own words in the letter survive new facts, and what the facts changed beneath them is said', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await press(page, 'Read all and change the words');
  const second = page
    .locator('.paragraph')
    .filter({ has: page.locator('.paragraph-print', { hasText: /^Ordinary wear: charge 2, / }) });
  await second.locator('textarea').fill('Charge 2 is plain wear. I do not owe it.');
  const mine = page
    .locator('.paragraph')
    .filter({ has: page.locator('.paragraph-print', { hasText: 'Charge 2 is plain wear.' }) });
  await mine.getByText('In your own words.').waitFor();
  await page.locator('#amount-1').fill('180');
  await mine.getByText('The facts changed since you wrote this.').waitFor();
  assert.equal(await mine.locator('textarea').inputValue(), 'Charge 2 is plain wear. I do not owe it.');
  const text = await (await taken(page, 'Keep as text')).text();
  assert.ok(text.includes('Charge 2 is plain wear. I do not owe it.'));
  await mine.getByRole('button', { name: 'Take the draft’s words' }).click();
  await page
    .locator('.paragraph-print', { hasText: /^Ordinary wear: charge 2, \$180\.00/ })
    .waitFor({ state: 'attached' });
  await second.locator('.paragraph-switch input').uncheck();
  assert.doesNotMatch(await (await taken(page, 'Keep as text')).text(), /Ordinary wear: charge 2/);
  await finish();
});

test('in Spanish the letter stays English and a copy to read stands below', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.locator('.letter-copy summary').click();
  assert.equal(await page.locator('article.sheet').getAttribute('lang'), 'en');
  assert.equal(await page.locator('.letter-copy .sheet').getAttribute('lang'), 'es');
  await page
    .locator('.letter-copy')
    .getByText(/depósito/)
    .first()
    .waitFor();
  assert.equal(await page.locator('html').getAttribute('lang'), 'es');
  assert.deepEqual(await axe(page), []);
  await finish();
});

test('one screen of it is shown until all of it is wanted; the other letters are folded', async () => {
  const { page, finish } = await open(browser, site.address, { viewport: { width: 390, height: 844 } });
  await openExample(page, /Twelve charges/);
  const sheet = page.locator('article.sheet');
  await sheet.waitFor();
  assert.ok((await sheet.boundingBox()).height < 844);
  assert.equal(await page.locator('#letter-kind').isVisible(), false);
  await press(page, 'Read all and change the words');
  assert.ok((await sheet.boundingBox()).height > 844);
  await press(page, 'Show less');
  assert.ok((await sheet.boundingBox()).height < 844);
  await finish();
});

test('a landlord who sent nothing: the sum, the missed day and the letter stand without a charge', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.getByLabel('State or province of the home').selectOption('US-CA');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
  await page.getByLabel('Deposit', { exact: true }).fill('2000');
  await page.getByRole('radio', { name: 'Nothing yet' }).check();
  const came = page.locator('.standing').getByRole('group', { name: 'Did a written statement come?' });
  await came.getByRole('radio', { name: 'No', exact: true }).check();
  await page.locator('.headline-sum', { hasText: '$2,000' }).waitFor();
  await page.locator('.next[data-kind=missed]').waitFor();
  await page.locator('#letter').waitFor();
  await page.locator('.sheet .paragraph').first().waitFor();
  await finish();
});

test('the day a letter went and how are kept with the case, and the second letter names them', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await page.locator('.letter-sent summary').click();
  assert.equal(await page.locator('#sent-event-tenant-demand-how').count(), 0);
  await page.getByRole('textbox', { name: 'Day this letter went out' }).fill('9/5/2026');
  await page.getByLabel('How it went').selectOption('certified-mail');
  await page.locator('.letter-others summary').click();
  await page.locator('#letter-kind').selectOption('second-letter');
  await page
    .locator('.paragraph-print', { hasText: 'I wrote to you by certified mail on September 5, 2026' })
    .waitFor({ state: 'attached' });
  assert.equal(await page.getByRole('textbox', { name: 'Day your first letter went out' }).inputValue(), '9/5/2026');
  await finish();
});

test('a landlord reads what is at risk, what is missing and what the law wants before the paper goes out', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  await changeFacts(page);
  await page.getByRole('radio', { name: 'the landlord' }).check();
  const side = page.locator('.letter-side');
  await side.getByRole('heading', { name: 'Before you send it' }).waitFor();
  for (const heading of ['Charges at risk or left out', 'What the law wants of the paper'])
    assert.equal(await side.getByRole('heading', { name: heading }).count(), 1, heading);
  assert.deepEqual(await axe(page), []);
  await finish();
});
