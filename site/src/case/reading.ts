// What the engine makes of the text of a statement (reading.schema.json). Lines count from 1; `start` and `end` count UTF-16 code units of
// the line, as strings do here. Sums are decimal strings, negative where in the tenant's favor.

import type * as answers from './answers';

export type { ReadLine, TextPlace } from './answers';
/** A line that was not read as a charge. */
export type Unread = Required<answers.Reading>['unread'][number];
/** A sum of the paper that does not come out, and one that does, with the lines it is made of. */
export type ReadCheck = Required<answers.Reading>['arithmeticErrors'][number];
export type ConfirmedSum = Required<answers.Reading>['arithmeticConfirmed'][number];
/** A charge in one reading of the paper and none in another as likely; those of one reading are taken together. */
export type UncertainCharge = Required<answers.Reading>['uncertainCharges'][number];

/** What a statement says about itself, and the days it names. */
export type SumName = 'deposit' | 'interest' | 'statedTotal' | 'statedRefund' | 'statedBalanceDue';
export type DayName = 'statement' | 'sent' | 'moveOut' | 'moveIn' | 'depositPaid';

/** The reading of a text; it has `errors` in place of everything else where the text was refused. */
export type Reading = Required<Omit<answers.Reading, 'errors' | 'engine'>>;
