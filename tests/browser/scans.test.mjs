// Worn pages handed over as pictures: of each, every sum is right or stands there to be checked or typed in.
// A sample of tests/reference/scans; measure-scans.mjs reads them all.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { pagesOf, pictureOf, sheetOf } from '../reference/scans/pages.mjs';
import { score } from '../reference/scans/score.mjs';
import { choose, found, foundFacts, goThere, reviewed } from './bring-in-files.mjs';
import { browser, open, site, withPage } from './harness.mjs';

withPage();

/** A typewriter's page sent by fax, pale print of a line printer, a table under a crease, a page seen from one side, two lists side by side. */
const sample = ['shaped-04', 'shaped-06', 'shaped-13', 'shaped-17', 'shaped-23', 'shaped-30'];

for (const page of pagesOf('shaped').filter((p) => sample.some((s) => p.name.startsWith(s))))
  test(`${page.layout}: ${page.wear}`, async () => {
    const sheet = await sheetOf(browser);
    const file = await pictureOf(sheet, page);
    await sheet.context().close();
    const { page: tab, finish } = await open(browser, site.address);
    await goThere(tab);
    await choose(tab, file);
    await reviewed(tab, 120_000);
    const confirmed = (await tab.getByText('That is the total the statement gives.').count()) > 0;
    const result = score(page, await found(tab), await foundFacts(tab), confirmed);
    assert.equal(result.whole, 1, JSON.stringify(result));
    await finish();
  });
