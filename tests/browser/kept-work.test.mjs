// Nothing a person put in is lost without being asked, and clearing leaves nothing: closing, reloading, two windows, saving, full stores.
import assert from 'node:assert/strict';
import { test as whole } from 'node:test';
import { answering, browser, example, keptAmount, open, openExample, photo, press, ready, site, still, taken, unfold, until, withPage } from './harness.mjs';

withPage();
const test = (name, run) => whole(name, { timeout: 60_000 }, run);

const says = (page, words) => page.getByRole('status').getByText(words).waitFor();
const keepHere = async (page) => {
  await press(page, 'Keep on this device');
  await says(page, /stay in this browser/);
};
async function choose(page, files) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a case')]);
  await chooser.setFiles(files);
}
const asFile = (file) => ({ name: file.name, mimeType: 'application/json', buffer: Buffer.from(file.content) });
const saved = async (page) => {
  const file = await taken(page, 'Save');
  return { name: file.name, content: await file.text() };
};
/** Attaches one photo. */
async function attachPhoto(page, day) {
  await unfold(page, 'evidence');
  await page.locator('.evidence input[type=file]').setInputFiles([{ name: 'door.jpg', mimeType: 'image/jpeg', buffer: await photo(page, day) }]);
}
/** The way to what is brought in, wherever the page has it. */
const bringIn = (page) => page.getByRole('button', { name: /statement/i }).first().click();
/** Another window of the same browser. */
async function second(context) {
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date('2026-11-25T12:00:00-08:00'));
  await page.goto(site.address);
  await ready(page);
  return page;
}
const changeAmount = async (page, to) => {
  await page.locator('#amount-0').fill(to);
  await page.locator('#amount-0').blur();
  await still(page);
};

test('closing a case with changes asks, and what was closed can be put back', async () => {
  const { page, finish } = await open(browser, site.address);
  await choose(page, [example('all-fair'), example('little-known')]);
  await page.locator('.roster tbody tr').nth(1).waitFor();
  await changeAmount(page, '17.25');
  let answer = false;
  const asked = answering(page, () => answer);
  await page.locator('.roster-tools').getByRole('button', { name: /^Close / }).click();
  assert.equal(asked.length, 1);
  assert.equal(await page.locator('.roster tbody tr').count(), 2);
  answer = true;
  await page.locator('.roster-tools').getByRole('button', { name: /^Close / }).click();
  await says(page, /The case is closed/);
  await press(page, 'Put it back');
  await page.locator('.roster tbody tr').nth(1).waitFor();
  assert.equal(await page.locator('#amount-0').inputValue(), '17.25');
  await finish();
});

test('after a reload what was in no file still counts as unsaved', async () => {
  const { page, finish } = await open(browser, site.address);
  const asked = answering(page, () => false);
  await openExample(page, /Little is known/);
  await keepHere(page);
  await changeAmount(page, '781.25');
  await until(async () => (await keptAmount(page)) === '781.25');
  await page.reload();
  await ready(page);
  await page.locator('.headline').waitFor();
  await press(page, 'Clear all');
  assert.equal(asked.filter((a) => a.startsWith('confirm')).length, 1);
  assert.equal(await page.locator('#amount-0').inputValue(), '781.25');
  await finish();
});

test('what was typed last is written when the page goes out of sight, without waiting', async () => {
  const { page, finish } = await open(browser, site.address);
  const asked = answering(page);
  await openExample(page, /Little is known/);
  await keepHere(page);
  await page.locator('#amount-0').fill('55.55');
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden' });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await until(async () => (await keptAmount(page)) === '55.55');
  // Closing at once asks until it is written.
  await page.locator('#amount-0').fill('66.66');
  await Promise.all([page.waitForEvent('close'), page.close({ runBeforeUnload: true })]);
  assert.deepEqual(asked.map((a) => a.split(' ')[0]), ['beforeunload']);
  await finish();
});

test('two windows: the second is told, changes of one show in the other, and neither takes the other’s away', async () => {
  const { page, context, finish } = await open(browser, site.address);
  answering(page);
  await openExample(page, /Little is known/);
  await keepHere(page);
  const other = await second(context);
  await says(other, /open in another window too/);
  assert.equal(await other.locator('#amount-0').inputValue(), await page.locator('#amount-0').inputValue());
  await changeAmount(other, '111.11');
  await until(async () => (await page.locator('#amount-0').inputValue()) === '111.11');
  // A change in each before either is written: both are there afterwards.
  await Promise.all([page.locator('#amount-0').fill('222.22'), other.locator('#amount-0').fill('333.33')]);
  const amounts = async (p) => {
    const rows = await p.locator('.roster tbody tr').count();
    const found = [];
    for (let i = 0; i < rows; i++) {
      await p.locator('.roster tbody tr .link').nth(i).click();
      found.push(await p.locator('#amount-0').inputValue());
    }
    return found.sort().join(' ');
  };
  await until(async () => (await page.locator('.roster tbody tr').count()) === 2 || (await other.locator('.roster tbody tr').count()) === 2);
  await until(async () => (await amounts(page)) === '222.22 333.33');
  await until(async () => (await amounts(other)) === '222.22 333.33');
  await press(page, 'Clear all');
  await says(other, /cleared in another window/);
  assert.equal(await other.locator('#amount-0').inputValue(), '');
  assert.equal(await other.locator('.roster').count(), 0);
  await other.close();
  await finish();
});

test('a case is saved with its letter, its photos and its notes, and comes back with them', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  await openExample(page, /Twelve charges/);
  await press(page, 'Read all and change the words');
  await page.locator('.paragraph-words').nth(3).fill('Words of my own.');
  const kind = page.locator('#letter-kind');
  await attachPhoto(page, '2026-09-29');
  await page.locator('.exhibit').waitFor();
  await page.locator('.exhibit input').last().fill('north side');
  const chosen = await kind.inputValue();
  const file = await saved(page);
  assert.match(file.name, /\.json$/);
  await press(page, 'Clear all');
  await choose(page, [asFile(file)]);
  await page.locator('.evidence').waitFor();
  await unfold(page, 'evidence');
  await page.locator('.exhibit').waitFor();
  assert.equal(await page.locator('.exhibit input').last().inputValue(), 'north side');
  await until(async () => (await page.locator('.paragraph-words').evaluateAll((all) => all.map((w) => w.value))).includes('Words of my own.'));
  assert.equal(await kind.inputValue(), chosen);
  const picture = page.locator('.exhibit img');
  await picture.scrollIntoViewIfNeeded();
  await until(() => picture.evaluate((i) => i.naturalWidth > 0));
  await finish();
});

test('a case opened from a report is saved as JSON under a name of its own, and nothing in it can run', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  const evil = '<script>window.ran = 1</script>';
  await choose(page, [{ name: 'evil.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify({ wearline: 1, title: evil, jurisdiction: 'US-WA', lines: [{ id: '1', text: evil, amount: '12.00', note: 'for the lawyer only' }] })) }]);
  await page.locator('.headline').waitFor();
  await unfold(page, 'takeaway');
  const report = await taken(page, 'Report');
  const content = await report.text();
  assert.match(report.name, /\.html$/);
  assert.ok(!content.includes('for the lawyer only'));
  assert.ok(!content.includes(evil));
  await press(page, 'Clear all');
  await choose(page, [{ name: report.name, mimeType: 'text/html', buffer: Buffer.from(content) }]);
  await says(page, /A report leaves out private notes/);
  const file = await saved(page);
  assert.match(file.name, /\.json$/);
  assert.ok(!file.content.includes('<'));
  assert.equal(JSON.parse(file.content).lines[0].text, evil);
  await finish();
});

test('opening a file again asks which to go on with; two cases never share a file name', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  await openExample(page, /Little is known/);
  await changeAmount(page, '10.00');
  const file = await saved(page);
  await choose(page, [asFile(file)]);
  await says(page, /open already, just as it is/);
  await changeAmount(page, '20.00');
  await choose(page, [asFile(file)]);
  await says(page, /open already, changed/);
  await page.locator('.roster tbody tr').nth(1).waitFor();
  await press(page, 'Keep both');
  assert.equal(await page.locator('#amount-0').inputValue(), '10.00');
  const names = [(await saved(page)).name];
  await page.locator('.roster tbody tr .link').filter({ hasNot: page.locator('[aria-current]') }).first().click();
  names.push((await saved(page)).name);
  assert.equal(new Set(names).size, 2, names.join(' '));
  await choose(page, [asFile(file)]);
  await says(page, /open already/);
  await press(page, 'Use the file');
  await until(async () => (await page.locator('.roster tbody tr').count()) === 2);
  await finish();
});

test('clear all leaves nothing: no pasted text, no picture address, nothing in any store', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  await openExample(page, /Twelve charges/);
  await keepHere(page);
  await attachPhoto(page);
  const picture = await page.locator('.exhibit img').getAttribute('src');
  await bringIn(page);
  await page.locator('#bring-text').fill('Secret statement 12.00');
  await page.getByRole('button', { name: 'Back to the case' }).click();
  await press(page, 'Clear all');
  await until(async () => (await page.locator('#amount-0').inputValue()) === '');
  assert.equal(await page.evaluate((address) => new Promise((done) => Object.assign(new Image(), { onload: () => done('there'), onerror: () => done('gone'), src: address })), picture), 'gone');
  await bringIn(page);
  assert.equal(await page.locator('#bring-text').inputValue(), '');
  const left = await page.evaluate(async () => {
    const names = (await indexedDB.databases()).map((d) => d.name);
    const entries = [];
    for (const name of names) {
      const db = await new Promise((done, fail) => Object.assign(indexedDB.open(name), { onsuccess: (e) => done(e.target.result), onerror: fail }));
      for (const store of db.objectStoreNames)
        entries.push(...(await new Promise((done) => (db.transaction(store).objectStore(store).getAllKeys().onsuccess = (e) => done(e.target.result)))));
      db.close();
    }
    const cached = [];
    for (const name of await caches.keys()) for (const { url } of await (await caches.open(name)).keys()) cached.push(url);
    return { entries, local: localStorage.length + sessionStorage.length, cookies: document.cookie, cached };
  });
  assert.deepEqual([left.entries, left.local, left.cookies], [[], 0, '']);
  for (const url of left.cached) assert.match(url, /\/(assets|generated)\/|\.(html|svg|webmanifest|js)(\?|$)|\/notices\.txt(\?|$)|\/deposits\/(\?|$)/);
  // The picture that is gone is missed, as it should be.
  await finish(/ERR_FILE_NOT_FOUND/);
});

test('a damaged store: the engine starts, what can be read is there, and it is said', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  const good = JSON.parse(example('all-fair').buffer.toString());
  const records = [5, 'text', { wearline: 1 }, { wearline: 1, front: -4, sheets: [{ subject: null }] }, { wearline: 1, front: 7, sheets: [null, { file: 'a.json', subject: good, exhibits: [7] }] }];
  for (const [i, record] of records.entries()) {
    // From a file that is no page: an open page would mend what it keeps.
    await page.goto(`${site.address}icon.svg`);
    await page.evaluate(
      (r) => new Promise((done, fail) => {
        const opening = indexedDB.open('keyval-store');
        opening.onupgradeneeded = () => opening.result.createObjectStore('keyval');
        opening.onsuccess = () => {
          const writing = opening.result.transaction('keyval', 'readwrite');
          writing.objectStore('keyval').put(r, 'wearline');
          writing.oncomplete = () => (opening.result.close(), done());
          writing.onerror = fail;
        };
      }),
      record,
    );
    await page.goto(site.address);
    await ready(page);
    await says(page, /could not be read and were left out/);
    if (i === records.length - 1) await page.locator('.headline').waitFor();
  }
  await press(page, 'Clear all');
  // A browser asks for a mark of a file that is no page.
  await finish(/404/);
});

test('a browser without room keeps the words, says that the photos are not kept, and never says it keeps what it does not', async () => {
  const { page, finish } = await open(browser, site.address);
  answering(page);
  // A store that takes no blobs, then none at all.
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (value, key) {
      const full = window.full || value.sheets?.some((s) => s.exhibits.length);
      if (full) throw new DOMException('full', 'QuotaExceededError');
      return put.call(this, value, key);
    };
  });
  await openExample(page, /Little is known/);
  await keepHere(page);
  await attachPhoto(page);
  await says(page, /no room in this browser for the photos/);
  await page.evaluate(() => (window.full = true));
  await changeAmount(page, '12.34');
  await says(page, /no more room/);
  assert.equal(await page.getByRole('button', { name: 'Keep on this device' }).getAttribute('aria-pressed'), 'false');
  await press(page, 'Keep on this device');
  await says(page, /no more room|does not allow/);
  assert.equal(await page.getByRole('button', { name: 'Keep on this device' }).getAttribute('aria-pressed'), 'false');
  await finish();
});
