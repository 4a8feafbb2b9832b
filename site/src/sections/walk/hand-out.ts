// What of the walk-through leaves the page: the list as a file, shared or saved, and its days for a calendar.

import { keepFile, nameFor } from '../../app/case-files';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import { askedJudged } from './judged';

async function listFile(d: Desk): Promise<{ name: string; text: string }> {
  const { walkFile } = await import('./walk-file');
  return { name: `${nameFor(d)}-walk-through.html`, text: await walkFile(d) };
}

const type = 'text/html';

export async function saveList(d: Desk): Promise<void> {
  const { name, text } = await listFile(d);
  keepFile(name, text, `${type};charset=utf-8`);
}

/** Hands the list to what the device shares with; where it takes no files, it is saved. */
export async function shareList(d: Desk): Promise<void> {
  const { name, text } = await listFile(d);
  const files = [new File([text], name, { type })];
  if (!navigator.canShare?.({ files })) return keepFile(name, text, `${type};charset=utf-8`);
  // Who closes the list of apps has changed their mind: that is no fault.
  await navigator.share({ files, title: say('page.walk.title.tenant') }).catch(() => undefined);
}

export async function saveReceipt(d: Desk): Promise<void> {
  const { receiptFile } = await import('./walk-file');
  keepFile(`${nameFor(d)}-keys-receipt.html`, receiptFile(d), `${type};charset=utf-8`);
}

export async function saveDays(d: Desk): Promise<void> {
  const { walkCalendar } = await import('../../out/walk-calendar');
  const days = walkCalendar(d.case, askedJudged(d) ?? d.result, d.today, d.case.title ?? say('page.walk.title.tenant'));
  keepFile(`${nameFor(d)}-walk-through.ics`, days, 'text/calendar;charset=utf-8');
}
