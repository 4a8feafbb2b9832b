// The worn pages: which layout, which account, what happened to it. Drawn by Chromium at 288 dots an inch, worn on a canvas, kept in
// build/scans until one of the files here changes.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { ROOT } from '../../browser/harness.mjs';
import { account } from './contents.mjs';
import { layouts as held } from './layouts-held.mjs';
import { layouts as shaped } from './layouts-shaped.mjs';
import { worn } from './wear.mjs';

const HERE = path.join(ROOT, 'tests/reference/scans');
const KEPT = path.join(ROOT, 'build/scans');

const scan = (x) => ['dpi', { x }];
const fax = [['dpi', { x: 200, y: 100 }], ['threshold', { at: 150 }], ['specks', { share: 0.0012 }]];
const phone = (x) => [['dpi', { x }], ['blur', { by: 0.6 }], ['noise', { most: 14 }]];
const png = ['image/png'];
const jpeg = (quality) => ['image/jpeg', quality];

/** [layout, what the account has, steps, kind of file] */
const pages = {
  shaped: [
    ['typewriter', {}, [scan(200)], png],
    ['typewriter', { rows: 9 }, [['ribbon'], scan(150), ['noise', { most: 30 }]], jpeg(0.7)],
    ['typewriter', { rows: 8 }, [['ribbon', { most: 0.6 }], scan(110), ['blur', { by: 0.5 }], ['askew', { degrees: 2 }]], jpeg(0.6)],
    ['typewriter', { rows: 5 }, fax, png],
    ['printer', { rows: 7 }, [['pins', { pitch: 4 }], scan(200)], png],
    ['printer', { rows: 6 }, [['pins', { pitch: 5 }], ['fade', { ink: 90 }], scan(150), ['noise', { most: 20 }]], jpeg(0.8)],
    ['printer', { rows: 10 }, [scan(150), ['shadow']], jpeg(0.8)],
    ['leaders', { rows: 6 }, [scan(150)], png],
    ['leaders', { rows: 9 }, [...phone(120), ['askew', { degrees: -3 }]], jpeg(0.7)],
    ['leaders', { rows: 7 }, fax, png],
    ['table', { rows: 8 }, [scan(200)], png],
    ['table', { rows: 6 }, [...phone(130), ['lean', { far: 0.9 }]], jpeg(0.75)],
    ['table', { rows: 9 }, [scan(150), ['crease', { at: 0.24 }], ['shadow', { dark: 0.35 }]], jpeg(0.8)],
    ['table', { rows: 5 }, fax, png],
    ['wide', { rows: 7 }, [scan(100)], png],
    ['wide', { rows: 9 }, [...phone(110), ['askew', { degrees: 4 }], ['light', { by: 0.6 }]], jpeg(0.7)],
    ['wide', { rows: 8 }, [...phone(110), ['lean', { far: 0.86, side: 'left' }]], jpeg(0.7)],
    ['small', { rows: 8 }, [scan(200)], png],
    ['small', { rows: 6 }, [scan(150), ['noise', { most: 24 }]], jpeg(0.7)],
    ['small', { rows: 7 }, [...phone(170), ['askew', { degrees: 1.5 }]], jpeg(0.8)],
    ['minus', { rows: 6, credits: 1 }, [scan(150)], png],
    ['minus', { rows: 7, credits: 2 }, [['fade', { ink: 150, side: 0.4 }], scan(150), ['noise', { most: 20 }]], jpeg(0.8)],
    ['columns', { rows: 10 }, [scan(200)], png],
    ['columns', { rows: 8 }, [...phone(130), ['shadow']], jpeg(0.8)],
    ['letter', { rows: 5 }, [scan(150), ['blur', { by: 0.8 }]], jpeg(0.6)],
    ['letter', { rows: 6 }, [...phone(110), ['wave', { by: 5 }]], jpeg(0.7)],
    ['counted', { rows: 6, counted: true }, [scan(200)], png],
    ['counted', { rows: 5, counted: true }, [...phone(130), ['askew', { degrees: -2 }]], jpeg(0.6)],
    ['list', { rows: 4 }, [scan(90)], jpeg(0.4)],
    ['list', { rows: 6 }, [['fade', { ink: 165, paper: 225, side: 0.5 }], scan(150), ['specks', { share: 0.0004, size: 2 }]], jpeg(0.8)],
    ['list', { rows: 5 }, [...phone(80)], jpeg(0.5)],
    ['wide', { rows: 6 }, [['fade', { ink: 175, paper: 240 }], scan(120), ['blur', { by: 0.6 }], ['noise', { most: 12 }]], jpeg(0.7)],
    ['list', { rows: 7 }, [...phone(70)], jpeg(0.4)],
    ['list', { rows: 6 }, fax, png],
    ['typewriter', { rows: 7 }, [['blot', { x: 0.8, y: 0.235, w: 0.09, h: 0.05 }], scan(150)], jpeg(0.8)],
    ['table', { rows: 7 }, [...phone(90), ['lean', { far: 0.86, side: 'right' }], ['light', { by: 0.5 }]], jpeg(0.6)],
    ['printer', { rows: 8 }, [['pins', { pitch: 4.5 }], ...fax], png],
    ['minus', { rows: 6, credits: 1 }, fax, png],
    ['leaders', { rows: 8 }, [...phone(90), ['askew', { degrees: 7 }]], jpeg(0.6)],
    ['small', { rows: 7 }, [scan(110), ['noise', { most: 20 }]], jpeg(0.6)],
    ['wide', { rows: 6 }, [['blot', { x: 0.86, y: 0.15, w: 0.1, h: 0.035 }], ...phone(100), ['shadow']], jpeg(0.6)],
    ['list', { rows: 5 }, [['fade', { ink: 195, paper: 240, side: 0.5 }], scan(110), ['noise', { most: 16 }]], jpeg(0.6)],
  ],
  held: [
    ['underlined', { rows: 6 }, [scan(200)], png],
    ['underlined', { rows: 8 }, [['ribbon', { most: 0.55 }], scan(130), ['noise', { most: 24 }]], jpeg(0.7)],
    ['underlined', { rows: 7 }, fax, png],
    ['wideType', { rows: 7 }, [['ribbon'], scan(150)], jpeg(0.7)],
    ['wideType', { rows: 6 }, [...phone(120), ['askew', { degrees: 2.5 }]], jpeg(0.6)],
    ['wideType', { rows: 9 }, [scan(110), ['crease', { at: 0.3, shift: 2 }]], jpeg(0.8)],
    ['first', { rows: 6 }, [scan(150)], png],
    ['first', { rows: 7 }, [...phone(130), ['lean', { far: 0.9, side: 'right' }]], jpeg(0.7)],
    ['first', { rows: 8 }, fax, png],
    ['shaded', { rows: 7 }, [scan(200)], png],
    ['shaded', { rows: 6 }, [...phone(140), ['shadow', { dark: 0.4 }]], jpeg(0.75)],
    ['shaded', { rows: 8 }, [scan(110)], jpeg(0.5)],
    ['rooms', { rows: 8 }, [scan(150)], png],
    ['rooms', { rows: 7 }, [...phone(120), ['askew', { degrees: -5 }], ['light', { by: 0.55 }]], jpeg(0.7)],
    ['rooms', { rows: 9 }, [...phone(140), ['lean', { far: 0.87 }]], jpeg(0.7)],
    ['slip', { rows: 6 }, [['fade', { ink: 140, paper: 232, side: 0.3 }], scan(150), ['blur', { by: 0.7 }]], jpeg(0.8)],
    ['slip', { rows: 8 }, [['fade', { ink: 165, paper: 238, side: 0.2 }], ...phone(140)], jpeg(0.7)],
    ['slip', { rows: 5 }, [['pins', { pitch: 4 }], scan(200)], png],
    ['sideBySide', { rows: 8 }, [scan(200)], png],
    ['sideBySide', { rows: 10 }, [...phone(140), ['askew', { degrees: 1 }]], jpeg(0.75)],
    ['spanish', { rows: 6 }, [scan(150), ['noise', { most: 20 }]], jpeg(0.7)],
    ['spanish', { rows: 7 }, [...phone(110), ['wave', { by: 6 }]], jpeg(0.7)],
    ['fine', { rows: 9 }, [scan(200)], png],
    ['fine', { rows: 7 }, [...phone(170), ['shadow', { dark: 0.3 }]], jpeg(0.8)],
    ['fine', { rows: 6 }, [scan(130)], jpeg(0.6)],
    ['dots', { rows: 6 }, [scan(150)], png],
    ['dots', { rows: 8 }, fax, png],
    ['dots', { rows: 7 }, [['pins', { pitch: 4.5 }], ['fade', { ink: 100 }], scan(160)], jpeg(0.7)],
    ['credits', { rows: 7, credits: 2 }, [scan(150)], png],
    ['credits', { rows: 6, credits: 1 }, [...phone(100), ['askew', { degrees: 3 }]], jpeg(0.6)],
    ['first', { rows: 5 }, [...phone(85)], jpeg(0.5)],
    ['rooms', { rows: 6 }, [['fade', { ink: 175, paper: 240, side: 0.4 }], scan(130), ['noise', { most: 14 }]], jpeg(0.7)],
  ],
};

const stamp = createHash('sha256')
  .update(['contents', 'wear', 'pages', 'layouts-shaped', 'layouts-held'].map((f) => fs.readFileSync(path.join(HERE, `${f}.mjs`))).join(''))
  .digest('hex').slice(0, 12);

const nameOf = (set, i, [layout]) => `${set}-${String(i + 1).padStart(2, '0')}-${layout}`;

/** Of each page of a half ("shaped", "held"): its name, what was done to it, and what it says, in cents. */
export const pagesOf = (set) =>
  pages[set].map((page, i) => {
    const [layout, has, steps, [type, quality]] = page;
    const seed = (set === 'held' ? 5000 : 100) + 17 * i;
    const says = account(seed, has);
    const html = (set === 'held' ? held : shaped)[layout](says);
    return {
      name: nameOf(set, i, page), layout, html, steps, seed, type, quality, charges: says.charges.map(({ text, cents }) => ({ text, cents })),
      stated: { total: says.total, deposit: says.deposit, rest: says.rest }, wear: steps.map(([name]) => name).join(', '),
    };
  });

/** The picture of a page as a file on the disk. `sheet`: a page of the browser, of its own. */
export async function pictureOf(sheet, page) {
  const file = path.join(KEPT, `${page.name}-${stamp}.${page.type === 'image/png' ? 'png' : 'jpg'}`);
  if (fs.existsSync(file)) return file;
  await sheet.setContent(`<!doctype html><meta charset="utf-8"><style>body{margin:0;background:#fff;color:#111;width:816px;height:1056px;overflow:hidden}</style>${page.html}`);
  await sheet.evaluate(() => document.fonts.ready);
  const clean = await sheet.screenshot({ clip: { x: 0, y: 0, width: 816, height: 1056 } });
  const address = await sheet.evaluate(worn, [clean.toString('base64'), page.steps, page.seed, page.type, page.quality]);
  fs.mkdirSync(KEPT, { recursive: true });
  fs.writeFileSync(file, Buffer.from(address.split(',')[1], 'base64'));
  return file;
}

/** A page of the browser to draw on. */
export async function sheetOf(browser) {
  const context = await browser.newContext({ viewport: { width: 816, height: 1056 }, deviceScaleFactor: 3 });
  return context.newPage();
}
