// One case as it lies on the desk: what was entered, what was done with its letters, its photos and papers, and whether all of that is saved.

import type { Assessment, Fault } from '../case/assessment';
import { type CaseFile, freshLineId, isBlank } from '../case/case';
import { type Client, isNobody, nobody } from '../case/client';
import type { Exhibit } from '../case/exhibit';
import * as history from '../case/history';
import { type Letter, type LetterEdits, noEdits } from '../case/letter';
import type { Asked } from '../case/questions';
import { HeldAnswer } from '../engine/held-answer';

/** The sheet was changed just now. */
export function touch(s: Sheet): void {
  s.changed = now();
  s.version = freshId();
}

/** All that a person put into a case; each part is a new object when it changes. */
export interface Work {
  subject: CaseFile;
  exhibits: Exhibit[];
  letter: LetterEdits;
  client: Client;
}

export interface Sheet {
  key: number;
  /** The same case in every file and window: a name nobody reads. */
  id: string;
  /** When it was changed last, as a time of day in UTC (RFC 3339). */
  changed: string;
  /** Another with each change, whatever the clock says. */
  version: string;
  /** Name of the file it came from or was saved as. */
  file: string;
  history: history.History;
  /** The work as last saved to a file; null: it was changed before it came here, and never saved since. */
  saved: Work | null;
  result: Assessment | null;
  faults: Fault[];
  /** True once it was judged with the law of its place. */
  settled: boolean;
  exhibits: Exhibit[];
  /** What the person did with the letters: kind chosen, own words, paragraphs switched. */
  letter: LetterEdits;
  /** Whom an adviser helps here. */
  client: Client;
  draft: HeldAnswer<Letter>;
  /** The open questions as they were shown last. */
  asked: Asked[];
  /** The largest number a charge of it ever had as its id. */
  lastLine: number;
}

export const now = (): string => new Date().toISOString();

/** A new id: 128 random bits. */
export const freshId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, '0')).join('');

let nextKey = 1;

export function sheetOf(
  work: Partial<Work> & { subject: CaseFile },
  file = '',
  id = freshId(),
  changed = now(),
): Sheet {
  const { subject, exhibits = [], letter = noEdits, client = nobody } = work;
  return {
    key: nextKey++,
    id,
    changed,
    version: freshId(),
    file,
    history: history.begin(subject),
    saved: { subject, exhibits, letter, client },
    result: null,
    faults: [],
    settled: false,
    exhibits,
    letter,
    client,
    draft: new HeldAnswer(),
    asked: [],
    lastLine: 0,
  };
}

export const workOf = (s: Sheet): Work => ({
  subject: s.history.now,
  exhibits: s.exhibits,
  letter: s.letter,
  client: s.client,
});

export const sameWork = (a: Work, b: Work): boolean =>
  a.subject === b.subject && a.exhibits === b.exhibits && a.letter === b.letter && a.client === b.client;

/** True if nothing a person put in would be lost with it. */
export const isBlankSheet = (s: Sheet): boolean =>
  isBlank(s.history.now) && s.exhibits.length === 0 && isNobody(s.client);

/** True if the case would be lost, in whole or in part, with the page. */
export const isUnsaved = (s: Sheet): boolean => !isBlankSheet(s) && (s.saved === null || !sameWork(s.saved, workOf(s)));

/** An id that no charge of this sheet has or had: photos and letters point to charges by id. */
export function freshLineIdOf(s: Sheet): string {
  const ids = [...s.history.now.lines, ...s.exhibits.map((x) => ({ id: x.line }))];
  s.lastLine = Math.max(s.lastLine, Number(freshLineId(ids)) - 1);
  return String(s.lastLine + 1);
}
