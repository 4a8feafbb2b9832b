// Opening and saving case files on the person's own device.

import type { CaseFile } from '../case/case';
import type { Desk } from './desk';
import { say } from './wording';

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

/** Lets the person choose case files and lays each on the desk. */
export function openFiles(d: Desk): Promise<void> {
  const chooser = document.createElement('input');
  chooser.type = 'file';
  chooser.multiple = true;
  chooser.accept = '.json,application/json';
  return new Promise((done) => {
    chooser.addEventListener('cancel', () => done());
    chooser.addEventListener('change', () => {
      const files = [...(chooser.files ?? [])];
      void Promise.all(files.map(async (f) => [await f.text(), f.name] as const)).then((texts) => {
        texts.forEach(([text, name]) => openText(d, text, name));
        done();
      });
    });
    chooser.click();
  });
}
