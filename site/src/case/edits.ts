// Changes to a case: each takes one and gives the next. Nothing is changed in place.

import { type CaseFile, freshLineId, type Line } from './case';
import { withValueAt } from './pointer';
import { amountFromTyping, isBelowZero, withoutMinus } from './typed-money';

/** An event of the case set to a day, or taken out. What else is known of it stays. */
export function withEvent(c: CaseFile, what: string, on: string | undefined): CaseFile {
  const at = c.events?.findIndex((e) => e.kind === what) ?? -1;
  if (on === undefined) {
    if (at < 0) return c;
    const { events, ...rest } = c;
    const left = events?.filter((_, i) => i !== at) ?? [];
    return left.length ? { ...rest, events: left } : rest;
  }
  return withValueAt(c, `/events/${at < 0 ? (c.events?.length ?? 0) : at}`, {
    ...c.events?.[at],
    kind: what,
    date: on,
  });
}

/** How something of the case was sent; nothing where no day of it is known. */
export function withEventHow(c: CaseFile, what: string, how: string | undefined): CaseFile {
  const at = c.events?.findIndex((e) => e.kind === what) ?? -1;
  return at < 0 ? c : withValueAt(c, `/events/${at}`, present({ ...c.events![at], deliveryMethod: how }));
}

export const withLine = (c: CaseFile, line: Line): CaseFile => ({ ...c, lines: [...c.lines, line] });

export const withoutLine = (c: CaseFile, index: number): CaseFile =>
  c.lines[index] ? { ...c, lines: c.lines.filter((_, i) => i !== index) } : c;

/** The charge at `index` once more, right after it. */
export function withCopy(c: CaseFile, index: number, id = freshLineId(c.lines)): CaseFile {
  const line = c.lines[index];
  return line ? { ...c, lines: [...c.lines.slice(0, index + 1), { ...line, id }, ...c.lines.slice(index + 1)] } : c;
}

/** The charge at `index` one place up or down; the same case where there is no such place. */
export function withMoved(c: CaseFile, index: number, by: -1 | 1): CaseFile {
  const to = index + by;
  const line = c.lines[index];
  if (!line || to < 0 || to >= c.lines.length) return c;
  const rest = c.lines.filter((_, i) => i !== index);
  return { ...c, lines: [...rest.slice(0, to), line, ...rest.slice(to)] };
}

/** What a credit is called in a case: the same sum without its sign, marked as lowering the charges. */
export function asCredit(c: CaseFile, index: number): CaseFile {
  const line = c.lines[index];
  return line ? withLineChanged(c, index, { amount: sumOf(String(line.amount ?? '')), credit: true }) : c;
}

/** What is typed into the sum of a credit: with its sign it stays one, without it is a charge. */
export const withCreditTyped = (c: CaseFile, index: number, typed: string): CaseFile =>
  withLineChanged(c, index, { amount: sumOf(typed), credit: isBelowZero(typed) || undefined });

const struckOf = (c: CaseFile, index: number): string[] =>
  (c.lines[index]?.['dismissedFacts'] as string[] | undefined) ?? [];
const listOrNone = (list: string[]): string[] | undefined => (list.length ? list : undefined);

/** What the words of a charge say of one field, taken into the field. */
export const withFactKept = (c: CaseFile, index: number, field: string, value: unknown): CaseFile =>
  withLineChanged(c, index, {
    [field]: value,
    dismissedFacts: listOrNone(struckOf(c, index).filter((f) => f !== field)),
  });

/** The same struck: the words are not taken for that field. */
export const withFactStruck = (c: CaseFile, index: number, field: string): CaseFile =>
  withLineChanged(c, index, { dismissedFacts: [...struckOf(c, index).filter((f) => f !== field), field] });

export const withWordsReadAgain = (c: CaseFile, index: number): CaseFile =>
  withLineChanged(c, index, { dismissedFacts: undefined });

const sumOf = (typed: string): string | undefined => amountFromTyping(withoutMinus(typed));

/** Members that are undefined are taken out. */
export const present = <T extends object>(o: T): T =>
  Object.fromEntries(Object.entries(o).filter(([, v]) => v !== undefined)) as T;

function withLineChanged(c: CaseFile, index: number, changes: Partial<Line>): CaseFile {
  const line = present({ ...c.lines[index]!, ...changes });
  return { ...c, lines: c.lines.map((l, i) => (i === index ? line : l)) };
}
