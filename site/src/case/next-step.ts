// What to do next, and by which day: the one thing the page says first. Pure: the engine's answer, the case and the day go in.

import type { Assessment, LegalDate, Question } from './assessment';
import type { CaseFile, Side } from './case';
import { keyOf } from './questions';

/** Facts without which nothing else can be said, in the order they are asked for. */
export type Basic = 'place' | 'moved-out' | 'deposit' | 'came-back';

export type NextStep =
  /** A right of one's own whose last day is past. */
  | { kind: 'lapsed'; date: LegalDate }
  /** A day of one's own that can still be kept; `sure` is false where it is open whether it applies. */
  | { kind: 'own-day'; date: LegalDate; sure: boolean }
  /** The other side let a day pass (to a landlord: one's own). */
  | { kind: 'missed'; date: LegalDate; late: number; forfeiture: 'yes' | 'possible' | 'no' }
  | { kind: 'basic'; what: Basic }
  /** A fact that starts the clock of a day about the money, by its place in the case. */
  | { kind: 'clock'; at: string }
  | { kind: 'question'; question: Question }
  | { kind: 'letter' }
  /** An answer, or the other side's day, is to be waited for. */
  | { kind: 'wait'; date: LegalDate }
  | { kind: 'answer'; written: string }
  | { kind: 'living-there'; leaves: string }
  /** Nothing is open: all that is due came back. */
  | { kind: 'done' };

/** Duties about the money and its list; others come after them. */
const central = ['itemize', 'notice-of-claim', 'return-deposit', 'refund-balance', 'final-itemize', 'send-receipts'];
const isCentral = (x: LegalDate): boolean => central.includes(x.duty);
/** A landlord's move-in papers are no next step once the tenant has left. */
const early = ['move-in-list', 'return-move-in-list', 'deposit-notice', 'give-report-copy'];

const isZero = (amount: string | null | undefined): boolean => amount == null || /^-?0+(\.0+)?$/.test(amount);
const isDay = (day: unknown): day is string => typeof day === 'string' && /^\d{4}-\d\d-\d\d$/.test(day);
const daysBetween = (a: string, b: string): number =>
  Math.round((Date.parse(`${b}T12:00:00Z`) - Date.parse(`${a}T12:00:00Z`)) / 86_400_000);

const firstLast = (x: LegalDate): string => x.last?.earliest ?? x.last?.latest ?? '9999';
const byDay = (a: LegalDate, b: LegalDate): number => firstLast(a).localeCompare(firstLast(b));

/** The day the home was or will be left, where it is known to the day. */
export function leftOn(c: CaseFile): string | undefined {
  const day = c.tenancy?.['possessionReturned'] ?? c.tenancy?.['ended'];
  return isDay(day) ? day : undefined;
}
export const livesThere = (c: CaseFile, today: string): boolean => (leftOn(c) ?? '') > today;

/** Dates each once: a place may state the same duty and day in two rules. */
export function eachOnce(dates: LegalDate[]): LegalDate[] {
  const seen = new Set<string>();
  return dates.filter((x) => {
    const key = [x.who, x.label, x.state, x.last?.earliest, x.last?.latest, x.notBefore].join('|');
    return !seen.has(key) && seen.add(key);
  });
}

/** True if the last day of a duty lies ahead, or is today. A day that must not come too early is no last day. */
export const isAhead = (x: LegalDate, today: string): boolean =>
  !x.notBefore && isDay(x.last?.earliest) && x.last.earliest >= today;

function basics(c: CaseFile, side: Side): Basic[] {
  const missing: Basic[] = [];
  if (!c.jurisdiction) missing.push('place');
  if (!c.tenancy?.['possessionReturned']) missing.push('moved-out');
  if (!c.deposits?.[0]?.amount) missing.push('deposit');
  if (side !== 'landlord' && c.statement?.['refundPaid'] === undefined) missing.push('came-back');
  return missing;
}

/** True if the answer decides whether a day was kept: one about the money, or one that costs the tenant a right. */
export const affectsDeadline = (q: Question): boolean => q.affectsDeadline;

/** Days about the money, or that cost the tenant a right, of which it is open whether they were kept. */
const undecided = (a: Assessment): LegalDate[] =>
  a.dates.filter((x) => x.state === 'undetermined' && !x.notBefore && (isCentral(x) || x.losesRightIfMissed));

/** The facts that decide such a day; where the engine does not name them, every one that starts a clock here. */
export function deciding(a: Assessment, clocks: readonly string[]): string[] {
  const open = undecided(a).filter((x) => !x.dependsOn || x.dependsOn.some((at) => clocks.includes(at)));
  return clocks.filter((at) => open.some((x) => !x.dependsOn || x.dependsOn.includes(at)));
}

/** What only who gets a statement can know; who is about to send one is not asked. */
const theirs = [
  '/statement/statementReceived',
  '/statement/sent',
  '/statement/received',
  '/statement/refundPaid',
  '/statement/refundSent',
];

/** The questions worth a step of their own: those that turn a day or a right, then those that move money. */
export function ranked(a: Assessment, side: Side): Question[] {
  const asked = a.questions.filter((q) => side !== 'landlord' || !theirs.includes(q.asks));
  const turns = asked.filter((q) => affectsDeadline(q));
  const moves = asked.filter((q) => !turns.includes(q) && (!isZero(q.effect) || q.code === 'amount'));
  return [...turns, ...moves];
}

/** The last letter the case says was written and nothing answered. */
function written(c: CaseFile): string | undefined {
  const own = ['tenant-demand', 'tenant-objected', 'tenant-answered', 'documents-requested', 'suit-notice-given'];
  const days = (c.events ?? []).filter((e) => own.includes(e.kind) && isDay(e.date)).map((e) => e.date);
  const last = days.sort().pop();
  const paid = c.statement?.['refundSent'];
  return last && !(isDay(paid) && paid > last) ? last : undefined;
}

/** True if some money is or may be due to the tenant. */
const mayBeDue = (a: Assessment): boolean =>
  !a.totals.shortfall ||
  !isZero(a.totals.shortfall.high) ||
  (a.remedies !== null && a.remedies.forfeiture !== 'no' && !isZero(a.remedies.amountDueIfForfeited.high));

interface Asked {
  result: Assessment;
  subject: CaseFile;
  side: Side;
  today: string;
  /** Questions and facts the person does not know, by what they ask. */
  skipped: ReadonlySet<string>;
  /** Facts that start this place's clocks and are not known, as places of the case. */
  clocks: readonly string[];
  /** True if something typed could not be read and was left out. */
  leftOut: boolean;
  /** Days a letter gives for its answer. */
  replyDays: number;
}

/** Every step that is open, the most pressing first; never empty. */
export function nextSteps(asked: Asked): NextStep[] {
  const { result: a, subject: c, side, today, skipped, leftOut, clocks } = asked;
  const dates = eachOnce(a.dates);
  const own = side === 'landlord' ? 'landlord' : 'tenant';
  const mine = dates.filter((x) => x.who === own);
  const theirs = dates.filter((x) => x.who !== own);
  const steps: NextStep[] = [];
  const asks = basics(c, side).filter((b) => !skipped.has(b));
  const settled = side !== 'landlord' && asks.length === 0 && !leftOut && a.totals.shortfall !== null && !mayBeDue(a);
  const owes = a.totals.owedByTenant !== null && !isZero(a.totals.owedByTenant.high);

  if (settled && !owes) return [{ kind: 'done' }];

  // Two days that cannot both be right make all that is counted from them doubtful.
  const wrongDay = a.questions.find((q) => q.code === 'date-order' && !skipped.has(keyOf(q)));
  if (wrongDay) steps.push({ kind: 'question', question: wrongDay });

  const canBeLost = (x: LegalDate) => (side === 'landlord' ? isCentral(x) : x.losesRightIfMissed);
  const isLost = (x: LegalDate) => canBeLost(x) && x.state === 'missed' && !early.includes(x.duty);
  if (side === 'landlord') {
    mine
      .filter(isLost)
      .sort(byDay)
      .slice(0, 1)
      .forEach((date) => steps.push(missedStep(date, a, today)));
  } else {
    mine.filter(isLost).forEach((date) => steps.push({ kind: 'lapsed', date }));
  }
  const ahead = mine.filter((x) => canBeLost(x) && isAhead(x, today) && !early.includes(x.duty)).sort(byDay);
  ahead.filter((x) => x.state === 'open').forEach((date) => steps.push({ kind: 'own-day', date, sure: true }));
  ahead.filter((x) => x.state === 'undetermined').forEach((date) => steps.push({ kind: 'own-day', date, sure: false }));

  if (livesThere(c, today)) {
    steps.push({ kind: 'living-there', leaves: leftOn(c)! });
    return steps;
  }

  if (side !== 'landlord') {
    const missed = theirs.filter((x) => x.state === 'missed' && x.last?.latest && !early.includes(x.duty)).sort(byDay);
    const first = missed.find(isCentral) ?? missed.find((x) => x.ifMissed !== '');
    const reply = written(c);
    if (reply && daysBetween(reply, today) < asked.replyDays) steps.push({ kind: 'answer', written: reply });
    if (first) steps.push(missedStep(first, a, today));
  }
  asks.forEach((what) => steps.push({ kind: 'basic', what }));

  const silent = c.lines.length === 0;
  const theirDay = theirs.filter((x) => x.state === 'open' && isCentral(x) && isAhead(x, today)).sort(byDay)[0];
  // Nothing came, and there is still time for it: nothing can be asked for yet.
  if (side !== 'landlord' && silent && theirDay) steps.push({ kind: 'wait', date: theirDay });

  const clock = deciding(a, clocks).find((at) => !skipped.has(at));
  if (clock) steps.push({ kind: 'clock', at: clock });
  ranked(a, side)
    .filter((q) => q.asks !== clock && q.code !== 'date-order')
    .slice(0, 3)
    .filter((q) => !skipped.has(keyOf(q)))
    .slice(0, 1)
    .forEach((question) => steps.push({ kind: 'question', question }));
  steps.push({ kind: 'letter' });
  return steps;
}

function missedStep(date: LegalDate, a: Assessment, today: string): NextStep {
  return {
    kind: 'missed',
    date,
    late: date.last?.latest ? daysBetween(date.last.latest, today) : 0,
    forfeiture: a.remedies?.forfeiture ?? 'no',
  };
}
