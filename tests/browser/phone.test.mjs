// A phone in the hand: from an empty page, typed key by key, to a useful answer and to the letter; and how long the page is. The seconds
// are those of a keystroke-level model (Card, Moran and Newell, "The Keystroke-Level Model for User Performance Time with Interactive
// Systems", CACM 23(7), 1980) with times for a touch screen that are our own estimates: they compare, they do not time anybody.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { browser, fitsWidth, open, openExample, OUT, still, site, until, withPage } from './harness.mjs';

withPage();

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, reducedMotion: 'reduce' };
const seconds = { tap: 1.2, key: 0.35, field: 1.35 };
/** Pixels of the page on such a phone that no case here may pass. */
const longest = { six: 4500, twelve: 6500, card: 340 };

/** Hands that count what they do. */
function hands(page) {
  const done = { taps: 0, keys: 0, fields: 0 };
  return {
    done,
    time: () => Math.round(done.taps * seconds.tap + done.keys * seconds.key + done.fields * seconds.field),
    async tap(locator) {
      done.taps++;
      await locator.tap();
    },
    async type(text) {
      done.fields++;
      done.keys += text.length;
      await page.keyboard.type(text, { delay: 15 });
    },
    async key(name) {
      done.keys++;
      await page.keyboard.press(name);
    },
    /** A list of the phone's own: one tap to open it, one to choose. */
    async choose(locator, value) {
      done.taps += 2;
      await locator.selectOption(value);
    },
  };
}

const heightOf = (page) => page.evaluate(() => document.documentElement.scrollHeight);
const lines = [];
const note = (what, said) => {
  lines.push(`${what}: ${said}`);
  fs.mkdirSync(OUT, { recursive: true });
  fs.writeFileSync(path.join(OUT, 'phone.txt'), lines.join('\n') + '\n');
};

const six = [
  ['Carpet, living room and bedroom', '540'], ['Paint', '310'], ['Cleaning', '165'], ['3 blinds', '78'], ['Trash', '60'], ['Bulbs, drip pans', '85'],
];

test('six charges typed on a phone: the answer as they are typed, the page short, the letter two taps away', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  const hand = hands(page);
  await hand.choose(page.locator('#place'), 'US-TX');
  await hand.tap(page.locator('#text-0'));
  await hand.type(six[0][0]);
  await hand.key('Enter');
  await hand.type(six[0][1]);
  await still(page);
  await page.locator('.charge-verdict strong').first().waitFor();
  await page.locator('.next').waitFor();
  note('P1, first useful answer', `${hand.time()} s by the model, ${JSON.stringify(hand.done)}`);
  assert.ok(hand.time() <= 45, `${hand.time()} s`);
  for (const [i, [text, amount]] of six.slice(1).entries()) {
    await hand.key('Enter');
    assert.equal(await page.evaluate(() => document.activeElement.id), `text-${i + 1}`);
    await hand.type(text);
    await hand.key('Enter');
    await hand.type(amount);
  }
  for (const [name, typed] of [['Moved out', '9/30/2026'], ['Deposit', '1450']]) {
    await hand.tap(page.getByRole('textbox', { name, exact: true }).first());
    await hand.type(typed);
  }
  await hand.tap(page.getByRole('radio', { name: 'Some or all' }));
  await hand.tap(page.getByLabel('Paid back so far'));
  await hand.type('212');
  await hand.tap(page.getByRole('button', { name: 'Done: fold this up' }));
  await still(page);
  // What was kept is all explained, and nothing open is called a debt.
  assert.match(await page.locator('.headline').innerText(), /^(Between|Up to) \$/);
  // What was answered in the facts above is no question of the list below.
  assert.deepEqual(await page.locator('.question[data-answered]').allInnerTexts(), []);
  // Texas counts from the new address: that is asked, not a thing that moves money.
  const steps = page.locator('.next');
  await steps.waitFor();
  await page.locator('#letter').waitFor();
  await page.locator('.sheet .paragraph').first().waitFor();
  const card = await page.locator('.outlook-card').evaluate((c) => Math.round(c.getBoundingClientRect().height));
  note('P1, the card', `${card} px`);
  assert.ok(card <= longest.card, `${card} px`);
  await hand.tap(page.locator('.strip').getByRole('link', { name: 'Letter' }));
  await until(() => page.locator('#letter').evaluate((h) => h.getBoundingClientRect().top >= 0 && h.getBoundingClientRect().top < 300));
  note('P1, the letter in view', `${hand.time()} s by the model, ${JSON.stringify(hand.done)}`);
  const height = await heightOf(page);
  note('P1, six charges', `${height} px`);
  assert.ok(height <= longest.six, `${height} px`);
  assert.ok(await fitsWidth(page));
  await finish();
});

test('twelve charges: the page, the card and a row are as short as they are meant to be', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await openExample(page, /Twelve charges/);
  await page.locator('.sheet .paragraph').first().waitFor();
  const height = await heightOf(page);
  const card = await page.locator('.outlook-card').evaluate((c) => Math.round(c.getBoundingClientRect().height));
  const rows = await page.locator('.charge:not([data-empty])').evaluateAll((all) => all.map((c) => Math.round(c.getBoundingClientRect().height)));
  note('twelve charges', `${height} px, the card ${card}, rows ${Math.min(...rows)} to ${Math.max(...rows)}`);
  assert.ok(height <= longest.twelve, `${height} px`);
  assert.ok(card <= longest.card, `${card} px`);
  assert.ok(rows.sort((a, b) => a - b)[6] <= 90, `${rows}`);
  await finish();
});

test('a date typed into the next step is kept whole, read back, and the step goes on; the cursor is never lost', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await page.locator('#place').selectOption('US-TX');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
  await page.getByLabel('Deposit', { exact: true }).fill('1450');
  await page.getByRole('radio', { name: 'Nothing yet' }).tap();
  await page.locator('#text-0').fill('Paint');
  await page.locator('#amount-0').fill('310');
  await still(page);
  const step = page.locator('.next[data-kind=clock], .next[data-kind=question]');
  await step.waitFor();
  const act = await step.locator('.next-act').innerText();
  await step.getByRole('textbox').tap();
  await page.keyboard.type('10/20/2026', { delay: 60 });
  assert.equal(await step.locator('.next-act').innerText(), act, 'the question stays while it is answered');
  await page.keyboard.press('Enter');
  await still(page);
  await until(async () => (await page.locator('.next-act').innerText()) !== act);
  assert.notEqual(await page.evaluate(() => document.activeElement.tagName), 'BODY');
  const held = await page.locator('.standing .entry-date').evaluateAll((all) => all.map((e) => e.value));
  assert.ok(held.includes('10/20/2026'), held.join());
  await finish();
});

test('a year typed wrongly is asked about before anything is counted from it, and the right one ends the question', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await page.locator('#place').selectOption('US-CA');
  await page.getByRole('textbox', { name: 'Moved out' }).fill('9/30/2026');
  await page.locator('#text-0').fill('Blinds broken');
  await page.locator('#amount-0').fill('96');
  await page.locator('#f-statement-sent').tap();
  await page.keyboard.type('10/20/2020', { delay: 60 });
  await page.keyboard.press('Tab');
  await still(page);
  const step = page.locator('.next');
  await step.getByText('Two days cannot both be right').first().waitFor();
  const day = step.getByRole('textbox', { name: 'Statement sent' });
  await day.fill('10/20/2026');
  await page.keyboard.press('Enter');
  await still(page);
  await until(async () => !/cannot both be right/.test(await step.innerText()));
  await finish();
});
