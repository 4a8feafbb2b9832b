// In Chromium: the time of one assessment of forty lines, and the gzip size of all that the page's first load fetches.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';

const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..');
const ORIGIN = 'https://wearline.example';
const ROUNDS = 200; // samples
const EACH = 5; // assessments a sample, since the clock of a page is coarse

/** Answers every request from a folder, so that nothing leaves this machine and nothing else is timed. */
async function pageOf(browser, find) {
  const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  const seen = new Map();
  await page.route('**/*', async (route) => {
    const name = decodeURIComponent(new URL(route.request().url()).pathname);
    const file = find(name);
    if (!file || !fs.existsSync(file)) return route.fulfill({ status: 404, body: '' });
    seen.set(name, file);
    return route.fulfill({ path: file });
  });
  return { page, seen };
}

async function timeAssess(browser) {
  const generated = path.join(ROOT, 'site/src/generated');
  const index = JSON.parse(fs.readFileSync(path.join(generated, 'rules-index.json')));
  const blank = path.join(ROOT, 'tests/bench/blank.html');
  const { page } = await pageOf(browser, (name) =>
    name === '/' ? blank
    : name.startsWith('/rules/') ? path.join(ROOT, 'site/public/generated', name)
    : name.startsWith('/engine/') ? path.join(generated, name) : path.join(ROOT, 'tests/bench', name));
  await page.goto(`${ORIGIN}/`);
  return page.evaluate(async ({ files, rounds, each }) => {
    const text = async (name) => (await fetch(name)).text();
    const began = performance.now();
    const { default: createEngine } = await import('/engine/wearline.mjs');
    const engine = await createEngine();
    for (const file of files) engine.load(await text(`/rules/${file}`));
    const ready = performance.now() - began;
    const caseText = await text('/forty-lines.json');
    const times = [];
    let answer = '';
    for (let round = 0; round < rounds; round++) {
      const start = performance.now();
      for (let i = 0; i < each; i++) answer = engine.assess(caseText, '2026-09-01');
      times.push((performance.now() - start) / each);
    }
    times.sort((a, b) => a - b);
    const { errors } = JSON.parse(answer);
    return { ready, median: times[rounds >> 1], slow: times[Math.floor(rounds * 0.95)], errors };
  }, { files: [index.shared, index.reading, index.packs['US-WA'].file], rounds: ROUNDS, each: EACH });
}

async function weighFirstLoad(browser) {
  const dist = path.join(ROOT, 'site/dist');
  const { page, seen } = await pageOf(browser, (name) => path.join(dist, name === '/' ? 'index.html' : name));
  await page.goto(`${ORIGIN}/`, { waitUntil: 'networkidle' });
  const { packs } = JSON.parse(fs.readFileSync(path.join(ROOT, 'site/src/generated/rules-index.json')));
  const pack = packs['US-WA'].file;
  const name = [...seen.keys()].find((loaded) => loaded.endsWith(pack)) ?? `/generated/rules/${pack}`;
  seen.set(name, path.join(dist, name));
  return [...seen].map(([name, file]) => [name, gzipSync(fs.readFileSync(file), { level: 9 }).length]);
}

const kilobytes = (bytes) => (bytes / 1024).toFixed(1).padStart(7);

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
try {
  const { ready, median, slow, errors } = await timeAssess(browser);
  if (errors.length) throw new Error(JSON.stringify(errors[0]));
  console.log(`In Chromium, ${ROUNDS * EACH} assessments of 40 lines: median ${median.toFixed(2)} ms, 95 of 100 under ${slow.toFixed(2)} ms (aim: 2 ms)`);
  console.log(`In Chromium, engine and rules ready after ${ready.toFixed(0)} ms`);
  const sizes = await weighFirstLoad(browser);
  console.log('First load, gzip, KB:');
  for (const [name, size] of sizes.sort((a, b) => b[1] - a[1])) console.log(`${kilobytes(size)}  ${name}`);
  console.log(`${kilobytes(sizes.reduce((sum, [, size]) => sum + size, 0))}  in all (aim: 180)`);
} finally {
  await browser.close();
}
