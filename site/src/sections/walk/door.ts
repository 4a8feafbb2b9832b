// The door to the walk-through: what lies behind is fetched when a case has one, and nothing of it before.

import { later } from '../../app/later';

/** The part with its sentences. */
const whole = <T extends { wordsThere: Promise<void> }>(load: () => Promise<T>) =>
  later(async () => {
    const part = await load();
    await part.wordsThere;
    return part;
  });

export const walkPart = whole(() => import('./walk'));
/** What was seen, beside what is charged. */
export const seenPart = whole(() => import('./seen'));
