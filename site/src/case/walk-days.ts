// The right to an inspection before moving out, as days: from when and until when it may be held, until when it must be asked for. A day
// before which nothing may be done is the beginning of a window, never a deadline.

import type { Assessment, LegalDate } from './assessment';
import { isDay } from './day';

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

/** About the end of the tenancy: its days lie ahead, or it has none and does not hang on the beginning. */
function isOfTheEnd(x: LegalDate, today: string): boolean {
  if (!duties.includes(x.duty) || x.state === 'not-needed') return false;
  if (/move-in|pet|abandon/.test(x.id)) return false;
  const days = [lastOf(x), firstOf(x)].filter((d): d is string => d !== undefined);
  return days.length === 0
    ? !x.needs.includes('/tenancy/began')
    : x.duty === 'request-inspection' || days.some((d) => d >= today);
}

export function inspectionDays(a: Assessment, today: string): InspectionDays {
  const rules = a.dates.filter((x) => isOfTheEnd(x, today));
  const held = rules.filter((x) => x.duty === 'hold-inspection' || x.duty === 'joint-inspection');
  const asks = rules.filter((x) => x.duty === 'request-inspection');
  const latest = (days: (string | undefined)[]) =>
    days
      .filter((d): d is string => d !== undefined)
      .sort()
      .pop();
  const earliest = (days: (string | undefined)[]) => days.filter((d): d is string => d !== undefined).sort()[0];
  const askBy = earliest(asks.map(lastOf));
  const from = latest(held.map(firstOf));
  const to = earliest(held.map(lastOf));
  return { ...(askBy && { askBy }), ...(from && { from }), ...(to && (!from || to >= from) && { to }), rules };
}
