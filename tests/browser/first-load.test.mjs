// What the page fetches, and when: the judge at first; the engine that reads words and writes letters as soon as a case needs it. From
// then on the page says what the program says.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { native } from '../wasm/engines.mjs';
import { browser, open, openExample, row, site, TODAY, typeCharge, until, withPage } from './harness.mjs';

withPage();

const WHOLE = /\/wearline-[^/]*\.wasm$/;
/** A page without the service worker, which fetches everything to keep it. That it is blocked is a warning of the browser's. */
async function alone(expected = /Service Worker registration blocked/) {
  const { page, context, wrong } = await open(browser, site.address, { serviceWorkers: 'block' });
  const finish = async () => {
    await context.close();
    assert.deepEqual(wrong.filter((w) => !expected.test(w)), []);
  };
  return { page, finish };
}
const watch = (page) => {
  const asked = [];
  page.on('request', (r) => asked.push(r.url()));
  return asked;
};

/** How the program words the verdict on one bare charge. */
const programSays = (text, amount) =>
  JSON.parse(native(JSON.stringify({ wearline: 1, lines: [{ id: '1', text, amount }] }), TODAY).text).lines[0];

test('an empty page does without the whole engine; a charge named only by its words brings it in and is judged as the program judges it', async () => {
  const { page, finish } = await alone();
  const asked = watch(page);
  await page.reload();
  await page.locator('.footer', { hasText: /\d+\.\d+\.\d+/ }).waitFor();
  await page.waitForLoadState('networkidle');
  assert.ok(asked.some((url) => /\/judge-[^/]*\.wasm$/.test(url)));
  assert.deepEqual(asked.filter((url) => WHOLE.test(url) || /\/(reading|letters)\.[^/]*json$/.test(url)), []);

  const told = programSays('Small nail holes', '75.00');
  assert.ok(told.element && told.recognised, 'the program names the thing from the words');
  await typeCharge(page, 1, 'Small nail holes', '75');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  assert.equal(await row(page, 1).locator('.charge-fair .figure').innerText(), told.fair.likely);
  assert.equal(asked.filter((url) => WHOLE.test(url)).length, 1);
  await finish();
});

test('a letter comes once what writes it has come', async () => {
  const { page, finish } = await alone();
  const asked = watch(page);
  await openExample(page, /carpet/i);
  await page.locator('.letter .paragraph').first().waitFor();
  assert.equal(asked.filter((url) => WHOLE.test(url)).length, 1);
  assert.equal(asked.filter((url) => /\/letters\.[^/]*json$/.test(url)).length, 1);
  await finish();
});

test('without the network the page says that a part is missing, judges what is named, and tries again at the next change', async () => {
  const { page, finish } = await alone(/Service Worker registration blocked|net::ERR_FAILED/);
  await page.route(WHOLE, (route) => route.abort());
  await typeCharge(page, 1, 'Small nail holes', '75');
  await page.locator('.notice', { hasText: 'could not be loaded' }).waitFor();
  await until(async () => (await row(page, 1).locator('.charge-fair .figure').count()) === 1);
  await page.unroute(WHOLE);
  const told = programSays('Small nail holes', '75.50');
  await page.locator('#amount-0').fill('75.50');
  await row(page, 1).getByText(told.verdictText, { exact: false }).first().waitFor();
  await page.locator('.letter .paragraph').first().waitFor();
  await finish();
});
