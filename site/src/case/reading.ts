// What the engine makes of the text of a statement (engine/src/output/reading.h). Lines count from 1; `start` and `end` count
// UTF-16 code units of the line, as strings do here. Sums are decimal strings, negative where in the tenant's favour.

import type { Quantity } from './case';

export interface Place {
  line: number;
  start: number;
  end: number;
}

export interface ReadLine {
  text: string;
  amount: string;
  role: 'charge' | 'credit' | 'tax';
  /** The sum is not printed: it is count times price, both printed. */
  computed: boolean;
  kind: string | null;
  element: string | null;
  finding: string | null;
  place: string | null;
  quantity: Quantity | null;
  confidence: number;
  /** Where the words stand, line by line. */
  from: Place[];
  amountFrom: Place;
}

export interface Unread {
  line: number;
  text: string;
  /** Why it was not read as a charge: a code, and in words. */
  why?: string;
  say: string;
}

export interface ReadCheck {
  code: string;
  text: string;
  /** What would explain it, in words. */
  slip?: string | null;
  line: number;
}

/** A charge in one reading of the paper and none in another as likely; those of one reading are taken together. */
export interface OpenChoice {
  text: string;
  amount: string;
  reading: number;
  from: Place[];
  amountFrom: Place;
}

/** A sum of the paper that comes out, with the lines it is made of. */
export interface ClosedSum {
  code: string;
  text: string;
  line: number;
  from: number[];
}

/** What a statement says about itself, and the days it names. */
export type SumName = 'deposit' | 'interest' | 'statedTotal' | 'statedRefund' | 'statedBalanceDue';
export type DayName = 'statement' | 'sent' | 'moveOut' | 'moveIn' | 'depositPaid';

/** `lines` is missing where the text was refused. */
export interface Reading extends Record<SumName, string | null> {
  lines: ReadLine[];
  dates: Record<DayName, string | null>;
  /** Where a sum or day stands. */
  places: Partial<Record<SumName | DayName, Place>>;
  language: 'en' | 'es';
  tray: Unread[];
  /** Arithmetic of the paper that does not come out. */
  checks: ReadCheck[];
  closed: ClosedSum[];
  choices: OpenChoice[];
}
