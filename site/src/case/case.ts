// The case file as the page holds it: what a person knows, in the case file's own member names.
// A value may be ill-formed while it is being typed; the engine, not the page, judges it.

import type { WalkThrough } from './walk';

export type Side = 'tenant' | 'adviser' | 'landlord';
export type Yes = boolean | null;

export interface CostComponent {
  kind: string;
  amount: string;
}

export interface Quantity {
  count: number | string;
  unit: string;
}

export interface Line {
  id: string;
  text?: string;
  amount?: string;
  kind?: string;
  element?: string;
  finding?: string;
  location?: string;
  installed?: string;
  costComponents?: CostComponent[];
  chargedQuantity?: Quantity;
  damagedQuantity?: Quantity;
  [member: string]: unknown;
}

export interface EventOn {
  kind: string;
  date: string;
  /** How it was sent, of what is sent. */
  deliveryMethod?: string;
}

export interface Deposit {
  kind?: string;
  amount?: string;
  paid?: string;
  interestPaid?: string;
}

export interface CaseFile {
  wearline: 2;
  title?: string;
  jurisdiction?: string;
  locality?: string;
  side?: Side;
  language?: string;
  tenancy?: Record<string, unknown>;
  deposits?: Deposit[];
  statement?: Record<string, unknown> & { enclosedDocuments?: string[]; missingDocuments?: string[] };
  records?: Record<string, unknown>;
  events?: EventOn[];
  circumstances?: Record<string, unknown>;
  walkThrough?: WalkThrough;
  lines: Line[];
}

export const emptyCase = (): CaseFile => ({ wearline: 2, side: 'tenant', lines: [] });

/** True if the person has entered nothing but the side, the place or the language. */
export const isBlank = (c: CaseFile): boolean =>
  c.lines.length === 0 &&
  !c.tenancy &&
  !c.deposits &&
  !c.statement &&
  !c.records &&
  !c.events &&
  !c.circumstances &&
  !c.walkThrough;

/** An id no line of the case has yet: one more than the largest number in use. */
export function freshLineId(lines: readonly { id: string }[]): string {
  const used = lines.map((l) => Number.parseInt(l.id, 10)).filter(Number.isFinite);
  return String(Math.max(0, ...used) + 1);
}
