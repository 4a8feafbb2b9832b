// The walk through the home before its end: whether one is going on, and what a case holds of it. What is done with it is fetched on use.

import type { CaseFile, Side } from './case';

export type Seen = 'fine' | 'worn' | 'damaged' | 'dirty' | 'missing';
export const statesSeen: readonly Seen[] = ['fine', 'worn', 'damaged', 'dirty', 'missing'];

export interface Thing {
  id: string;
  /** Id of its room. */
  room: string;
  element: string;
  finding?: string;
  moveIn?: Seen;
  moveOut?: Seen;
  cause?: string;
  note?: string;
  installed?: string;
  /** What somebody asks for putting it right. */
  quote?: string;
  seen?: string;
  putRight?: string;
  onTheirList?: boolean;
  /** Id of the charge that is about it. */
  line?: string;
}

export interface Room {
  id: string;
  kind?: string;
  name?: string;
}

export interface WalkThrough {
  on?: string;
  /** Set once the tenant has left: from then on the case is about the statement. */
  finished?: string;
  listGiven?: boolean;
  listDated?: string;
  builtBefore1978?: boolean;
  rooms?: Room[];
  things?: Thing[];
  leaving?: string[];
}

/** True while the home is walked through: nobody has left, and nothing was charged. */
export const isWalking = (c: CaseFile): boolean =>
  c.walkThrough !== undefined && !c.walkThrough.finished && c.lines.length === 0;

export const startWalk = (c: CaseFile, side: Side = c.side ?? 'tenant'): CaseFile => {
  const { finished: _, ...walkThrough } = c.walkThrough ?? {};
  return { ...c, side, walkThrough };
};

/** The walk is over; one in which nothing was seen leaves nothing behind. */
export function endWalk(c: CaseFile, today: string, side: Side = c.side ?? 'tenant'): CaseFile {
  const { walkThrough, ...rest } = c;
  const isEmpty = !walkThrough?.things?.length && !walkThrough?.leaving?.length;
  return isEmpty ? { ...rest, side } : { ...rest, side, walkThrough: { ...walkThrough, finished: today } };
}
