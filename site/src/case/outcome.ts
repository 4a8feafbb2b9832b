// What follows for the money of each charge: fair, fair in part, not fair, or a question first. The engine judges; this only sorts its answers.

import type { Assessment, JudgedLine, Question, Totals } from './assessment';
import type { CaseFile } from './case';
import { cents } from './cents';

export type Outcome = 'not-fair' | 'fair' | 'partly' | 'ask';
/** The three heaps a charge's money goes to; a charge that is fair in part goes to two of them. */
export type Heap = 'not-fair' | 'fair' | 'ask';

/** What the guide or a fact says is not the tenant's to pay, though another fact could still turn it. */
const notTheTenants = ['ordinary-wear', 'landlord-responsibility', 'pre-existing', 'barred'];
const plain = (sum: number): string => `${Math.trunc(sum / 100)}.${String(sum % 100).padStart(2, '0')}`;

/** True if the judged case or its statement said what came back. Else what is still due cannot be told. */
export const knowsPaidBack = (c: CaseFile, t: Totals): boolean =>
  !t.paidBackAssumed || c.statement?.['statedRefund'] != null;

/**
 * The open question about a charge whose answer moves the most; the engine lists them in that order. What is asked of the whole
 * statement may turn a charge too: it comes after what is asked of the charge itself.
 */
export function questionOf(a: Assessment, line: JudgedLine): Question | undefined {
  const own = a.questions.filter((q) => q.line === line.id);
  const moves = own.filter((q) => cents(q.effect || '0.00') > 0);
  return moves.find((q) => q.asks.startsWith('/lines/')) ?? moves[0] ?? own.find((q) => q.code === 'amount');
}

/** What the law says of this charge and not, alike, of others too: that is told once (law.sharedRules). */
export function ownBars(a: Assessment, line: JudgedLine): JudgedLine['bars'] {
  const shared = new Set((a.law?.sharedRules ?? []).filter((s) => s.lines.includes(line.id)).map((s) => s.rule));
  return (line.bars ?? []).filter((b) => !shared.has(b.rule));
}

export function outcomeOf(a: Assessment, line: JudgedLine): Outcome {
  const [low, likely, high, claimed] = [line.fair.low, line.fair.likely, line.fair.high, line.claimed].map(cents) as [
    number,
    number,
    number,
    number,
  ];
  if (claimed === 0) return 'ask';
  // Nothing can turn it: there is nothing to ask.
  if (high === 0) return 'not-fair';
  if (low === claimed) return 'fair';
  if (line.fair.likely === null) return 'ask';
  if (notTheTenants.includes(line.verdict) && likely === 0) return 'not-fair';
  if (low < high && (!line.certain || questionOf(a, line))) return 'ask';
  return likely === 0 ? 'not-fair' : likely === claimed ? 'fair' : 'partly';
}

/** True where a charge for damage comes to nothing because the thing was older than such things last. */
export const isUsedUp = (line: JudgedLine): boolean =>
  line.verdict === 'chargeable-damage' && cents(line.fair.likely) === 0 && line.depreciation !== null;

export const heapsOf = (outcome: Outcome): Heap[] => (outcome === 'partly' ? ['fair', 'not-fair'] : [outcome]);

export interface Sorted {
  outcomes: Map<string, Outcome>;
  /** How many charges touch each heap, and how much of what was charged lies there; the three sums come to all that was charged. */
  count: Record<Heap, number>;
  sum: Record<Heap, string>;
}

export function sortLines(a: Assessment): Sorted {
  const outcomes = new Map(a.lines.map((l) => [l.id, outcomeOf(a, l)]));
  const count = { 'not-fair': 0, fair: 0, ask: 0 };
  const sum = { 'not-fair': 0, fair: 0, ask: 0 };
  for (const line of a.lines) {
    const outcome = outcomes.get(line.id)!;
    heapsOf(outcome).forEach((heap) => count[heap]++);
    const claimed = cents(line.claimed);
    if (outcome === 'partly') {
      sum.fair += cents(line.fair.likely);
      sum['not-fair'] += claimed - cents(line.fair.likely);
    } else sum[outcome] += claimed;
  }
  return {
    outcomes,
    count,
    sum: { 'not-fair': plain(sum['not-fair']), fair: plain(sum.fair), ask: plain(sum.ask) },
  };
}
