// Changes to the walk through the home: each takes a case and gives the next.

import type { CaseFile } from './case';
import { present } from './edits';
import type { Room, Seen, WalkItem, WalkThrough } from './walk';
import { faultsOf, kindOfRoom } from './walk-home';

export const walkOf = (c: CaseFile): WalkThrough => c.walkThrough ?? {};
export const roomsOf = (c: CaseFile): Room[] => walkOf(c).rooms ?? [];
export const thingsOf = (c: CaseFile): WalkItem[] => walkOf(c).items ?? [];

export const withWalk = (c: CaseFile, changes: Partial<WalkThrough>): CaseFile => ({
  ...c,
  walkThrough: present({ ...walkOf(c), ...changes }),
});

const freshId = (of: readonly { id: string }[], letter: string): string => {
  const used = of.map((x) => Number(x.id.replace(/^\D+/, ''))).filter(Number.isFinite);
  return `${letter}${Math.max(0, ...used) + 1}`;
};

/** A room more, called `label`; a second of its kind gets a number. */
export function withRoom(c: CaseFile, kind: string, label: string): CaseFile {
  const rooms = roomsOf(c);
  const before = rooms.filter((r) => r.kind === kind).length;
  const name = before ? `${label} ${before + 1}` : label;
  return withWalk(c, { rooms: [...rooms, { id: freshId(rooms, 'r'), kind, name }] });
}

export const withoutRoom = (c: CaseFile, id: string): CaseFile =>
  withWalk(c, {
    rooms: roomsOf(c).filter((r) => r.id !== id),
    items: thingsOf(c).filter((t) => t.room !== id),
  });

export const withRoomNamed = (c: CaseFile, id: string, name: string | undefined): CaseFile =>
  withWalk(c, { rooms: roomsOf(c).map((r) => (r.id === id ? present({ ...r, name }) : r)) });

export const thingIn = (c: CaseFile, room: string, element: string): WalkItem | undefined =>
  thingsOf(c).find((t) => t.room === room && t.element === element);

export const thingById = (c: CaseFile, id: string): WalkItem | undefined => thingsOf(c).find((t) => t.id === id);

/** A thing of a room with changes; it is written down with the first of them. */
export function withThing(c: CaseFile, room: string, element: string, changes: Partial<WalkItem>): CaseFile {
  const things = thingsOf(c);
  const there = thingIn(c, room, element);
  if (!there)
    return withWalk(c, { items: [...things, present({ id: freshId(things, 't'), room, element, ...changes })] });
  return withThingById(c, there.id, changes);
}

export const withThingById = (c: CaseFile, id: string, changes: Partial<WalkItem>): CaseFile =>
  withWalk(c, { items: thingsOf(c).map((t) => (t.id === id ? present({ ...t, ...changes }) : t)) });

export const withoutThing = (c: CaseFile, room: string, element: string): CaseFile =>
  withWalk(c, { items: thingsOf(c).filter((t) => t.room !== room || t.element !== element) });

/** A state tapped on one day. A fault that does not belong to it goes; the first thing seen dates the walk. */
export function withState(c: CaseFile, room: string, element: string, state: Seen, today: string): CaseFile {
  const before = thingIn(c, room, element);
  const keeps = before?.finding !== undefined && faultsOf(element, state).includes(before.finding);
  const changes: Partial<WalkItem> = {
    conditionAtMoveOut: state,
    inspected: today,
    ...(keeps ? {} : { finding: undefined }),
    ...(state === 'fine' ? { cause: undefined, quote: undefined, remedied: undefined } : {}),
  };
  const next = withThing(c, room, element, changes);
  return walkOf(next).date ? next : withWalk(next, { date: today });
}

/** The things a room usually has, and those that were added to it. */
export function rowsOf(c: CaseFile, room: Room): (string | string[])[] {
  const usual = kindOfRoom(room.kind)?.things ?? [];
  const there = thingsOf(c)
    .filter((t) => t.room === room.id)
    .map((t) => t.element);
  const settled = usual.map((row) => (typeof row === 'string' ? row : (row.find((e) => there.includes(e)) ?? row)));
  return [...settled, ...there.filter((e) => !settled.includes(e))];
}

/** Everything of a room that was not looked at yet is fine; where one of several is there, it must be said which. */
export function withRestFine(c: CaseFile, room: Room, today: string): CaseFile {
  const open = rowsOf(c, room).filter(
    (e): e is string => typeof e === 'string' && !thingIn(c, room.id, e)?.conditionAtMoveOut,
  );
  return open.reduce((next, e) => withState(next, room.id, e, 'fine', today), c);
}

export interface Count {
  seen: number;
  all: number;
}
export function countIn(c: CaseFile, room: Room): Count {
  const rows = rowsOf(c, room);
  const seen = rows.filter((e) => typeof e === 'string' && thingIn(c, room.id, e)?.conditionAtMoveOut).length;
  return { seen, all: rows.length };
}

export const countAll = (c: CaseFile): Count =>
  roomsOf(c)
    .map((r) => countIn(c, r))
    .reduce((sum, x) => ({ seen: sum.seen + x.seen, all: sum.all + x.all }), { seen: 0, all: 0 });

/** Something of the leaving day is done, or not yet. */
export function withLeaving(c: CaseFile, task: string, done: boolean): CaseFile {
  const others = (walkOf(c).moveOutTasks ?? []).filter((t) => t !== task);
  const leaving = done ? [...others, task] : others;
  return withWalk(c, { moveOutTasks: leaving.length ? leaving : undefined });
}
