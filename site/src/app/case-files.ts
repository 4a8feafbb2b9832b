// Opening and saving case files on the person's own device.

import { caseInReport, fitsInFile, fromFile, mostAttached, type Saved, toFile } from '../case/saved';
import { largestCase, newestVersion } from '../case/shape';
import { shortTime } from '../say/show';
import { say } from '../say/wording';
import type { Desk, Sheet } from './desk';
import { baseName } from './file-names';
import { freshId, isUnsaved, sheetOf, workOf } from './sheet';

/** Hands `content` to the browser as a file to keep. */
export function keepFile(name: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** A file name for what comes of the case in front, without its ending; no other open case gives the same. */
export const nameFor = (d: Desk): string => baseName(d.sheet, d.sheets);

/** Saves all of the case in front: facts, what was done with its letters, photos and papers. */
export async function saveCase(d: Desk): Promise<void> {
  const { sheet } = d;
  const work = workOf(sheet);
  const name = `${nameFor(d)}.json`;
  const text = await toFile({ ...work, id: sheet.id, changed: sheet.changed, version: sheet.version });
  keepFile(name, text, 'application/json');
  const whole = fitsInFile(work.exhibits);
  sheet.file = name;
  if (whole) sheet.saved = work;
  const megabytes = Math.round(mostAttached / 1024 / 1024);
  if (whole) d.tell(say('page.notice.saved', { name }));
  else d.warn(say('page.notice.savedWithoutPhotos', { name, megabytes }));
}

type Opened = { saved: Saved } | { trouble: string };

/** What a file holds, or what is wrong with it in words. */
export function readCase(text: string, name: string): Opened {
  const report = caseInReport(text);
  if (report === undefined && text.length > largestFile) return { trouble: say('page.notice.tooLarge', { name }) };
  let data: unknown;
  try {
    data = JSON.parse(report ?? text);
  } catch {
    return { trouble: say('page.notice.notJson', { name }) };
  }
  // What a newer version of the page knows would be lost here, and gone from the file with the next saving.
  const version = (data as { wearline?: unknown } | null)?.wearline;
  if (typeof version === 'number' && version > newestVersion)
    return { trouble: say('page.notice.newerFile', { name }) };
  const saved = fromFile(data, report !== undefined);
  return saved ? { saved } : { trouble: say('page.notice.notCase', { name }) };
}

/** When a case was changed, in words; nothing where the file does not say. */
const changedAt = (time: string): string => (Number.isNaN(Date.parse(time)) ? '?' : shortTime(time));

/** The sheet of what a file holds. */
function sheetFrom(saved: Saved, name: string): Sheet {
  const { subject, exhibits, letter, client, dropped, fromReport } = saved;
  // A report carries less than the case: saved under its name it would look like all of it.
  const file = fromReport ? name.replace(/\.html?$/i, '') + '.json' : name;
  const sheet = sheetOf({ subject, exhibits, letter, client }, file, saved.id || undefined, saved.changed || undefined);
  if (saved.version) sheet.version = saved.version;
  if (dropped.length > 0) sheet.saved = null;
  return sheet;
}

/** Just as it is in the file. */
const isSame = (open: Sheet, sheet: Sheet): boolean => !isUnsaved(open) && open.version === sheet.version;

/** The same case lies open already: the file is laid beside it as a case of its own, and it is asked which to go on with. */
function beside(d: Desk, open: Sheet, sheet: Sheet, name: string): void {
  sheet.id = freshId();
  d.lay(sheet);
  const drop = (gone: Sheet, stays: Sheet): void => {
    stays.id = open.id;
    const rest = d.sheets.filter((s) => s !== gone);
    d.notice = null;
    d.layOut(rest, rest.indexOf(stays));
  };
  d.warn(say('page.notice.openAlready', { name, open: changedAt(open.changed), file: changedAt(sheet.changed) }), [
    { says: 'page.notice.replace', act: () => drop(open, sheet) },
    { says: 'page.notice.keepOpen', act: () => drop(sheet, open) },
    { says: 'page.notice.keepBoth', act: () => d.hush() },
  ]);
}

/** Lays what a file holds on the desk, and says what of it could not be taken. */
function layDown(d: Desk, saved: Saved, name: string): void {
  const sheet = sheetFrom(saved, name);
  const { dropped, fromReport } = saved;
  const open = d.sheets.find((s) => s.id === sheet.id);
  if (open && isSame(open, sheet)) {
    d.bringToFront(d.sheets.indexOf(open));
    return d.tell(say('page.notice.openAlreadySame', { name }));
  }
  if (open) return beside(d, open, sheet, name);
  d.lay(sheet);
  if (dropped.length > 0)
    d.warn(say('page.notice.openedInPart', { name, count: dropped.length, places: dropped.slice(0, 5).join(', ') }));
  else d.tell(say(fromReport ? 'page.notice.openedReport' : 'page.notice.opened', { name }));
}

/** Reads one case file. Text that is no case file stays off the desk, and the reason is said. */
export function openText(d: Desk, text: string, name: string): boolean {
  const opened = readCase(text, name);
  if ('trouble' in opened) d.tell(opened.trouble);
  else layDown(d, opened.saved, name);
  return !('trouble' in opened);
}

/** Bytes beyond which no file is read at all. */
const largestFile = largestCase + 1.4 * mostAttached;

/** Lays the cases of several files on the desk at once; says how many files held none, and how many not all that could be read. */
async function openSeveral(d: Desk, files: File[]): Promise<void> {
  const known = new Map(d.sheets.map((s) => [s.id, s]));
  const sheets: Sheet[] = [];
  let other = 0;
  let inPart = 0;
  for (const file of files) {
    const opened = file.size > largestFile ? undefined : readCase(await file.text(), file.name);
    if (!opened || 'trouble' in opened) {
      other++;
      continue;
    }
    const sheet = sheetFrom(opened.saved, file.name);
    const open = known.get(sheet.id);
    if (open && isSame(open, sheet)) continue;
    // Changed here or there since: both are kept.
    if (open) sheet.id = freshId();
    if (opened.saved.dropped.length > 0) inPart++;
    known.set(sheet.id, sheet);
    sheets.push(sheet);
  }
  d.layAll(sheets);
  const count = files.length - other;
  if (inPart > 0) d.warn(say('page.notice.openedManyInPart', { count, other, part: inPart }));
  else d.tell(say('page.notice.openedMany', { count, other }));
}

/** Lays each file that holds a case on the desk. */
export async function openAll(d: Desk, files: File[]): Promise<void> {
  const [file] = files;
  if (!file) return;
  if (files.length > 1) await openSeveral(d, files);
  else if (file.size > largestFile) d.tell(say('page.notice.tooLarge', { name: file.name }));
  else openText(d, await file.text(), file.name);
  await d.settleOthers();
}

/** Lets the person choose case files, or a folder of them, and lays each on the desk. */
export function openFiles(d: Desk, folder = false): void {
  const chooser = document.createElement('input');
  chooser.type = 'file';
  chooser.multiple = true;
  if (folder) chooser.webkitdirectory = true;
  else chooser.accept = '.json,.html,application/json,text/html';
  chooser.addEventListener('change', () => {
    const files = [...(chooser.files ?? [])].filter((f) => !folder || /\.(json|html?)$/i.test(f.name));
    void openAll(d, files);
  });
  chooser.click();
}
