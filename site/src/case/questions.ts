// The open questions as a person goes through them: one that was answered stays where it is, to be changed, and the others keep their
// places, so that nothing moves under the hand that types.

import type { Question } from './assessment';

export interface Asked {
  question: Question;
  /** Answered here: the engine no longer asks it. */
  answered: boolean;
}

/** The same for the same question in every result. */
export const keyOf = (q: Question): string => `${q.asks} ${q.id ?? ''} ${q.code}`;

/**
 * What to show, from what was shown before and what the engine asks now, at most `most` open ones. `settled` tells whether a question
 * the engine no longer asks was answered, not made idle. Nothing answered yet: the engine's own order.
 */
export function goOn(
  before: readonly Asked[],
  open: readonly Question[],
  most: number,
  settled: (q: Question) => boolean,
  steady: boolean,
): Asked[] {
  const now = new Map(open.map((q) => [keyOf(q), q]));
  const stays = before.flatMap(({ question }): Asked[] => {
    const still = now.get(keyOf(question));
    if (still) return [{ question: still, answered: false }];
    return settled(question) ? [{ question, answered: true }] : [];
  });
  const begun = steady || stays.some((a) => a.answered);
  const kept = begun ? stays : [];
  const shown = new Set(kept.map((a) => keyOf(a.question)));
  const room = Math.max(0, most - kept.filter((a) => !a.answered).length);
  const more = open.filter((q) => !shown.has(keyOf(q))).slice(0, room);
  return [...kept, ...more.map((question) => ({ question, answered: false }))];
}
