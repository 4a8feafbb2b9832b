// The door to "Bring in the statement": open or shut, and what leads to it from anywhere on the page. What lies behind is fetched on use.

import { nothing } from 'lit/html.js';
import { openAll } from '../../app/case-files';
import type { Desk } from '../../app/desk';
import { later } from '../../app/later';

const section = later(() => import('./bring-in'));

/** What a person hands over: nothing yet, text, or files. */
export interface Brought {
  text?: string;
  files?: File[];
  /** The files may as well be photos or papers to keep with the case: it is asked first. */
  unclear?: boolean;
}

export function bringIn(d: Desk, what: Brought = {}): void {
  d.bringing = true;
  d.hush();
  void section.fetch().then((s) => s.begin(d, what));
}

export const bringing = (d: Desk) => section.get(d)?.bringing(d) ?? nothing;

const carriesFiles = (e: DragEvent): boolean => e.dataTransfer?.types.includes('Files') ?? false;

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable]');

/** Several lines with sums in them are a statement, wherever they are pasted; one line belongs where the cursor is. */
const looksLikeStatement = (text: string): boolean => (text.slice(0, 20_000).match(/^.*\d.*$/gm)?.length ?? 0) >= 3;

const isCase = (f: File): boolean => /\.json$/i.test(f.name);
const mayBeEvidence = (f: File): boolean => /^image\/|^application\/pdf$/.test(f.type);

/** Cases are opened. Other files are the statement, unless they are dropped on the evidence or the case has its charges already. */
function dropped(d: Desk, files: File[], on: EventTarget | null): void {
  const papers = files.filter((f) => !isCase(f));
  if (papers.length < files.length) void openAll(d, files.filter(isCase));
  if (papers.length === 0) return;
  if (on instanceof Element && on.closest('.evidence'))
    void import('../evidence/evidence').then(({ attach }) => attach(d, papers));
  else bringIn(d, { files: papers, unclear: !d.bringing && d.case.lines.length > 0 && papers.every(mayBeEvidence) });
}

/** Files may be dropped, and files or text pasted, anywhere on the page. */
export function watchForStatements(d: Desk): void {
  let leaving: ReturnType<typeof setTimeout> | undefined;
  const hover = (on: boolean): void => void document.body.toggleAttribute('data-dropping', on);
  window.addEventListener('dragover', (e) => {
    if (!carriesFiles(e)) return;
    e.preventDefault();
    clearTimeout(leaving);
    leaving = setTimeout(() => hover(false), 200);
    hover(true);
  });
  window.addEventListener('drop', (e) => {
    if (!carriesFiles(e)) return;
    e.preventDefault();
    hover(false);
    dropped(d, [...(e.dataTransfer?.files ?? [])], e.target);
  });
  document.addEventListener('paste', (e) => {
    const files = [...(e.clipboardData?.files ?? [])];
    const text = e.clipboardData?.getData('text/plain') ?? '';
    const inField = isField(e.target);
    if (files.length && !(inField && text)) {
      e.preventDefault();
      bringIn(d, { files });
    } else if (looksLikeStatement(text) && (!inField || (e.target as HTMLElement).matches('.charge-text'))) {
      e.preventDefault();
      bringIn(d, { text });
    }
  });
}
