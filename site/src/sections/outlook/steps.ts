// Which steps come next, and going from one to the next.

import type { Desk, Sheet } from '../../app/desk';
import { replyDays } from '../../case/letter-numbers';
import { nextSteps, type NextStep } from '../../case/next-step';
import { keyOf } from '../../case/questions';
import { openClocks } from '../standing/standing';
import { asideOf, putAside } from './aside';

/** The step that is being answered: it stays while the cursor is in it, though its answer makes it the last one's. */
let held: { sheet: Sheet; step: NextStep } | null = null;

const inStep = (): boolean => document.activeElement?.closest('.next-answer') != null;

export function stepsOf(d: Desk): NextStep[] {
  if (!d.result) return [];
  return nextSteps({
    result: d.result,
    subject: d.case,
    side: d.side,
    today: d.today,
    skipped: asideOf(d),
    clocks: openClocks(d),
    leftOut: d.sheet.faults.length > 0,
    replyDays,
  });
}

/** The same for a case behind the one in front, as far as days go. */
export function stepsOfSheet(d: Desk, sheet: Sheet): NextStep[] {
  if (!sheet.result) return [];
  const subject = sheet.history.now;
  return nextSteps({
    result: sheet.result,
    subject,
    side: subject.side ?? 'tenant',
    today: d.today,
    skipped: new Set(),
    clocks: [],
    leftOut: sheet.faults.length > 0,
    replyDays,
  });
}

export function shownSteps(d: Desk): NextStep[] {
  const steps = stepsOf(d);
  if (held && held.sheet === d.sheet && inStep()) return [held.step, ...steps];
  held = steps[0] ? { sheet: d.sheet, step: steps[0] } : null;
  return steps;
}

/** Goes on to the next step and puts the cursor on it. */
export function goOn(d: Desk, skip?: NextStep): void {
  if (skip?.kind === 'question') putAside(d, keyOf(skip.question));
  if (skip?.kind === 'basic') putAside(d, skip.what);
  if (skip?.kind === 'clock') putAside(d, skip.at);
  held = null;
  (document.activeElement as HTMLElement | null)?.blur();
  d.draw();
  void Promise.resolve().then(() => document.getElementById('next-title')?.focus());
}
