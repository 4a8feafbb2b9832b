// Access beyond what axe can see: zoom, target size, forced colours, reduced motion, names and live messages for a screen reader.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, changeFacts, fitsWidth, open, openExample, openFacts, openRow, row, site, typeCharge, withPage } from './harness.mjs';

withPage();

/** Opens the things a person can open on the first charge. */
async function openAll(page) {
  await openExample(page, /Twelve charges/);
  await openFacts(page, 3);
  await page.locator('details').evaluateAll((all) => all.forEach((d) => (d.open = true)));
}

// WCAG 2.2, 1.4.4 and 1.4.10: text to 200 %, and content at 320 CSS pixels, without loss and without scrolling sideways.
test('at 200 % text size nothing sticks out', async () => {
  for (const width of [640, 1280]) {
    const { page, finish } = await open(browser, site.address, { viewport: { width, height: 800 } });
    await openAll(page);
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    assert.ok(await fitsWidth(page), `${width}`);
    await finish();
  }
});

// WCAG 2.2, 2.5.8: targets of at least 24 by 24 CSS pixels, or far enough from others; links within a sentence are exempt.
test('everything that can be pressed is large enough or stands apart', async () => {
  const { page, finish } = await open(browser, site.address, { viewport: { width: 320, height: 800 } });
  await openAll(page);
  const small = await page.evaluate(() => {
    const pressable = 'button, a[href], input:not([type=hidden]), select, textarea, summary, [role=option]';
    const shown = [...document.querySelectorAll(pressable)].filter((e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest('.calendar input, .file-tool input, .skip'));
    const boxes = shown.map((e) => {
      // A radio button or box is pressed by its label, too.
      const r = (e.matches('input[type=radio], input[type=checkbox]') ? (e.closest('label') ?? e) : e).getBoundingClientRect();
      return { e, r, x: r.x + r.width / 2, y: r.y + r.height / 2 };
    });
    const inSentence = (e) => e.matches('a, .link') && getComputedStyle(e).display === 'inline' && e.parentElement.textContent.trim() !== e.textContent.trim();
    return boxes
      .filter(({ e, r }) => r.width > 0 && (r.width < 24 || r.height < 24) && !inSentence(e))
      .filter((a) => boxes.some((b) => b.e !== a.e && !b.e.contains(a.e) && !a.e.contains(b.e) && Math.hypot(a.x - b.x, a.y - b.y) < 24))
      .map(({ e, r }) => `${e.tagName} ${e.className} ${Math.round(r.width)}x${Math.round(r.height)} ${e.textContent.trim().slice(0, 40)}`);
  });
  assert.deepEqual(small, []);
  await finish();
});

test('in forced colours the verdicts, the pictures and what is chosen can still be told apart', async () => {
  const { page, finish } = await open(browser, site.address, { forcedColors: 'active' });
  await openExample(page, /Twelve charges/);
  const fill = await page.locator('.wear-line-fair').nth(2).evaluate((p) => getComputedStyle(p).fill);
  const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.notEqual(fill, paper);
  await changeFacts(page);
  const chosen = page.locator('.one-of-word input:checked + span').first();
  const other = page.locator('.one-of-word input:not(:checked) + span').first();
  const edge = (l) => l.evaluate((e) => getComputedStyle(e).borderBottomWidth);
  assert.notEqual(await edge(chosen), await edge(other));
  await finish();
});

test('who asks for less motion gets none', async () => {
  const { page, finish } = await open(browser, site.address, { reducedMotion: 'reduce' });
  assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior), 'auto');
  await finish();
});

test('the result is announced as it changes, and messages are spoken', async () => {
  const { page, finish } = await open(browser, site.address);
  await typeCharge(page, 1, 'Small nail holes', '90');
  await page.getByLabel('Deposit', { exact: true }).fill('500');
  const live = page.locator('[aria-live=polite][aria-atomic=true]');
  assert.equal(await live.count(), 1);
  await live.getByText(/\$500/).first().waitFor();
  // Typing on is not announced sign by sign: only what stands once it rests.
  await page.evaluate(() => {
    window.heard = [];
    new MutationObserver(() => window.heard.push(document.querySelector('[aria-live=polite][aria-atomic=true]').textContent)).observe(document.querySelector('[aria-live=polite][aria-atomic=true]'), { childList: true, characterData: true, subtree: true });
  });
  const deposit = page.getByLabel('Deposit', { exact: true });
  await deposit.fill('');
  await deposit.pressSequentially('2700', { delay: 90 });
  await live.getByText(/\$2,700/).waitFor();
  const heard = (await page.evaluate(() => window.heard)).filter((t) => t.trim());
  assert.ok(heard.length >= 1 && heard.every((t) => t.includes('$2,700')), heard.join(' | '));
  await openRow(page, 1);
  await row(page, 1).getByRole('button', { name: /^Take it out/ }).click();
  await page.getByRole('status').getByText(/Taken out: Small nail holes/).waitFor();
  await finish();
});

test('what a screen reader is told of a charge names its words, sums and states', async () => {
  const { page, finish } = await open(browser, site.address);
  await openExample(page, /Carpet and scuffs/);
  const tree = await row(page, 1).ariaSnapshot();
  for (const part of [/textbox "Charge 1, in the statement’s words"/, /textbox "Sum of charge 1"/, /button "(Ask first|Partly fair) ?\. .+ of charge 1"/])
    assert.match(tree, part);
  // The verdict is told with either box.
  for (const box of ['#text-0', '#amount-0']) assert.match(await page.locator(box).getAttribute('aria-describedby'), /^verdict-1$/);
  await openFacts(page, 1);
  const facts = await row(page, 1).locator('.facts').ariaSnapshot();
  for (const part of [/combobox "Which thing is it about\?"/, /group "What was wrong with it\?"/, /radio "Pet damage/, /textbox "Put in or last done"/]) assert.match(facts, part);
  const headings = await page.locator('h1, h2, h3, h4').evaluateAll((all) => all.filter((h) => h.checkVisibility()).map((h) => Number(h.tagName[1])));
  assert.equal(headings.filter((n) => n === 1).length, 1);
  headings.forEach((n, i) => assert.ok(i === 0 || n <= headings[i - 1] + 1, `heading ${i} jumps from ${headings[i - 1]} to ${n}`));
  await finish();
});
