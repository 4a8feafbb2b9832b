// Before moving out, on a phone held in one hand: the walk through the home, the answers, the list, the inspection, the leaving day, all of
// it without a network; then the same case with the statement that came, and the landlord's walk-through.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test as whole } from 'node:test';
import { native } from '../wasm/engines.mjs';
import { axe, browser, fitsWidth, ICAL, keepsFiles, open, openRow, OUT, photo, press, ready, row, site, still, taken, TODAY, typeCharge, until, withPage } from './harness.mjs';

withPage();
const test = (name, run) => whole(name, { timeout: 180_000 }, run);
const phone = { viewport: { width: 375, height: 740 }, hasTouch: true, isMobile: true, reducedMotion: 'reduce' };

const shot = async (page, name) => {
  fs.mkdirSync(OUT, { recursive: true });
  await page.screenshot({ path: path.join(OUT, `walk-${name}.png`), fullPage: true });
};
const side = (page, name) => page.getByRole('radio', { name, exact: true });
const room = (page, name) => page.locator('.walk-room', { hasText: name });
const thing = (page, roomName, name) => room(page, roomName).locator('.walk-thing', { has: page.getByRole('heading', { name, exact: true }) });
const say = (page, roomName, name, state) => thing(page, roomName, name).locator('.walk-states').last().getByRole('radio', { name: state, exact: true }).tap();
const fault = (page, roomName, name, what) => thing(page, roomName, name).getByRole('radio', { name: what }).first().tap();
const item = (page, name) => page.locator('.walk-item', { hasText: name });
async function type(page, label, text, within = page) {
  await within.getByRole('textbox', { name: label, exact: true }).first().tap();
  await page.keyboard.type(text, { delay: 10 });
  await page.keyboard.press('Tab');
}
/** The letter as it is printed. */
const letterSays = (page, words) =>
  until(async () => (await page.locator('.letter').textContent()).includes(words));
async function begin(page, place = 'US-CA') {
  await side(page, 'still living there').check();
  await page.locator('#place').selectOption(place);
  await page.locator('#walk-rooms').waitFor();
  await type(page, 'Moving out on', '12/20/2026');
  await still(page);
}
const noTargetBelow = (page, within) =>
  page.evaluate((selector) =>
    [...document.querySelectorAll(`${selector} :is(button, a, input, select, summary)`)].flatMap((e) => {
      if (!e.checkVisibility() || e.getAttribute('aria-hidden')) return [];
      const box = (e.closest('label') ?? e).getBoundingClientRect();
      return box.height > 0 && (box.height < 43.5 || box.width < 43.5) ? [`${e.tagName} ${e.textContent || e.name || e.id} ${Math.round(box.width)}x${Math.round(box.height)}`] : [];
    }), within);

test('a phone without a network: the walk in taps, three answers, the list, the request, the days, the leaving day', async () => {
  const { page, context, finish } = await open(browser, site.address, phone);
  await keepsFiles(page);
  await context.setOffline(true);
  await page.reload();
  await ready(page);

  await begin(page);
  await type(page, 'Moved in', '12/15/2022');
  await page.getByRole('group', { name: 'Was the home built before 1978?' }).getByRole('radio', { name: 'No', exact: true }).tap();
  await page.getByRole('button', { name: /^A usual home/ }).tap();
  assert.equal(await page.locator('.walk-room').count(), 5);
  await shot(page, 'room');
  assert.ok(await fitsWidth(page));
  assert.deepEqual(await noTargetBelow(page, '.walk'), []);
  assert.deepEqual(await axe(page), []);

  // Living room: light scuffs, a carpet with a stain, the rest fine.
  await say(page, 'Living room', 'Paint inside', 'Worn');
  await fault(page, 'Living room', 'Paint inside', /^Light scuffs/);
  await room(page, 'Living room').getByRole('button', { name: 'Carpet', exact: true }).tap();
  await say(page, 'Living room', 'Carpet', 'Damaged');
  await fault(page, 'Living room', 'Carpet', /^Stains/);
  await thing(page, 'Living room', 'Carpet').getByLabel('How did it come about?').selectOption('tenant');
  await type(page, 'When new', '2021', thing(page, 'Living room', 'Carpet'));
  const jpeg = await photo(page, '2026-11-24');
  await thing(page, 'Living room', 'Carpet').locator('.walk-photo input').setInputFiles([{ name: 'stain.jpg', mimeType: 'image/jpeg', buffer: jpeg }]);
  await thing(page, 'Living room', 'Carpet').getByText('1 photo, Nov 24, 2026, 10:30').waitFor();
  await room(page, 'Living room').getByRole('button', { name: 'Everything else here is fine' }).tap();
  await shot(page, 'seen');
  assert.deepEqual(await noTargetBelow(page, '.walk'), []);
  await room(page, 'Living room').getByRole('button', { name: /^Next room: Bedroom/ }).tap();
  await say(page, 'Bedroom', 'Windows', 'Damaged');
  await fault(page, 'Bedroom', 'Windows', /^Glass broken/);
  await room(page, 'Bedroom').getByRole('button', { name: /^Next room: Kitchen/ }).tap();
  await say(page, 'Kitchen', 'Stove and oven', 'Dirty');
  await fault(page, 'Kitchen', 'Stove and oven', /^Left dirty/);
  await still(page);

  // Three answers, each with its reason; the money as a share until somebody names a price.
  await item(page, 'Paint inside, Living room').getByText('Leave it.').waitFor();
  const stove = item(page, 'Stove and oven, Kitchen');
  await stove.getByText('Put it right.').waitFor();
  await stove.getByText('Never mix bleach').waitFor();
  const window = item(page, 'Windows, Bedroom');
  await window.getByText('Do not touch it.', { exact: false }).waitFor();
  const carpet = item(page, 'Carpet, Living room');
  await carpet.getByText(/\d+% to \d+% of what it costs|\d+% of what it costs/).waitFor();
  assert.equal(await carpet.getByText('$').count(), 0, 'no price that nobody named');
  await carpet.locator('summary').tap();
  await type(page, 'A price somebody asks for it', '400', carpet);
  // The sum is the program's own, for the same thing as a charge on the day of moving out.
  const charge = { id: '1', amount: '400.00', kind: 'damage', element: 'carpet', finding: 'stains', installed: '2021', cause: 'tenant' };
  const asCharge = { wearline: 1, jurisdiction: 'US-CA', side: 'tenant', tenancy: { began: '2022-12-15', possessionReturned: '2026-12-20' }, lines: [charge] };
  const { low, high } = JSON.parse(native(JSON.stringify(asCharge), TODAY).text).lines[0].fair;
  assert.ok(Number(high) > Number(low));
  await carpet.getByText(`$${low} to $${high} of the $400.00 asked`, { exact: false }).waitFor();
  await shot(page, 'list');
  assert.deepEqual(await noTargetBelow(page, '.walk'), []);
  assert.deepEqual(await axe(page), []);
  await stove.getByRole('checkbox', { name: /^Put right/ }).tap();
  await item(page, 'Stove and oven, Kitchen').getByText('Put right November 25, 2026.').waitFor();

  const list = await taken(page, 'Save the list as a file');
  assert.match(list.name, /walk-through\.html$/);
  const file = await list.text();
  assert.match(file, /Carpet, Living room/);
  assert.match(file, /of the \$400\.00 asked/);
  assert.match(file, /type="checkbox"/);
  assert.doesNotMatch(file, /<script/);

  // California: not earlier than two weeks before the end (Civ. Code 1950.5(f)(1)); December 20 less 14 days is December 6, a Sunday.
  const part = page.locator('section', { has: page.locator('#walk-inspection') });
  await part.getByText('It may be held from Sunday, December 6, 2026 until you leave on Sunday, December 20, 2026.').waitFor();
  const days = ICAL.parse(await (await taken(page, 'Days for your calendar')).text());
  const events = new ICAL.Component(days).getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
  const inspection = events.find((e) => /Inspection/.test(e.summary));
  assert.equal(inspection.startDate.toString(), '2026-12-06');
  assert.equal(inspection.endDate.toString(), '2026-12-21', 'through the leaving day: the end is the day after');
  assert.equal(inspection.component.getAllSubcomponents('valarm').length, 0, 'a window is no deadline');
  assert.equal(events.find((e) => /^Leaving day/.test(e.summary)).startDate.toString(), '2026-12-20');
  await part.getByRole('button', { name: 'Write the request' }).tap();
  await letterSays(page, 'Please look at the home with me before I move out');

  await page.getByRole('checkbox', { name: 'Hand over all keys and get a dated keys receipt' }).tap();
  assert.match(await (await taken(page, 'Print a keys receipt')).text(), /Keys, fobs, remotes/);
  await shot(page, 'whole');
  await finish(/ERR_INTERNET_DISCONNECTED/);
});

test('the same case turns into the check: what was seen stands beside what is charged, and in the letter', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await begin(page);
  await page.getByRole('button', { name: 'Living room', exact: true }).tap();
  await say(page, 'Living room', 'Paint inside', 'Fine');
  await room(page, 'Living room').getByRole('button', { name: 'Carpet', exact: true }).tap();
  await say(page, 'Living room', 'Carpet', 'Dirty');
  await fault(page, 'Living room', 'Carpet', /^Stains/);
  await item(page, 'Carpet, Living room').getByRole('checkbox', { name: /^Put right/ }).tap();
  await page.getByRole('group', { name: 'Did the landlord give a written list?' }).getByRole('radio', { name: 'Yes', exact: true }).tap();

  const saved = await taken(page, 'Save this case: it is your proof later');
  const kept = JSON.parse(await saved.text());
  assert.equal(kept.wearline, 2);
  assert.deepEqual(kept.walkThrough.items.map((t) => [t.element, t.conditionAtMoveOut, t.finding ?? null, t.remedied ?? null]), [
    ['interior-paint', 'fine', null, null], ['carpet', 'dirty', 'stains', '2026-11-25'],
  ]);

  await press(page, 'I moved out, nothing came yet');
  await page.locator('#text-0').waitFor();
  assert.ok(await side(page, 'the tenant').isChecked());
  await type(page, 'Deposit', '1500');
  await typeCharge(page, 1, 'Paint living room', '300');
  await typeCharge(page, 2, 'Carpet stains living room', '200');
  await page.getByText('Your walk-through has notes on 2 of these charges.').waitFor();
  await openRow(page, 1);
  await row(page, 1).getByText('Paint inside, Living room: fine on November 25, 2026.').waitFor();
  await shot(page, 'beside');
  await press(page, 'Use them all');
  await row(page, 1).getByText('Used as proof in the letter.').waitFor();
  await openRow(page, 2);
  await row(page, 2).getByText('Carpet, Living room: put right November 25, 2026.', { exact: false }).waitFor();
  await row(page, 2).getByText('not on the landlord’s inspection list', { exact: false }).waitFor();
  await still(page);
  // The tenant left on December 20; a letter before that day would be another one.
  await page.clock.setFixedTime(new Date('2027-01-20T12:00:00-08:00'));
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await letterSays(page, 'walked through the home on November 25, 2026');
  await letterSays(page, '1. Paint living room: in good order.');
  await letterSays(page, '2. Carpet stains living room: put right on November 25, 2026.');
  assert.deepEqual(await axe(page), []);
  await finish();
});

test('the landlord’s walk-through: the itemized list with fair shares, own upkeep apart; keyed, and in Spanish', async () => {
  const { page, finish } = await open(browser, site.address);
  await side(page, 'the landlord').check();
  await press(page, 'Walk through the home before the end');
  await page.locator('#walk-rooms').waitFor();
  await press(page, 'Bathroom');
  // With the keyboard alone: from a state to the next by arrow, chosen as it is reached.
  const states = thing(page, 'Bathroom', 'Tub and shower').locator('.walk-states input');
  await states.first().focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowRight');
  assert.ok(await states.nth(1).isChecked());
  await page.keyboard.press('ArrowRight');
  await thing(page, 'Bathroom', 'Tub and shower').getByRole('radio', { name: /^Chip/ }).click();
  await thing(page, 'Bathroom', 'Toilet').getByLabel('Worn').check();
  await still(page);
  const list = page.locator('section', { has: page.locator('#walk-list') });
  await list.getByRole('heading', { name: /^May be charged/ }).waitFor();
  await list.getByRole('heading', { name: /^Your own upkeep/ }).waitFor();
  assert.equal(await list.getByText('Put it right', { exact: false }).count(), 0);
  const file = await (await taken(page, 'Save the list as a file')).text();
  assert.match(file, /Itemized walk-through list/);
  assert.match(file, /Your own upkeep/);
  assert.equal(await page.locator('#walk-leaving').count(), 0);
  await press(page, 'Español');
  await page.getByRole('heading', { name: 'La lista detallada' }).waitFor();
  assert.equal(await page.getByText(/\[page\./).count(), 0);
  assert.deepEqual(await axe(page), []);
  await until(async () => (await page.locator('.walk-item').count()) === 2);
  await finish();
});

test('an example for each side opens, is drawn whole, says its dangers, and is saved as it came', async () => {
  for (const options of [phone, {}]) {
    const { page, finish } = await open(browser, site.address, options);
    const show = async (title) => {
      await page.getByRole('button', { name: title }).click();
      await still(page);
    };
    await show(/end of the year/);
    await page.locator('#walk-list').waitFor();
    await page.getByText('Ask for it by Wednesday, December 16, 2026.').waitFor();
    await page.getByText('It may be held from Saturday, December 26, 2026 to Tuesday, January 5, 2027.').waitFor();
    await item(page, 'Blinds and curtains, Living room').getByText('Leave it.').waitFor();
    // Two columns, as there is a move-in record.
    await page.locator('.walk-room-name', { hasText: 'Living room' }).click();
    await page.getByRole('radiogroup', { name: 'Carpet, Living room: at move-in' }).waitFor();
    assert.ok(await fitsWidth(page));
    assert.deepEqual(await axe(page), []);
    await shot(page, options.isMobile ? 'example-phone' : 'example-desktop');
    const saved = JSON.parse(await (await taken(page, 'Save this case: it is your proof later')).text());
    const came = JSON.parse(fs.readFileSync(new URL('../../examples/before-moving-out.json', import.meta.url)));
    delete saved.page;
    assert.deepEqual(saved, came);
    await page.reload();
    await ready(page);
    // The statement that came is brought in to the same case.
    await show(/end of the year/);
    await press(page, 'The statement came');
    await page.locator('textarea').first().fill('Deposit deductions\nLiving room carpet stains $180.00\nBedroom window crack $95.00\nTotal $275.00\n');
    await page.getByRole('button', { name: /^Read/ }).first().click();
    await page.getByRole('button', { name: /^Accept/ }).click();
    await page.getByText('Your walk-through has notes on 2 of these charges.').waitFor();
    await press(page, 'Use them all');
    await openRow(page, 1);
    await row(page, 1).getByText('Carpet, Living room: dirty on November 24, 2026.').waitFor();
    await page.reload();
    await ready(page);
    await show(/landlord’s walk-through/);
    await page.getByRole('heading', { name: 'The itemized list' }).waitFor();
    await item(page, 'Wood, laminate or vinyl floor, Living room').getByText(/of the \$640\.00/).waitFor();
    assert.deepEqual(await axe(page), []);
    await page.reload();
    await ready(page);
    await show(/put right, Cedar Lane/);
    await openRow(page, 2);
    await row(page, 2).getByText('Stove and oven, Kitchen: put right October 12, 2026.').waitFor();
    await row(page, 2).locator('.row-hazards').getByText('Never mix bleach', { exact: false }).waitFor();
    await letterSays(page, 'Repaint living room: worn by ordinary use, not damaged.');
    assert.deepEqual(await axe(page), []);
    await finish();
  }
});

// Seconds of a keystroke-level model as in phone.test.mjs; how long a look at a thing takes is our own estimate.
const seconds = { tap: 1.2, key: 0.35, look: 6, photo: 8 };

test('two rooms, a bath and a kitchen, every thing looked at and eight of them wrong, take at most ten minutes of taps and looks', async () => {
  const { page, finish } = await open(browser, site.address, phone);
  await begin(page);
  let taps = 0, keys = 0, looks = 0, photos = 0;
  const tap = async (locator) => {
    taps++;
    await locator.tap();
  };
  for (const kind of ['Living room', 'Bedroom', 'Kitchen', 'Bathroom']) {
    await tap(page.locator('.walk-adding').getByRole('button', { name: kind, exact: true }));
    const here = room(page, kind);
    for (const choice of await here.locator('.walk-choice button').filter({ hasText: /Wood|Tile/ }).all().then((all) => all.slice(0, 1))) await tap(choice);
    const all = await here.locator('.walk-thing').count();
    for (let i = 0; i < all; i++) {
      const one = here.locator('.walk-thing').nth(i);
      const wrong = i === 1 || i === 2;
      looks++;
      await tap(one.getByRole('radio', { name: wrong ? 'Damaged' : 'Fine', exact: true }).last());
      if (!wrong) continue;
      await tap(one.locator('.walk-fault input').first());
      await one.getByLabel('How did it come about?').selectOption('tenant');
      taps += 3; // the list of the phone, and into the year
      await type(page, 'When new', '2019', one);
      keys += 5;
      photos++;
    }
    await here.getByText('all seen').waitFor();
  }
  const time = taps * seconds.tap + keys * seconds.key + looks * seconds.look + photos * seconds.photo;
  fs.mkdirSync(OUT, { recursive: true });
  fs.writeFileSync(path.join(OUT, 'walk.txt'), `four rooms, ${looks} things, ${photos} wrong: ${taps} taps, ${keys} keys, ${Math.round(time)} s by the model\n`);
  assert.ok(looks >= 38 && time <= 600, `${looks} things, ${Math.round(time)} s`);
  await until(async () => (await page.locator('.walk-item').count()) === photos);
  // On paper the list alone.
  await page.evaluate(() => (document.body.dataset.print = 'walk'));
  await page.emulateMedia({ media: 'print' });
  assert.ok(await page.locator('.walk-list').isVisible());
  for (const gone of ['.masthead', '#walk-rooms', '.walk-tools', '.strip', '.walk-quote']) assert.equal(await page.locator(gone).first().isVisible(), false, gone);
  await finish();
});
