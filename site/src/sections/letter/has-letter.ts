// Whether there is anything to write about yet: a charge, or a home that was left or will be.

import type { Desk } from '../../app/desk';
import { leftOn } from '../../case/next-step';

export const hasLetter = (d: Desk): boolean =>
  d.result !== null && (d.case.lines.length > 0 || leftOn(d.case) !== undefined);
