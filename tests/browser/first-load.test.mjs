// What the page fetches, and when: an empty page itself alone; engine and rules once somebody is at it, what the first answer needs before
// the rest; what keeps it for a visit without a network last, and nothing twice.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { native } from '../wasm/engines.mjs';
import { browser, DIST, keepsFiles, open, openExample, ready, row, serve, site, still, TODAY, typeCharge, until, withPage } from './harness.mjs';

withPage();

/** The first part of the engine, and what comes behind it. */
const ENGINE = /\/first-[^/]*\.wasm$/;
const REST = /\/rest-[^/]*\.wasm$/;
/** Gzipped bytes an empty page may take. */
const most = 180_000;

/** A page without the service worker, which fetches everything to keep it. That it is blocked is a warning of the browser's. */
async function alone(expected = /Service Worker registration blocked/) {
  const { page, context, wrong } = await open(browser, site.address, { serviceWorkers: 'block' });
  const finish = async () => {
    await context.close();
    assert.deepEqual(wrong.filter((w) => !expected.test(w)), []);
  };
  return { page, context, finish };
}
const watch = (page) => {
  const asked = [];
  page.on('request', (r) => asked.push(r.url()));
  return asked;
};
const fileOf = (url) => path.join(DIST, new URL(url).pathname.replace('/help/deposits/', '') || 'index.html');

/** How the program words the verdict on one bare charge. */
const programSays = (text, amount) =>
  JSON.parse(native(JSON.stringify({ wearline: 1, lines: [{ id: '1', text, amount }] }), TODAY).text).lines[0];

test('an empty page that nobody touches fetches itself alone; a charge named only by its words is judged as the program judges it', async () => {
  const { page, finish } = await alone();
  // What this visit began is over before the next is watched.
  await page.waitForLoadState('networkidle');
  const asked = watch(page);
  await page.reload();
  await page.locator('#text-0').waitFor();
  await page.waitForLoadState('networkidle');
  const taken = asked.map((url) => gzipSync(fs.readFileSync(fileOf(url))).length).reduce((a, b) => a + b, 0);
  assert.ok(taken > 0 && taken <= most, `${taken} bytes, gzipped`);
  assert.deepEqual(asked.filter((url) => /\.(wasm|json)$/.test(url)), []);

  const told = programSays('Small nail holes', '75.00');
  assert.ok(told.element && told.recognised, 'the program names the thing from the words');
  await typeCharge(page, 1, 'Small nail holes', '75');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  assert.equal(await row(page, 1).locator('.charge-fair .figure').innerText(), told.fair.likely);
  assert.equal(asked.filter((url) => ENGINE.test(url)).length, 1);
  await finish();
});

test('what the first answer needs comes before the rest of the engine, and nothing of it twice', async () => {
  const { page, finish } = await alone();
  const asked = watch(page);
  await page.reload();
  await typeCharge(page, 1, 'Small nail holes', '75');
  await page.locator('.letter .paragraph').first().waitFor();
  const first = [ENGINE, /\/reading\.[^/]*json$/, REST].map((file) => asked.findIndex((url) => file.test(url)));
  assert.deepEqual(first, [...first].sort((a, b) => a - b));
  assert.ok(first[0] >= 0);
  for (const file of [ENGINE, REST]) assert.equal(asked.filter((url) => file.test(url)).length, 1);
  await finish();
});

test('a page that is looked at for a while brings the engine in, unless the browser saves data', async () => {
  for (const saveData of [false, true]) {
    const { page, finish } = await alone();
    await page.addInitScript((saves) => Object.defineProperty(navigator, 'connection', { value: { saveData: saves } }), saveData);
    await page.clock.install();
    const asked = watch(page);
    await page.reload();
    await page.locator('#text-0').waitFor();
    await page.clock.runFor(2_000);
    assert.deepEqual(asked.filter((url) => ENGINE.test(url)), []);
    await page.clock.runFor(2_000);
    if (saveData) assert.deepEqual(asked.filter((url) => ENGINE.test(url)), []);
    else await page.locator('.footer', { hasText: /\d+\.\d+\.\d+/ }).waitFor();
    await finish();
  }
});

test('without the network in mid-work the engine waits for its other part, and writes the letter when the network is back', async () => {
  const { page, finish } = await alone(/Service Worker registration blocked|net::ERR_FAILED/);
  await page.route(REST, (route) => route.abort());
  await page.reload();
  await typeCharge(page, 1, 'Small nail holes', '75');
  await page.locator('.notice', { hasText: 'could not be loaded' }).waitFor();
  const told = programSays('Small nail holes', '75.00');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  await page.unroute(REST);
  await page.locator('#amount-0').fill('75.50');
  await page.locator('.letter .paragraph').first().waitFor();
  await still(page);
  await finish();
});

test('whatever a person begins with brings the engine in: scrolling, a key, a paste', async () => {
  for (const begin of [
    (page) => page.evaluate(() => window.scrollTo(0, 40)),
    (page) => page.keyboard.press('Tab'),
    (page) => page.evaluate(() => document.body.dispatchEvent(new ClipboardEvent('paste', { bubbles: true }))),
  ]) {
    const { page, finish } = await alone();
    await page.reload();
    await page.locator('#text-0').waitFor();
    await begin(page);
    await page.locator('.footer', { hasText: /\d+\.\d+\.\d+/ }).waitFor();
    await finish();
  }
});

test('what keeps the page for later comes after the engine and takes no file of the page a second time', async () => {
  const sent = [];
  const host = await serve(DIST, '/help/deposits/', { 'cache-control': 'max-age=600' }, (name) => sent.push(name));
  const { page, finish } = await open(browser, host.address);
  await ready(page);
  await keepsFiles(page);
  const named = sent.filter((name) => /^(assets|generated)\//.test(name));
  assert.deepEqual(named.filter((name, i) => named.indexOf(name) !== i), []);
  assert.ok(sent.indexOf('service-worker.js') > sent.findIndex((name) => ENGINE.test(`/${name}`)));
  assert.ok(sent.indexOf('service-worker.js') > sent.findIndex((name) => /\/reading\./.test(name)));
  await finish();
  await host.close();
});

test('a letter comes once what words it has come', async () => {
  const { page, finish } = await alone();
  const asked = watch(page);
  await openExample(page, /carpet/i);
  await page.locator('.letter .paragraph').first().waitFor();
  assert.equal(asked.filter((url) => /\/letters\.[^/]*json$/.test(url)).length, 1);
  await finish();
});

test('without the network the page says that the engine is missing, keeps what is typed, and tries again at the next change', async () => {
  const { page, finish } = await alone(/Service Worker registration blocked|net::ERR_FAILED/);
  await page.route(ENGINE, (route) => route.abort());
  await page.reload();
  await page.locator('#text-0').fill('Small nail holes');
  await page.locator('#amount-0').fill('75');
  await page.locator('.outlook .fault').waitFor();
  await page.unroute(ENGINE);
  const told = programSays('Small nail holes', '75.50');
  await page.locator('#amount-0').fill('75.50');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  assert.equal(await page.locator('.outlook .fault').count(), 0);
  await page.locator('.letter .paragraph').first().waitFor();
  await finish();
});

test('without what reads words the page says so, judges what is named, and tries again at the next change', async () => {
  const { page, finish } = await alone(/Service Worker registration blocked|net::ERR_FAILED/);
  const reading = /\/reading\.[^/]*json$/;
  await page.route(reading, (route) => route.abort());
  await page.reload();
  await ready(page);
  await typeCharge(page, 1, 'Small nail holes', '75');
  await page.locator('.notice', { hasText: 'could not be loaded' }).waitFor();
  await until(async () => (await row(page, 1).locator('.charge-fair .figure').count()) === 1);
  await page.unroute(reading);
  const told = programSays('Small nail holes', '75.50');
  await page.locator('#amount-0').fill('75.50');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  await still(page);
  await finish();
});
