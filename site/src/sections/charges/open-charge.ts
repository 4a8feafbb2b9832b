// Opening one charge: one lies open at a time, and the cursor goes to it.

import type { Desk } from '../../app/desk';
import type { Question } from '../../case/assessment';
import { showRow } from '../../parts/stretch';

/** The list of charges, where it is drawn by stretches. */
export const listName = 'charges';

export const rowName = (id: string): string => `row:${id}`;
/** The list of faults of a thing lies open on its row. */
export const faultsName = (line: { id: string }): string => `faults:${line.id}`;

export function toggleCharge(d: Desk, id: string): void {
  const wasOpen = d.open.has(rowName(id));
  d.open.clear();
  if (!wasOpen) d.open.add(rowName(id));
  d.draw();
}

/** Opens the charge at a place of the list and goes to it. */
export function openCharge(d: Desk, index: number): void {
  const line = d.case.lines[index];
  if (!line) return;
  if (d.filter) d.showOnly('');
  showRow(d.sheet, listName, index);
  if (!d.open.has(rowName(line.id))) toggleCharge(d, line.id);
  void Promise.resolve().then(() => {
    const opener = document.getElementById(`opener-${line.id}`);
    opener?.focus();
    opener?.closest('.charge')?.scrollIntoView({ block: 'start' });
  });
}

/** A question about a charge without the words that say which charge, for where that is plain to see. */
export function shortQuestion(d: Desk, q: Question): string {
  const index = /^\/lines\/(\d+)/.exec(q.asks)?.[1];
  const thing = index === undefined ? '' : (d.result?.lines[Number(index)]?.elementText ?? '');
  if (!thing) return q.text;
  const from = q.text.indexOf(`${Number(index) + 1}: ${thing})`);
  if (from < 0) return q.text;
  const open = q.text.lastIndexOf(' (', from);
  const close = q.text.indexOf(')', from + `${Number(index) + 1}: ${thing}`.length);
  return q.text.slice(0, open) + q.text.slice(close + 1);
}
