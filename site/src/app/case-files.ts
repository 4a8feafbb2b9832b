// Opening and saving case files on the person's own device.

import { caseInReport, fitsInFile, fromFile, mostAttached, type Saved, toFile } from '../case/saved';
import { largestCase, newestVersion } from '../case/shape';
import { shortTime } from '../say/show';
import { say } from '../say/wording';
import type { Desk, Sheet } from './desk';
import { baseName } from './file-names';
import { isUnsaved, sheetOf, workOf } from './sheet';

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
  if (report === undefined && text.length > largestCase + 1.4 * mostAttached)
    return { trouble: say('page.notice.tooLarge', { name }) };
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

/** The same case lies open already: the file is laid beside it, and it is asked which to go on with. */
function beside(d: Desk, open: Sheet, sheet: Sheet, name: string): void {
  d.lay(sheet);
  const drop = (gone: Sheet, stays: Sheet): void => {
    const rest = d.sheets.filter((s) => s !== gone);
    d.notice = null;
    d.layOut(rest, rest.indexOf(stays));
  };
  const both = (): void => {
    d.setApart(sheet);
    d.hush();
  };
  d.warn(say('page.notice.openAlready', { name, open: changedAt(open.changed), file: changedAt(sheet.changed) }), [
    { says: 'page.notice.replace', act: () => drop(open, sheet) },
    { says: 'page.notice.keepOpen', act: () => drop(sheet, open) },
    { says: 'page.notice.keepBoth', act: both },
  ]);
}

/** Lays what a file holds on the desk, and says what of it could not be taken. */
function layDown(d: Desk, saved: Saved, name: string): void {
  const { subject, exhibits, letter, client, dropped, fromReport } = saved;
  // A report carries less than the case: saved under its name it would look like all of it.
  const file = fromReport ? name.replace(/\.html?$/i, '') + '.json' : name;
  const sheet = sheetOf({ subject, exhibits, letter, client }, file, saved.id || undefined, saved.changed || undefined);
  if (saved.version) sheet.version = saved.version;
  if (dropped.length > 0) sheet.saved = null;
  const open = d.sheets.find((s) => s.id === sheet.id);
  if (open && !isUnsaved(open) && open.version === sheet.version) {
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

/** Lays each file that holds a case on the desk; says how many did not. */
export async function openAll(d: Desk, files: File[]): Promise<void> {
  const most = largestCase + 1.4 * mostAttached;
  let opened = 0;
  for (const file of files) {
    if (file.size > most) d.tell(say('page.notice.tooLarge', { name: file.name }));
    else if (openText(d, await file.text(), file.name)) opened++;
  }
  if (files.length > 1) d.tell(say('page.notice.openedMany', { count: opened, other: files.length - opened }));
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
