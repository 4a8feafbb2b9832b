// The same page in Firefox, driven over WebDriver BiDi: the main job, each side, each way out, without a network, and as one file.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import puppeteer from 'puppeteer-core';
import { keepsFiles, ONE_FILE, serve, TODAY, until } from './harness.mjs';

const downloads = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-firefox-'));
let browser, site;
before(async () => {
  site = await serve();
  browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: process.env.WEARLINE_FIREFOX ?? '/usr/bin/firefox-esr',
    headless: true,
    extraPrefsFirefox: {
      'browser.download.folderList': 2,
      'browser.download.dir': downloads,
      'browser.download.useDownloadDir': true,
      'browser.helperApps.neverAsk.saveToDisk': 'application/json,text/plain,text/csv,text/html,text/calendar,application/vnd.openxmlformats-officedocument.wordprocessingml.document',
      'intl.accept_languages': 'en-US',
      'ui.prefersReducedMotion': 1,
    },
  });
});
after(async () => {
  await browser.close();
  await site.close();
  fs.rmSync(downloads, { recursive: true, force: true });
});

/** A fresh page on which today is the tests' day; errors and policy violations are collected in `wrong`. */
async function open(address) {
  const page = await browser.newPage();
  await page.setViewport({ width: 1280, height: 900 });
  const wrong = [];
  page.on('pageerror', (e) => wrong.push(`error: ${e.message}`));
  page.on('console', (m) => ['error', 'warn'].includes(m.type()) && wrong.push(`console: ${m.text()}`));
  await page.evaluateOnNewDocument((today) => {
    const Real = Date;
    const now = new Real(`${today}T12:00:00`).getTime();
    globalThis.Date = class extends Real {
      constructor(...given) {
        if (given.length) super(...given);
        else super(now);
      }
      static now() {
        return now;
      }
    };
    document.addEventListener('securitypolicyviolation', (e) => console.error(`policy: ${e.violatedDirective} ${e.blockedURI}`));
  }, TODAY);
  await page.goto(address);
  await ready(page);
  return { page, wrong };
}

async function ready(page) {
  await page.waitForSelector('.footer');
  const engineIn = page.waitForFunction(() => /\d+\.\d+\.\d+/.test(document.querySelector('.footer')?.textContent ?? ''));
  await page.mouse.move(1, 1);
  await page.mouse.move(2, 1);
  await engineIn;
}
const text = (page, selector) => page.$eval(selector, (e) => e.textContent.replace(/\s+/g, ' ').trim());
async function press(page, words) {
  const button = await page.waitForSelector(`::-p-xpath(//button[contains(normalize-space(.), "${words}")])`);
  await button.evaluate((b) => b.click());
}
const example = async (page, title) => {
  await press(page, title);
  await page.waitForSelector('.headline');
};
async function type(page, selector, words) {
  await page.focus(selector);
  await page.keyboard.type(words);
}

for (const [form, address] of [['the page', () => site.address], ['the one file', () => ONE_FILE]]) {
  test(`Firefox, ${form}: the charges are typed and read`, async () => {
    const { page, wrong } = await open(address());
    await page.select('#place', 'US-CA');
    await type(page, '#text-0', 'Small nail holes');
    await page.keyboard.press('Enter');
    await page.keyboard.type('75');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Carpet cleaning');
    await page.keyboard.press('Enter');
    await page.keyboard.type('1,100.50');
    await type(page, '#f-deposits-0-amount', '1500');
    await until(async () => /\$1,175\.50/.test(await text(page, '.sums')));
    const opener = await page.waitForSelector('.charge-opener');
    await opener.evaluate((b) => b.click());
    const more = await page.waitForSelector('.row-facts > summary');
    await more.evaluate((s) => s.click());
    await page.waitForSelector('[role=combobox]');
    await type(page, '[role=combobox]', 'small nail');
    await page.keyboard.press('Enter');
    await until(async () => /Not fair: ordinary wear/.test(await text(page, '.charge-verdict')));
    assert.equal(await text(page, '.charge-fair .figure'), '0.00');
    assert.ok((await page.$$('.cautions li')).length >= 3);
    assert.deepEqual(wrong, []);
    await page.close();
  });

  test(`Firefox, ${form}: each side, Spanish, and each way out`, async () => {
    const { page, wrong } = await open(address());
    await example(page, 'due soon');
    for (const [side, first] of [['adviser', 'helping a tenant'], ['landlord', 'the landlord'], ['tenant', 'the tenant']]) {
      await page.$eval('#facts-change', (b) => b.click());
      const radio = await page.waitForSelector(`input[name=side][value=${side}]`);
      await radio.evaluate((r) => r.click());
      await press(page, 'fold this up');
      await until(async () => (await text(page, '.standing-line')).startsWith(first));
    }
    await page.waitForSelector('.letter');
    await page.waitForSelector('.takeaway');
    await page.$eval('.takeaway summary', (s) => s.click());
    const out = [['Save', '.json'], ['Keep as .docx', '.docx'], ['Keep as text', '.txt'], ['Report', '.html'], ['Calendar', '.ics'], ['Table', '.csv']];
    for (const [button, ending] of out) {
      const before = new Set(fs.readdirSync(downloads));
      await press(page, button);
      await until(() => fs.readdirSync(downloads).some((f) => !before.has(f) && f.endsWith(ending) && fs.statSync(path.join(downloads, f), { throwIfNoEntry: false })?.size > 100));
    }
    await press(page, 'Español');
    await until(async () => (await text(page, '#result')) === 'Cómo está su caso');
    assert.deepEqual(wrong, []);
    await page.close();
  });
}

test('Firefox: after one visit no network is needed', async () => {
  const own = await serve();
  const { page } = await open(own.address);
  await keepsFiles(page);
  await own.close();
  await page.reload();
  await ready(page);
  await example(page, 'Twelve charges');
  await page.$eval('#facts-change', (b) => b.click());
  await page.waitForSelector('#place');
  await page.select('#place', 'US-TX');
  await page.waitForSelector('.cautions li');
  assert.doesNotMatch(await text(page, '.notice'), /could not be loaded/);
  await page.close();
});
