// The engine's answer about the walk-through: what would be fair if all that was seen were charged, and the days of an inspection if one
// is asked for. Both are the same judgement as of any case.

import type { Desk, Sheet } from '../../app/desk';
import type { Assessment } from '../../case/assessment';
import type { CaseFile } from '../../case/case';
import { leftOn } from '../../case/next-step';
import { type Answer, answersOf, caseIfLeft } from '../../case/walk-answers';
import { HeldAnswer } from '../../engine/held-answer';
import { judge } from '../../engine/judge';
import { language } from '../../say/wording';

class Held {
  left = new HeldAnswer<Assessment | null>();
  asked = new HeldAnswer<Assessment | null>();
}
const held = new WeakMap<Sheet, Held>();

function heldOf(sheet: Sheet): Held {
  const known = held.get(sheet);
  if (known) return known;
  const fresh = new Held();
  held.set(sheet, fresh);
  return fresh;
}

function answer(d: Desk, of: HeldAnswer<Assessment | null>, subject: CaseFile): Assessment | null {
  const { engine, today } = d;
  if (!engine) return null;
  const asked = { ...subject, language: language() };
  // A new result of the case itself means new rules; what is typed elsewhere changes nothing here.
  const basis = [JSON.stringify(asked), today, d.result?.law?.jurisdiction, d.result?.law?.name];
  return (
    of.get(
      basis,
      () => judge(engine, asked, today).then((j) => j.result),
      () => d.draw(),
    ) ?? null
  );
}

export const leftJudged = (d: Desk): Assessment | null =>
  answer(d, heldOf(d.sheet).left, caseIfLeft(d.case, d.catalogue));

export const answers = (d: Desk): Answer[] => answersOf(d.case, leftJudged(d));

/** Whether the end of the lease is not known and was taken to be the day of moving out. */
export const endTaken = (c: CaseFile): boolean => !c.tenancy?.['ended'] && leftOn(c) !== undefined;

/** The case as if an inspection were asked for: what days it would give. */
function caseIfAsked(c: CaseFile): CaseFile {
  const { walkThrough: _, ...rest } = c;
  const inspection = { ...(c.records?.['preMoveOutInspection'] as object | undefined), requested: true };
  const ended = endTaken(c) ? { ended: leftOn(c) } : {};
  return {
    ...rest,
    lines: [],
    tenancy: { ...c.tenancy, ...ended },
    records: { ...c.records, preMoveOutInspection: inspection },
  };
}

export const askedJudged = (d: Desk): Assessment | null => answer(d, heldOf(d.sheet).asked, caseIfAsked(d.case));
