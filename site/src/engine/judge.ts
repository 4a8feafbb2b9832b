// Judging a case that is still being typed. A value the engine cannot read is shown as a fault at its field and left out of the
// judgement, so that one half-typed date does not take the whole result away. The faults are always shown: nothing is dropped in silence.

import type { Assessment, Fault } from '../case/assessment';
import type { CaseFile } from '../case/case';
import { withoutAt } from '../case/pointer';
import type { Engine } from './engine';

export interface Judged {
  result: Assessment | null;
  faults: Fault[];
}

const deepestLast = (a: Fault, b: Fault): number => b.at.localeCompare(a.at, 'en', { numeric: true });

/** `subject` without what the faults point at. Later items of a list go first, so that the pointers stay right. */
function without(subject: CaseFile, faults: Fault[]): CaseFile {
  const places = [...new Map(faults.map((f) => [f.at, f])).values()].filter((f) => f.at !== '').sort(deepestLast);
  return places.reduce((c, f) => withoutAt(c, f.at), subject);
}

/** Whether a charge has words; what they say of it the engine finds out once it reads words. */
export const leavesToWords = (subject: CaseFile): boolean =>
  subject.lines.some((line) => line.text && line.credit !== true);

export async function judge(engine: Engine, subject: CaseFile, today: string): Promise<Judged> {
  const first = await engine.assess(subject, today);
  if (first.errors.length === 0) return { result: first, faults: [] };
  const rest = without(subject, first.errors);
  const second = await engine.assess(rest, today);
  return { result: second.errors.length === 0 ? second : null, faults: first.errors };
}
