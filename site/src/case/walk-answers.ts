// What to do about each thing that was seen: leave it, put it right, or not touch it. The money is the engine's own judgement of the same
// thing as a charge on the day of moving out; without a price that somebody named there is no sum, only the share that could be fair.

import type { Assessment, JudgedLine } from './assessment';
import type { CaseFile } from './case';
import { type Catalogue, elementOf } from './catalogue';
import { cents } from './cents';
import type { Room, Seen, WalkItem } from './walk';
import { type Advice, adviceFor, faultsOf, type Hazard, hazardsOf, judgedAs, stopsOf } from './walk-home';
import { roomsOf, thingsOf, walkOf } from './walk-edits';

/** Stands for a price nobody named, so that a share can be told: whole cents of it are shares of 0.001 %. */
const nominal = '1000.00';

const conditionAtMoveIn: Record<Seen, string> = {
  fine: 'good',
  worn: 'worn',
  damaged: 'damaged',
  dirty: 'dirty',
  missing: 'damaged',
};

/** Things that could be charged for. */
export const notFine = (c: CaseFile): WalkItem[] =>
  thingsOf(c).filter((t) => t.conditionAtMoveOut && t.conditionAtMoveOut !== 'fine');

/** How a thing was when the tenant moved in, as a charge has it. */
export const moveInOf = (t: WalkItem): string | undefined =>
  t.conditionAtMoveIn &&
  (t.conditionAtMoveIn === t.conditionAtMoveOut && t.conditionAtMoveIn !== 'fine'
    ? 'same'
    : conditionAtMoveIn[t.conditionAtMoveIn]);

/** The case as it would be if all that was seen were charged on the day of moving out, before any paper came. */
export function caseIfLeft(c: CaseFile, catalogue: Catalogue): CaseFile {
  const { statement: _s, events: _e, walkThrough: _w, ...rest } = c;
  const lines = notFine(c).map((t) => {
    const { element, finding } = judgedAs(t);
    return {
      id: t.id,
      amount: t.quote ?? nominal,
      kind: elementOf(catalogue, element)?.kind ?? 'damage',
      element,
      ...(finding && { finding }),
      ...(t.installed && { installed: t.installed }),
      ...(t.cause && { cause: t.cause }),
      ...(moveInOf(t) && { conditionAtMoveIn: moveInOf(t) }),
    };
  });
  return { ...rest, lines } as CaseFile;
}

/** leave: nothing to do. self: put it right. ask: put it right once the landlord agrees. stop: a licensed worker's. done: was put right.
 *  say: what is wrong was not said yet. */
export type Kind = 'leave' | 'self' | 'ask' | 'stop' | 'done' | 'say';

export interface Shares {
  /** Whole percent of whatever it costs. */
  low: number;
  likely: number | null;
  high: number;
}

export interface Answer {
  thing: WalkItem;
  room: Room | undefined;
  kind: Kind;
  judged: JudgedLine | undefined;
  /** The share of a price that could be fair; null until it was judged. */
  share: Shares | null;
  /** Somebody named a price: the judged sums are of it. */
  priced: boolean;
  advice: Advice;
  hazards: Hazard[];
  stops: Hazard[];
}

const percent = (part: string, of: string): number =>
  cents(of) === 0 ? 0 : Math.round((cents(part) / cents(of)) * 100);

const shareOf = ({ fair, claimed }: JudgedLine): Shares => ({
  low: percent(fair.low, claimed),
  likely: fair.likely === null ? null : percent(fair.likely, claimed),
  high: percent(fair.high, claimed),
});

const lenient = ['ordinary-wear', 'landlord-responsibility', 'pre-existing', 'barred'];
/** Less than half a percent of what it costs is nothing to spend time on. */
const isNothing = (j: JudgedLine): boolean =>
  percent(j.fair.high, j.claimed) === 0 || (lenient.includes(j.verdict) && j.certain);

function kindOf(t: WalkItem, judged: JudgedLine | undefined, advice: Advice, stops: Hazard[]): Kind {
  if (t.remedied) return 'done';
  if (judged && (isNothing(judged) || (t.conditionAtMoveOut === 'worn' && lenient.includes(judged.verdict))))
    return 'leave';
  if (!judgedAs(t).finding && faultsOf(t.element, t.conditionAtMoveOut).length > 1) return 'say';
  if (stops.length || advice.who === 'licensed') return 'stop';
  return advice.who === 'self' ? 'self' : 'ask';
}

/** The likely part of a price in cents, or of the nominal one; the middle of the range where nothing is likely. */
function saved(a: Answer): number {
  if (!a.judged) return 0;
  const { low, likely, high } = a.judged.fair;
  return likely === null ? (cents(low) + cents(high)) / 2 : cents(likely);
}

/** Most money for the least effort first; named prices before shares, as the two cannot be compared. */
const byWorth = (a: Answer, b: Answer): number =>
  Number(b.priced) - Number(a.priced) || saved(b) / b.advice.minutes - saved(a) / a.advice.minutes;

/** `left`: the judgement of caseIfLeft, null while it is on its way. */
export function answersOf(c: CaseFile, left: Assessment | null): Answer[] {
  const judgedById = new Map(left?.lines.map((l) => [l.id, l]));
  const rooms = new Map(roomsOf(c).map((r) => [r.id, r]));
  return notFine(c)
    .map((thing): Answer => {
      const judged = judgedById.get(thing.id);
      const advice = adviceFor(thing);
      const stops = stopsOf(thing, walkOf(c));
      return {
        thing,
        room: rooms.get(thing.room),
        kind: kindOf(thing, judged, advice, stops),
        judged,
        share: judged ? shareOf(judged) : null,
        priced: thing.quote !== undefined,
        advice,
        hazards: hazardsOf(thing, walkOf(c)),
        stops,
      };
    })
    .sort(byWorth);
}

export const ofKind = (answers: readonly Answer[], ...kinds: Kind[]): Answer[] =>
  answers.filter((a) => kinds.includes(a.kind));
