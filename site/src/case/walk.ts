// The walk through the home before its end: whether one is going on, and what a case holds of it. What is done with it is fetched on use.

import type { CaseFile, Side } from './case';

export type Seen = 'fine' | 'worn' | 'damaged' | 'dirty' | 'missing';
export const statesSeen: readonly Seen[] = ['fine', 'worn', 'damaged', 'dirty', 'missing'];

export interface WalkItem {
  id: string;
  /** Id of its room. */
  room: string;
  element: string;
  finding?: string;
  conditionAtMoveIn?: Seen;
  conditionAtMoveOut?: Seen;
  cause?: string;
  note?: string;
  installed?: string;
  /** What somebody asks for putting it right. */
  quote?: string;
  inspected?: string;
  remedied?: string;
  onLandlordList?: boolean;
  /** Id of the charge that is about it. */
  line?: string;
}

export interface Room {
  id: string;
  kind?: string;
  name?: string;
}

export interface WalkThrough {
  date?: string;
  /** Set once the tenant has left: from then on the case is about the statement. */
  completed?: string;
  inspectionListGiven?: boolean;
  inspectionListDated?: string;
  builtBefore1978?: boolean;
  rooms?: Room[];
  items?: WalkItem[];
  moveOutTasks?: string[];
}

/** True while the home is walked through: nobody has left, and nothing was charged. */
export const isWalking = (c: CaseFile): boolean =>
  c.walkThrough !== undefined && !c.walkThrough.completed && c.lines.length === 0;

export const startWalk = (c: CaseFile, side: Side = c.side ?? 'tenant'): CaseFile => {
  const { completed: _, ...walkThrough } = c.walkThrough ?? {};
  return { ...c, side, walkThrough };
};

/** The walk is over; one in which nothing was seen leaves nothing behind. */
export function endWalk(c: CaseFile, today: string, side: Side = c.side ?? 'tenant'): CaseFile {
  const { walkThrough, ...rest } = c;
  const isEmpty = !walkThrough?.items?.length && !walkThrough?.moveOutTasks?.length;
  return isEmpty ? { ...rest, side } : { ...rest, side, walkThrough: { ...walkThrough, completed: today } };
}
