// After one visit the page works without a network, with the law of every place.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { browser, changeFacts, DIST, keepsFiles, open, openExample, ready, site, withPage } from './harness.mjs';

withPage();

test('a second visit needs no network: the page, an example, the law of another place, Spanish', async () => {
  const { page, context, finish } = await open(browser, site.address);
  await keepsFiles(page);
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  await openExample(page, /Twelve charges/);
  await changeFacts(page);
  await page.getByLabel('State or province of the home').selectOption('US-TX');
  await page.locator('.cautions li').first().waitFor();
  assert.equal(await page.getByText('could not be loaded').count(), 0);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.getByText('Cómo está su caso').waitFor();
  await finish();
});

test('the manifest names a start within the page and an icon that is there', () => {
  const manifest = JSON.parse(fs.readFileSync(path.join(DIST, 'manifest.webmanifest'), 'utf8'));
  assert.equal(manifest.start_url, './');
  assert.equal(manifest.display, 'standalone');
  for (const icon of manifest.icons) assert.ok(fs.existsSync(path.join(DIST, icon.src)));
});

test('the one file is at most 2 MB and names no other file', () => {
  const text = fs.readFileSync(path.join(DIST, 'wearline.html'), 'utf8');
  assert.ok(text.length <= 2_000_000, `${text.length}`);
  const outside = text.replace(/(<script [^>]*>).*?(<\/script>)/gs, '$1$2').replace(/(<style>).*?(<\/style>)/gs, '$1$2');
  assert.ok(outside.length < 30_000, 'no script but the packed one and its starter; packed notices');
  assert.equal(outside.match(/<script/g).length, 3);
  assert.doesNotMatch(outside, /<(?:script|link|img)[^>]+(?:src|href)=/);
  assert.match(text, /script-src(?: 'sha256-[^']+')+ 'wasm-unsafe-eval'/);
});
