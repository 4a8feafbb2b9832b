// Hard use that other files do not try: languages of the browser, writing from right to left, another time zone in mid-work, the network
// gone in mid-work, sums too large to be sums, days that may be two.
import assert from 'node:assert/strict';
import { test as whole } from 'node:test';
import { browser, keepsFiles, open, openExample, press, ready, site, still, taken, until, withPage } from './harness.mjs';

withPage();
const test = (name, run) => whole(name, { timeout: 180_000 }, run);
const file = (name, subject) => ({ name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(subject)) });
async function choose(page, files) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(files);
}

const LANGUAGES = ['en-US', 'en-GB', 'es-MX', 'es-US', 'es-419', 'fr-CA', 'pt-BR', 'de-DE', 'it-IT', 'ru-RU', 'uk-UA', 'pl-PL', 'tr-TR', 'ar-EG', 'fa-IR', 'he-IL', 'ur-PK', 'hi-IN',
  'bn-BD', 'ta-IN', 'th-TH', 'vi-VN', 'zh-CN', 'zh-TW', 'ja-JP', 'ko-KR', 'tl-PH', 'am-ET', 'so-SO', 'ht-HT'];

test('a browser of any of thirty languages gets a page that names its own language, with sums as they are written here', async () => {
  for (const locale of LANGUAGES) {
    const { page, finish } = await open(browser, site.address, { locale });
    const spanish = locale.startsWith('es');
    assert.equal(await page.evaluate(() => document.documentElement.lang), spanish ? 'es' : 'en', locale);
    assert.equal(await page.evaluate(() => getComputedStyle(document.body).direction), 'ltr', locale);
    await page.locator('#text-0').fill('Cleaning');
    await page.locator('#amount-0').fill('1240.5');
    await page.locator('#amount-0').blur();
    assert.equal(await page.locator('#amount-0').inputValue(), '1,240.50', locale);
    await still(page);
    assert.match(await page.locator('main').innerText(), /\$1,240\.50/, locale);
    await finish();
  }
});

test('names from right to left and pictures in words come back from a file as they were', async () => {
  const { page, finish } = await open(browser, site.address);
  const title = 'מרים كريم 👩‍👩‍👧 é';
  const text = 'ניקוי Cleaning of oven 🧽 تنظيف';
  await choose(page, [file('a.json', { wearline: 1, title, jurisdiction: 'US-WA', lines: [{ id: '1', text, amount: '120.00' }] })]);
  // The field is there before the file is.
  await until(async () => (await page.locator('#text-0').inputValue()) === text);
  await until(async () => /120\.00/.test(await page.locator('main').innerText()));
  const saved = await taken(page, 'Save');
  assert.match(saved.name, /\.json$/);
  const held = JSON.parse(await saved.text());
  assert.equal(held.title, title);
  assert.equal(held.lines[0].text, text);
  await finish();
});

test('another time zone in mid-work: every day is counted from the day there', async () => {
  const { page, context, finish } = await open(browser, site.address, { timezoneId: undefined });
  const devtools = await context.newCDPSession(page);
  const travel = async (timezoneId) => {
    await devtools.send('Emulation.setTimezoneOverride', { timezoneId });
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  };
  await page.clock.setFixedTime(new Date('2026-11-25T23:30:00-08:00'));
  await travel('America/Los_Angeles');
  await openExample(page, /Twelve charges/);
  await press(page, 'Read all and change the words');
  const words = page.locator('.paragraph-words');
  const letter = async (day) => (await words.evaluateAll((all) => all.map((w) => w.value ?? w.textContent))).some((text) => text.includes(day));
  await words.nth(3).waitFor();
  assert.ok(await letter('November 25, 2026'));
  await travel('America/New_York');
  for (let tries = 0; tries < 100 && !(await letter('November 26, 2026')); ++tries) await page.waitForTimeout(200);
  assert.ok(await letter('November 26, 2026'));
  await finish();
});

test('the network goes in mid-work: the law of another place, the letter, saving and a reload need none', async () => {
  const { page, context, finish } = await open(browser, site.address);
  await keepsFiles(page);
  await openExample(page, /Twelve charges/);
  await context.setOffline(true);
  await page.locator('#amount-0').fill('900.00');
  await page.locator('#amount-0').blur();
  await still(page);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.getByText('Cómo está su caso').waitFor();
  const saved = await taken(page, 'Guardar');
  assert.equal(JSON.parse(await saved.text()).lines[0].amount, '900.00');
  await page.reload();
  await ready(page);
  await finish();
});

test('a sum of 50,000 digits is said to be too large, and the others are judged', async () => {
  const { page, finish } = await open(browser, site.address);
  await page.locator('#text-0').fill('Cleaning');
  await page.locator('#amount-0').fill('1'.repeat(50_000));
  await page.locator('#amount-0').blur();
  await page.getByText('This amount is too large').first().waitFor();
  await page.locator('#text-1').fill('Two keys');
  await page.locator('#amount-1').fill('14.00');
  await page.locator('#amount-1').blur();
  await page.locator('main', { hasText: '$14.00' }).waitFor();
  await finish();
});

test('in Spanish a day of two numbers is asked about before anything is counted from it', async () => {
  const { page, finish } = await open(browser, site.address, { locale: 'es-US' });
  await page.locator('#text-0').fill('Limpieza');
  await page.locator('#amount-0').fill('120.00');
  const ended = page.locator('.entry-date').first();
  await ended.fill('5/10/2026');
  await ended.blur();
  const first = page.getByRole('button', { name: /5 de octubre de 2026/ });
  await first.waitFor();
  await page.getByRole('button', { name: /10 de mayo de 2026/ }).waitFor();
  await first.click();
  assert.equal(await page.getByRole('button', { name: /10 de mayo de 2026/ }).count(), 0);
  assert.match(await page.locator('.read-back').first().innerText(), /5 de octubre de 2026/);
  await finish();
});
