// How rooms, things, faults and photos of a walk-through are called.

import type { Desk } from '../../app/desk';
import { elementOf } from '../../case/catalogue';
import type { Exhibit } from '../../case/exhibit';
import type { Room, WalkItem } from '../../case/walk';
import { roomsOf } from '../../case/walk-edits';
import { kindOfRoom } from '../../case/walk-home';
import { shortDay } from '../../say/show';
import { spoken } from '../../say/spoken';
import { say } from '../../say/wording';

/** What a person called the room; a room that bears the name of its kind is called so in any language. */
export function roomName(room: Room | undefined): string {
  if (!room) return '';
  const kind = kindOfRoom(room.kind);
  const named = kind && [kind.label.en, kind.label.es].some((label) => room.name === label);
  return named ? spoken(kind.label) : (room.name ?? (kind ? spoken(kind.label) : ''));
}

export const elementName = (d: Desk, element: string): string => elementOf(d.catalogue, element)?.label ?? element;

export const findingName = (d: Desk, element: string, finding: string | undefined): string =>
  elementOf(d.catalogue, element)?.findings.find((f) => f.id === finding)?.label ?? '';

export const sayState = (state: string | undefined): string => (state ? say(`page.walk.state.${state}`) : '');

/** "Carpet, Bedroom". */
export const thingName = (d: Desk, t: WalkItem): string =>
  [elementName(d, t.element), roomName(roomsOf(d.case).find((r) => r.id === t.room))].filter(Boolean).join(', ');

/** "Stained" or, where no fault was chosen, "Dirty". */
export const faultName = (d: Desk, t: WalkItem): string =>
  findingName(d, t.element, t.finding) || sayState(t.conditionAtMoveOut);

export const photosOf = (d: Desk, t: WalkItem | undefined): Exhibit[] =>
  t ? d.sheet.exhibits.filter((x) => x.thing === t.id) : [];

/** "Nov 25, 2026, 10:31". */
export const momentOf = (x: Exhibit): string => [x.taken && shortDay(x.taken), x.time].filter(Boolean).join(', ');
