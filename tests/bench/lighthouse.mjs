// How fast the page is as Lighthouse sees it (mobile, as served), three runs. Printed only: the figure is the machine's as much as the page's.
import * as chromeLauncher from 'chrome-launcher';
import lighthouse from 'lighthouse';
import { serve } from '../browser/harness.mjs';

const RUNS = 3;
const site = await serve();
const chrome = await chromeLauncher.launch({
  chromePath: process.env.WEARLINE_CHROMIUM ?? '/usr/bin/chromium',
  chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
try {
  for (let run = 1; run <= RUNS; run++) {
    const { lhr } = await lighthouse(site.address, { port: chrome.port, logLevel: 'silent', output: 'json', onlyCategories: ['performance'] });
    const shown = (id) => lhr.audits[id].displayValue.replace(/\u00a0/g, ' ');
    console.log(
      `Lighthouse, mobile, run ${run} of ${RUNS}: speed ${Math.round(lhr.categories.performance.score * 100)} of 100 (aim: 100 on a quiet machine), ` +
        `first paint ${shown('first-contentful-paint')}, largest ${shown('largest-contentful-paint')}, blocked ${shown('total-blocking-time')}`,
    );
  }
} finally {
  chrome.kill();
  await site.close();
}
