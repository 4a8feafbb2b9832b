// Lighthouse, mobile, on the page as served: 100 in each category. The speed of a busy machine varies, so the best of three runs counts.
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

test('100 for performance, accessibility, best practices and search', { timeout: 300_000 }, async (t) => {
  const best = {};
  const reasons = {};
  for (let run = 0; run < 3; run++) {
    const { lhr } = await lighthouse(site.address, { port: chrome.port, logLevel: 'silent', output: 'json' });
    for (const [id, category] of Object.entries(lhr.categories)) {
      if (!(category.score <= best[id])) {
        best[id] = category.score;
        reasons[id] = category.auditRefs.filter((r) => r.weight && lhr.audits[r.id].score !== null && lhr.audits[r.id].score < 1).map((r) => `${r.id} ${lhr.audits[r.id].displayValue ?? ''}`);
      }
    }
    if (Object.values(best).every((score) => score === 1)) break;
  }
  t.diagnostic(JSON.stringify(best));
  assert.deepEqual(best, { performance: 1, accessibility: 1, 'best-practices': 1, seo: 1 }, JSON.stringify(reasons));
});
