// Lighthouse, mobile, on the page as served: 100 for what the page is. How fast it is depends on the machine: tests/bench prints that.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import * as chromeLauncher from 'chrome-launcher';
import lighthouse from 'lighthouse';
import { serve } from './harness.mjs';

let site, chrome;
before(async () => {
  site = await serve();
  chrome = await chromeLauncher.launch({
    chromePath: process.env.WEARLINE_CHROMIUM ?? '/usr/bin/chromium',
    chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
});
after(async () => {
  chrome.kill();
  await site.close();
});

test('100 for accessibility, best practices and search', { timeout: 300_000 }, async () => {
  const { lhr } = await lighthouse(site.address, {
    port: chrome.port, logLevel: 'silent', output: 'json', onlyCategories: ['accessibility', 'best-practices', 'seo'],
  });
  const scores = {};
  const reasons = [];
  for (const [id, { score, auditRefs }] of Object.entries(lhr.categories)) {
    scores[id] = score;
    const short = auditRefs.filter((r) => r.weight && lhr.audits[r.id].score !== null && lhr.audits[r.id].score < 1);
    reasons.push(...short.map((r) => `${r.id} ${lhr.audits[r.id].displayValue ?? ''}`));
  }
  assert.deepEqual(scores, { accessibility: 1, 'best-practices': 1, seo: 1 }, reasons.join('; '));
});
