// A case with its past, so that every change can be taken back.

import type { CaseFile } from './case';

export interface History {
  now: CaseFile;
  past: CaseFile[];
  future: CaseFile[];
  /** What the last change touched; typing on in the same field is one step. */
  touched: string;
}

const kept = 200;

export const begin = (now: CaseFile): History => ({ now, past: [], future: [], touched: '' });

/** The next state. Changes in a row that touch the same place (a field being typed in) undo as one. */
export function change(h: History, next: CaseFile, touched = ''): History {
  if (next === h.now) return h;
  const goesOn = touched !== '' && touched === h.touched;
  return { now: next, past: goesOn ? h.past : [...h.past, h.now].slice(-kept), future: [], touched };
}

export function undo(h: History): History {
  const before = h.past[h.past.length - 1];
  return before ? { now: before, past: h.past.slice(0, -1), future: [h.now, ...h.future], touched: '' } : h;
}

export function redo(h: History): History {
  const [after, ...future] = h.future;
  return after ? { now: after, past: [...h.past, h.now], future, touched: '' } : h;
}
