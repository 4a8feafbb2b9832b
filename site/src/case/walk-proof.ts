// When the statement comes: which thing that was seen a charge is about, and what it shows.

import type { JudgedLine } from './assessment';
import type { CaseFile, Line } from './case';
import type { WalkItem } from './walk';
import { moveInOf } from './walk-answers';
import { roomsOf, thingsOf, walkOf, withWalk } from './walk-edits';
import { judgedAs } from './walk-home';

const plain = (text: unknown): string =>
  String(text ?? '')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase();

const isAbout = (t: WalkItem, element: string): boolean => t.element === element || judgedAs(t).element === element;

/** The charge names the room of the thing, in its words or its place. */
function namesRoom(c: CaseFile, t: WalkItem, line: Line): boolean {
  const name = plain(roomsOf(c).find((r) => r.id === t.room)?.name);
  return name !== '' && plain(`${line.place ?? ''} ${line.text ?? ''}`).includes(name);
}

/** Things a charge may be about, those of the room it names first; only those that were looked at. */
export function candidates(c: CaseFile, line: Line, judged: JudgedLine | undefined): WalkItem[] {
  const element = line.element ?? judged?.element;
  if (!element) return [];
  const all = thingsOf(c).filter((t) => t.conditionAtMoveOut && isAbout(t, element));
  return [...all.filter((t) => namesRoom(c, t, line)), ...all.filter((t) => !namesRoom(c, t, line))];
}

export const linkedTo = (c: CaseFile, line: Line): WalkItem[] => thingsOf(c).filter((t) => t.line === line.id);

/** The one thing it must be about: the only one there is, or the only one in the room that is named. */
export function clearMatch(c: CaseFile, line: Line, judged: JudgedLine | undefined): WalkItem | undefined {
  const all = candidates(c, line, judged).filter((t) => !t.line);
  const here = all.filter((t) => namesRoom(c, t, line));
  return here.length === 1 ? here[0] : all.length === 1 ? all[0] : undefined;
}

/** What a thing shows about a charge. */
export type Shown = 'fine' | 'worn' | 'put-right' | 'on-list' | 'off-list' | 'same' | 'damaged' | 'dirty' | 'missing';

export function shownBy(c: CaseFile, t: WalkItem): Shown[] {
  const { inspectionListGiven } = walkOf(c);
  const state: Shown[] = t.remedied
    ? ['put-right']
    : moveInOf(t) === 'same'
      ? ['same']
      : t.conditionAtMoveOut
        ? [t.conditionAtMoveOut]
        : [];
  if (inspectionListGiven !== true || t.onLandlordList === undefined) return state;
  return [...state, t.onLandlordList ? 'on-list' : 'off-list'];
}

/** The facts of a charge that the walk knows and the charge does not. */
export function factsFor(c: CaseFile, t: WalkItem, line: Line): Partial<Line> {
  const facts: Partial<Line> = {};
  if (line.installed === undefined && t.installed) facts.installed = t.installed;
  if (line['conditionAtMoveIn'] === undefined && moveInOf(t)) facts['conditionAtMoveIn'] = moveInOf(t);
  if (line['cause'] === undefined && t.cause) facts['cause'] = t.cause;
  if (line['onMoveOutRecord'] === undefined && walkOf(c).inspectionListGiven === true && t.onLandlordList !== undefined)
    facts['onMoveOutRecord'] = t.onLandlordList;
  if (!line.location) {
    const name = roomsOf(c).find((r) => r.id === t.room)?.name;
    if (name) facts.location = name;
  }
  return facts;
}

/** The charge is about this thing: what the walk knows of it becomes its facts. */
export function withMatch(c: CaseFile, lineId: string, thingId: string): CaseFile {
  const t = thingsOf(c).find((x) => x.id === thingId);
  const line = c.lines.find((l) => l.id === lineId);
  if (!t || !line) return c;
  const lines = c.lines.map((l) => (l.id === lineId ? { ...l, ...factsFor(c, t, l) } : l));
  const items = thingsOf(c).map((x) => (x.id === thingId ? { ...x, line: lineId } : x));
  return withWalk({ ...c, lines }, { items });
}

export function withoutMatch(c: CaseFile, thingId: string): CaseFile {
  const items = thingsOf(c).map((x) => {
    if (x.id !== thingId) return x;
    const { line: _, ...rest } = x;
    return rest;
  });
  return withWalk(c, { items });
}
