// What the engine answers. The page shows it and adds nothing to it. The shapes are those of the published schemas (answers.ts).

import type * as answers from './answers';

export type {
  Days,
  Defect,
  FactFromText,
  Fault,
  JudgedLine,
  Law,
  LegalDate,
  Question,
  Remedies,
  Remedy,
  Source,
  Step,
  Totals,
  Verdict,
} from './answers';
export type { Depreciation, DutyState, Range } from './answers';
export type LawRule = answers.Rule;

/** Something that names its sources: ids into the assessment's list, and the same as one readable text. */
export interface Sourced {
  source?: string;
  sourceIds?: string[];
}

/** The assessment of a case that could be read. */
export type Assessment = Required<answers.Assessment>;
