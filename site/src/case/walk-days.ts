// The right to an inspection before moving out, as days: from when and until when it may be held, until when it must be asked for. A day
// before which nothing may be done is the beginning of a window, never a deadline.

import type { Assessment, LegalDate } from './assessment';
import { addDays, isDay } from './day';

const duties = [
  'request-inspection',
  'offer-inspection',
  'hold-inspection',
  'inspection-notice',
  'joint-inspection',
  'attend-inspection',
  'give-report-copy',
];

export interface InspectionDays {
  /** The last day to ask for it, where the law sets one. */
  askBy?: string;
  from?: string;
  to?: string;
  /** What the law says of it, each rule once. */
  rules: LegalDate[];
}

const lastOf = (x: LegalDate): string | undefined =>
  !x.notBefore && isDay(x.last?.earliest) ? x.last.earliest : undefined;
const firstOf = (x: LegalDate): string | undefined => {
  const first = x.first?.latest ?? (x.notBefore ? x.last?.latest : undefined);
  return isDay(first) ? first : undefined;
};

/** How long before the leaving day a day to ask for it may lie, in days: an older one is about moving in. */
const longestAhead = 90;

/** About the end of the tenancy: its days lie ahead, or it has none and does not hang on the beginning. */
function isOfTheEnd(x: LegalDate, today: string, leaves: string | undefined): boolean {
  if (!duties.includes(x.duty) || x.state === 'not-needed' || /move-in|pet|abandon/.test(x.id)) return false;
  const days = [lastOf(x), firstOf(x)].filter((d): d is string => d !== undefined);
  if (days.length === 0) return !x.dependsOn.includes('/tenancy/began');
  return days.some((d) => d >= today || (leaves !== undefined && addDays(d, longestAhead) >= leaves));
}

const inOrder = (days: (string | undefined)[]): string[] => days.filter((d): d is string => d !== undefined).sort();

/** `a`: the case as if an inspection were asked for. */
export function inspectionDays(
  a: Pick<Assessment, 'dates'>,
  today: string,
  leaves: string | undefined,
): InspectionDays {
  const rules = a.dates.filter((x) => isOfTheEnd(x, today, leaves));
  const held = rules.filter((x) => x.duty === 'hold-inspection' || x.duty === 'joint-inspection');
  // What can only be asked for after leaving is another right: to look at the landlord's list.
  const asks = rules
    .filter((x) => x.duty === 'request-inspection')
    .map(lastOf)
    .filter((day) => !leaves || !day || day <= leaves);
  const [askBy] = inOrder(asks);
  const from = inOrder(held.map(firstOf)).pop();
  const [to] = inOrder(held.map(lastOf));
  return { ...(askBy && { askBy }), ...(from && { from }), ...(to && (!from || to >= from) && { to }), rules };
}
