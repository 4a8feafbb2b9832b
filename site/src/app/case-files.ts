// Opening and saving case files on the person's own device.

import type { CaseFile } from '../case/case';
import type { Desk } from './desk';
import { say } from '../say/wording';

/** Hands `content` to the browser as a file to keep. */
export function keepFile(name: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

const slug = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);

/** A file name from the case's title or place, without its ending. */
export const nameFor = (c: CaseFile): string => slug(c.title ?? '') || slug(`deposit ${c.jurisdiction ?? ''}`);

export function saveCase(d: Desk): void {
  const name = d.sheet.file || `${nameFor(d.case)}.json`;
  keepFile(name, JSON.stringify(d.case, null, 2) + '\n', 'application/json');
  d.markSaved(name);
  d.tell(say('page.notice.saved', { name }));
}

/** Reads one case file. Text that is no case file stays off the desk, and the reason is said. */
export function openText(d: Desk, text: string, name: string): boolean {
  let subject: unknown;
  try {
    subject = JSON.parse(text);
  } catch {
    d.tell(say('page.notice.notJson', { name }));
    return false;
  }
  const isCase =
    typeof subject === 'object' &&
    subject !== null &&
    'wearline' in subject &&
    Array.isArray((subject as CaseFile).lines ?? []);
  if (!isCase) {
    d.tell(say('page.notice.notCase', { name }));
    return false;
  }
  const whole = subject as CaseFile;
  const lines = (whole.lines ?? []).map((l, i) =>
    l && typeof l === 'object' && !l.id ? { ...l, id: String(i + 1) } : l,
  );
  d.lay({ ...whole, lines }, name);
  d.tell(say('page.notice.opened', { name }));
  return true;
}

/** The case a file holds: the file itself, or, in a report, the case within it. */
async function caseText(file: File): Promise<string> {
  const text = await file.text();
  if (!/\.html?$/i.test(file.name)) return text;
  return /<script type="application\/json" id="wearline-case">(.*?)<\/script>/s.exec(text)?.[1] ?? text;
}

/** Lays each file that holds a case on the desk; says how many did not. */
export async function openAll(d: Desk, files: File[]): Promise<void> {
  const texts = await Promise.all(files.map(async (f) => [await caseText(f), f.name] as const));
  const opened = texts.filter(([text, name]) => openText(d, text, name)).length;
  if (texts.length > 1) d.tell(say('page.notice.openedMany', { count: opened, other: texts.length - opened }));
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
