// The open questions: the one that moves the most first, answered on the spot, nothing lost of what is typed.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  browser,
  open,
  openExample,
  site,
  still,
  typeCharge,
  until,
  withPage,
} from '../../../../tests/browser/harness.mjs';

withPage();

/** As a person types: sign by sign, with time for every answer to come in between. */
const typeSlowly = (page, text) => page.keyboard.type(text, { delay: 60 });

/** California, moved out September 30, one charge: the day of the statement and the refund are open. */
async function blinds(page) {
  await page.selectOption('#place', 'US-CA');
  await page.locator('.standing').getByRole('textbox').nth(0).fill('9/30/2026');
  await page.locator('.standing').getByRole('textbox').nth(1).fill('2400');
  await typeCharge(page, 1, 'Blinds broken', '96');
  // What reads words comes later; the questions are whole once it is there.
  await page.locator('.charge-why', { hasText: 'When was it installed' }).waitFor();
  await still(page);
}

const question = (page, words) => page.locator('.question', { hasText: words });

/** Opens one of the questions; all of them are listed first where it is not among the few. */
async function openQuestion(page, words) {
  const here = question(page, words);
  if (!(await here.count())) await page.getByRole('button', { name: /^Show all/ }).click();
  if (!(await here.getByRole('textbox').count())) await here.getByRole('button').first().click();
  await here.getByRole('textbox').waitFor();
  return here;
}

test('three are shown, one of them open; they are ranked by money, and an answer given here narrows the result', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Little is known/);
  assert.equal(await page.locator('.question').count(), 3);
  assert.equal(await page.locator('.question[data-open]').count(), 1);
  await page.getByRole('button', { name: /^Show all/ }).click();
  const said = await page.locator('.question .swing').allInnerTexts();
  // What decides a day comes before what moves money.
  const firstMoney = said.findIndex((s) => s.includes('moves'));
  assert.ok(
    said.every((s, i) => /decides/.test(s) === i < firstMoney),
    said.join(),
  );
  const swings = said.slice(firstMoney).map((s) => Number(s.replace(/[^\d.]/g, '')));
  assert.ok(swings.length >= 3);
  assert.deepEqual(
    swings,
    [...swings].sort((a, b) => b - a),
  );
  const range = () => page.locator('.headline-sum').innerText();
  const before = await range();
  const first = await openQuestion(page, 'When was it installed or last renewed (line 1');
  await first.getByRole('textbox').click();
  await typeSlowly(page, '2012');
  await page.keyboard.press('Enter');
  await until(async () => (await range()) !== before);
  await finish();
});

for (const [words, typed, shown] of [
  ['When was the statement sent', '10/20/2026', '10/20/2026'],
  ['When was the statement sent', 'October 20, 2026', '10/20/2026'],
  ['When was the statement sent', '10/20/26', '10/20/2026'],
  ['How much was paid back?', '212', '212.00'],
]) {
  test(`"${typed}" typed into "${words}" is what is stored, and the next question is at hand`, async () => {
    const { page, finish } = await open(browser, site.address);
    await blinds(page);
    const here = await openQuestion(page, words);
    const asked = await page.locator('.question').allInnerTexts();
    await here.getByRole('textbox').click();
    await typeSlowly(page, typed);
    assert.equal(await page.locator('.question').count(), asked.length, 'no question goes while one is typed in');
    await page.keyboard.press('Enter');
    await still(page);
    await here.getByText('Answered.').waitFor();
    await until(() => page.evaluate(() => document.activeElement.tagName !== 'BODY'));
    const focus = await page.evaluate(
      () => document.activeElement.closest('.question')?.innerText ?? document.activeElement.tagName,
    );
    const next = await here.evaluate((q) => (q.nextElementSibling ?? q).innerText);
    assert.equal(focus, next);
    await openQuestion(page, words);
    assert.equal(await here.getByRole('textbox').inputValue(), shown, 'it stays, to be changed');
    // It can be changed where it stands, and leaving the field saves it too.
    await here.getByRole('textbox').fill('');
    await typeSlowly(page, typed.replace(/6$/, '5').replace('212', '213'));
    await page.keyboard.press('Tab');
    await still(page);
    await openQuestion(page, words);
    assert.match(await here.getByRole('textbox').inputValue(), /2025|213/);
    assert.notEqual(await page.evaluate(() => document.activeElement.tagName), 'BODY');
    await finish();
  });
}
