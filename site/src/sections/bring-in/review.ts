// What was found in a statement, as the person goes through it: charges, other facts, and lines not read. Plain data and pure changes.

import type { CaseFile, Line } from '../../case/case';
import { freshLineId } from '../../case/case';
import { placeNamed } from '../../case/place-named';
import { valueAt, withValueAt } from '../../case/pointer';
import type { DayName, UncertainCharge, TextPlace, ReadLine, Reading, SumName, Unread } from '../../case/reading';
import { amountFromTyping } from '../../case/typed-money';
import { places } from '../../engine/rules';
import { noSums, type PictureSums } from './picture-sums';
import { canReadPictures } from './source/picture-library';
import type { Piece, Source } from './source/source';

/** Less certain than this, a figure read from a picture is for the person to check; a word likewise. */
export const sureFigure = 85;
export const sureWord = 65;

export interface Charge {
  key: number;
  text: string;
  /** In the case file's form, without a sign; anything else as typed. */
  amount: string;
  credit: boolean;
  /** Where its words and its sum stand. Empty for a line that was made from the tray without a sum. */
  places: TextPlace[];
  amountPlace?: TextPlace;
  /** Pieces of the picture that were not read with certainty, sum first. */
  doubtful: Piece[];
  /** The sum itself is in doubt. */
  sumInDoubt: boolean;
  /** It was hard to read, and the paper's own sums come out with it. */
  settled?: boolean;
  /** The person has looked and says it is right. */
  checked: boolean;
  read?: ReadLine;
  /** The reading of the paper it belongs to, where the person chose between several. */
  choice?: number;
  /** The question that was answered with yes. */
  asked?: number;
}

/** A sum that may be a charge, and that no sum of the paper confirms: the person says whether it is. */
export interface Asked {
  key: number;
  open: UncertainCharge;
  charged?: boolean;
}

export type FactKind = 'money' | 'date' | 'place';

export interface Fact {
  /** JSON Pointer into the case. */
  at: string;
  kind: FactKind;
  value: string;
  /** Unknown where the sum is one of several put together. */
  place?: TextPlace;
  doubtful: Piece[];
  /** The person has typed what it is. */
  checked?: boolean;
  take: boolean;
}

export interface TrayLine extends Unread {
  key: number;
  /** Figures in it that were hard to read. */
  doubtful: Piece[];
}

export interface Review {
  source: Source;
  reading: Reading;
  charges: Charge[];
  asked: Asked[];
  facts: Fact[];
  tray: TrayLine[];
  nextKey: number;
}

/** The pieces of the source a place covers. A place without extent covers its whole line. */
export function piecesAt(source: Source, place: TextPlace): Piece[] {
  const line = source.lines[place.line - 1];
  if (!line) return [];
  if (place.end <= place.start) return line.pieces;
  return line.pieces.filter((p) => p.start < place.end && p.end > place.start);
}

const certainty = (p: Piece): number => p.confidence ?? 100;

/** A sum without cents among sums with them is one whose mark may have been lost. */
const lostCents = (source: Source, p: Piece): boolean => {
  const text = source.lines.find((l) => l.pieces.includes(p))?.text.slice(p.start, p.end) ?? '';
  return p.confidence !== undefined && /\d{3}/.test(text) && !/[.,]\d\d\b/.test(text);
};

const doubtsOf = (source: Source, place: TextPlace, sure: number): Piece[] =>
  piecesAt(source, place).filter((p) => certainty(p) < sure);

/** The pieces of a sum for the person to check: hardly read, or in an account that does not come out. None where it comes out with them. */
function sumDoubts(source: Source, place: TextPlace, sums: PictureSums): Piece[] {
  if (!canReadPictures || sums.settled.has(place.line)) return [];
  const { text } = source.lines[place.line - 1] ?? { text: '' };
  return piecesAt(source, place).filter(
    (p) =>
      certainty(p) < sureFigure ||
      lostCents(source, p) ||
      // A speck can be taken for the sign that turns a charge into a credit.
      (p.confidence !== undefined && (sums.off.has(place.line) || /[-(]/.test(text.slice(p.start, p.end)))),
  );
}

function chargeOf(source: Source, read: ReadLine, key: number, sums: PictureSums): Charge {
  const pieces = piecesAt(source, read.amountSpan);
  const sum = sumDoubts(source, read.amountSpan, sums);
  const settled =
    canReadPictures && sum.length === 0 ? pieces.filter((p) => certainty(p) < sureFigure || p.readings) : [];
  const words = read.spans.flatMap((p) => doubtsOf(source, p, sureWord)).filter((p) => !pieces.includes(p));
  return {
    key,
    text: read.text,
    amount: pieces.some((p) => p.unread) ? '' : read.amount.replace(/^-/, ''),
    credit: read.role === 'credit' || read.amount.startsWith('-'),
    places: read.spans.length ? read.spans : [read.amountSpan],
    amountPlace: read.amountSpan,
    doubtful: [...sum, ...settled, ...words],
    sumInDoubt: sum.length > 0,
    ...(settled.length > 0 && { settled: true }),
    checked: false,
    read,
  };
}

/** Where the case holds what a statement says about itself. */
const sums: [SumName, string][] = [
  ['deposit', '/deposits/0/amount'],
  ['interest', '/deposits/0/interestPaid'],
  ['statedTotal', '/statement/statedTotal'],
  ['statedRefund', '/statement/statedRefund'],
  ['statedBalanceDue', '/statement/statedBalanceDue'],
];
const days: [DayName, string][] = [
  ['statement', '/statement/dated'],
  ['sent', '/statement/sent'],
  ['moveOut', '/tenancy/possessionReturned'],
  ['moveIn', '/tenancy/began'],
  ['depositPaid', '/deposits/0/paid'],
];

/** The place the paper names, by its address or its law. */
function place(source: Source, c: CaseFile): Fact[] {
  const named = placeNamed(
    source.lines.map((l) => l.text),
    places(),
  );
  if (!named) return [];
  const take = c.jurisdiction === undefined || c.jurisdiction === named.code;
  const at = { line: named.line, start: 0, end: 0 };
  return [{ at: '/jurisdiction', kind: 'place', value: named.code, place: at, doubtful: [], take }];
}

function factsOf(source: Source, reading: Reading, c: CaseFile, own: PictureSums): Fact[] {
  const found = (name: SumName | DayName, at: string, kind: FactKind, value: string | null): Fact[] => {
    if (value === null) return [];
    const place = reading.spans[name];
    const known = valueAt(c, at);
    const doubtful = !place
      ? []
      : kind === 'money'
        ? sumDoubts(source, place, own)
        : doubtsOf(source, place, sureFigure);
    if (doubtful.some((p) => p.unread)) return [{ at, kind, value: '', place, doubtful, take: false }];
    return [
      { at, kind, value: value.replace(/^-/, ''), place, doubtful, take: known === undefined || known === value },
    ];
  };
  return [
    ...place(source, c),
    ...sums.flatMap(([name, at]) => found(name, at, 'money', reading[name])),
    ...days.flatMap(([name, at]) => found(name, at, 'date', reading.dates[name])),
  ];
}

const figuresInDoubt = (source: Source, line: number): Piece[] => {
  if (!canReadPictures) return [];
  const text = source.lines[line - 1]?.text ?? '';
  return doubtsOf(source, { line, start: 0, end: 0 }, sureFigure).filter((p) =>
    /\d\d/.test(text.slice(p.start, p.end)),
  );
};

/** `own`: of a picture, what the paper's sums say of what was read. */
export function reviewOf(source: Source, reading: Reading, c: CaseFile, own: PictureSums = noSums): Review {
  let key = 1;
  const charges = [
    ...reading.lines.map((l) => chargeOf(source, l, key++, own)),
    ...own.rows.map((row) => ({ ...row, key: key++ })),
  ];
  const lineOf = (charge: Pick<Charge, 'amountPlace'>): number => charge.amountPlace?.line ?? 0;
  const rows = new Set(own.rows.map(lineOf));
  return {
    source,
    reading,
    charges: own.rows.length ? charges.sort((a, b) => lineOf(a) - lineOf(b)) : charges,
    asked: reading.uncertainCharges.filter((open) => open.reading === null).map((open) => ({ key: key++, open })),
    facts: factsOf(source, reading, c, own),
    tray: reading.unread
      .filter((t) => !rows.has(t.line))
      .map((t) => ({ ...t, key: key++, doubtful: figuresInDoubt(source, t.line) })),
    nextKey: key,
  };
}

/** The one sum printed in a line, or nothing where there is none or more than one. */
function onlySum(text: string): string | undefined {
  const found = text
    .split(/\s+/)
    .map((w) => w.replace(/^[$(]+|[).,;:]+$/g, ''))
    .filter((w) => /^\d{1,3}(?:[.,]?\d{3})*[.,]\d{2}$/.test(w));
  return found.length === 1 ? amountFromTyping(found[0]!) : undefined;
}

/** A line of the tray becomes a charge. Its sum is the one it prints, if it prints one. */
export function makeCharge(r: Review, key: number): Review {
  const line = r.tray.find((t) => t.key === key);
  if (!line) return r;
  const text = line.text.replace(/\s+/g, ' ').trim();
  const amount = onlySum(line.text);
  const place = { line: line.line, start: 0, end: 0 };
  const charge: Charge = {
    key: r.nextKey,
    text: amount ? text.replace(/[\s.:|-]*\$?\s?\d[\d.,]*[.,]\d{2}\s*$/, '') || text : text,
    amount: amount ?? '',
    credit: false,
    places: [place],
    doubtful: doubtsOf(r.source, place, sureFigure),
    sumInDoubt: amount !== undefined && doubtsOf(r.source, place, sureFigure).length > 0,
    checked: false,
  };
  const after = r.charges.findIndex((c) => (c.places[0]?.line ?? 0) > line.line);
  const charges = [...r.charges];
  charges.splice(after < 0 ? charges.length : after, 0, charge);
  return { ...r, charges, tray: r.tray.filter((t) => t !== line), nextKey: r.nextKey + 1 };
}

/** `doubtful`: what of its sum the person is to check. */
export const rowOf = (open: UncertainCharge, doubtful: Piece[]): Omit<Charge, 'key'> => ({
  text: open.text,
  amount: open.amount.replace(/^-/, ''),
  credit: open.amount.startsWith('-'),
  places: open.spans.length ? open.spans : [open.amountSpan],
  amountPlace: open.amountSpan,
  doubtful,
  sumInDoubt: doubtful.length > 0,
  checked: false,
});

/** The readings of the paper between which its own sums do not decide. */
export const readingsOf = (r: Review): number[] => [
  ...new Set(r.reading.uncertainCharges.flatMap((c) => (c.reading === null ? [] : [c.reading]))),
];

/** The charges with one more, at its place in the paper. */
function withOpen(
  r: Review,
  charges: Charge[],
  open: UncertainCharge,
  more: Pick<Charge, 'key' | 'choice' | 'asked'>,
): Charge[] {
  const charge: Charge = { ...rowOf(open, doubtsOf(r.source, open.amountSpan, sureFigure)), ...more };
  const after = charges.findIndex((c) => (c.places[0]?.line ?? 0) > open.amountSpan.line);
  const at = after < 0 ? charges.length : after;
  return [...charges.slice(0, at), charge, ...charges.slice(at)];
}

/** The charges of one such reading beside those that are in every one; null for none of them. */
export function withReading(r: Review, reading: number | null): Review {
  let charges = r.charges.filter((c) => c.choice === undefined);
  let key = r.nextKey;
  if (reading !== null)
    for (const open of r.reading.uncertainCharges.filter((c) => c.reading === reading))
      charges = withOpen(r, charges, open, { key: key++, choice: reading });
  return { ...r, charges, nextKey: key };
}

/** What the person says of a sum that was asked about. */
export function answerAsked(r: Review, key: number, charged: boolean): Review {
  const question = r.asked.find((a) => a.key === key);
  if (!question) return r;
  const charges = r.charges.filter((c) => c.asked !== key);
  return {
    ...r,
    charges: charged ? withOpen(r, charges, question.open, { key: r.nextKey, asked: key }) : charges,
    asked: r.asked.map((a) => (a === question ? { ...a, charged } : a)),
    nextKey: r.nextKey + 1,
  };
}

/** A charge goes back among the lines not read. */
export function putBack(r: Review, key: number): Review {
  const charge = r.charges.find((c) => c.key === key);
  if (!charge) return r;
  if (charge.asked !== undefined) return answerAsked(r, charge.asked, false);
  const line = charge.places[0]?.line ?? 0;
  const text = (charge.amount && r.source.lines[line - 1]?.text.trim()) || charge.text;
  const tray = [...r.tray, { key: r.nextKey, line, text, code: '', reason: '', doubtful: [] }].sort(
    (a, b) => a.line - b.line,
  );
  return { ...r, charges: r.charges.filter((c) => c !== charge), tray, nextKey: r.nextKey + 1 };
}

export const changeCharge = (r: Review, key: number, change: Partial<Charge>): Review => ({
  ...r,
  charges: r.charges.map((c) => (c.key === key ? { ...c, ...change } : c)),
});

export const changeFact = (r: Review, at: string, change: Partial<Fact>): Review => ({
  ...r,
  facts: r.facts.map((f) => (f.at === at ? { ...f, ...change } : f)),
});

/** Each was read with certainty: only that the account does not come out speaks against it. */
export const readWell = (doubtful: readonly Piece[]): boolean => doubtful.every((p) => certainty(p) >= sureFigure);

/** A doubt that nobody has settled yet. */
export const isOpen = (c: Charge): boolean => c.sumInDoubt && !c.checked;

/** Sums that nobody has looked at: in doubt, or asked about. */
export const stillOpen = (r: Review): number =>
  r.charges.filter(isOpen).length + r.asked.filter((a) => a.charged === undefined).length;

/** Less certain than this, what a charge is for is asked, not guessed; from `sureThing` on it needs no second look (reading.h). */
export const likelyThing = 50;
export const sureThing = 70;

function lineOf(charge: Charge, id: string): Line {
  const line: Line = { id };
  if (charge.text) line.text = charge.text;
  if (charge.amount) line.amount = charge.amount;
  if (charge.credit) line['credit'] = true;
  const { read } = charge;
  if (!read) return line;
  if (read.location) line.location = read.location;
  if (read.quantity) line.chargedQuantity = read.quantity;
  if (read.confidence < likelyThing) return line;
  if (read.kind) line.kind = read.kind;
  if (read.element) line.element = read.element;
  if (read.element && read.finding) line.finding = read.finding;
  return line;
}

/** The case with what was found. `instead`: in place of the charges it has, not after them. */
export function accepted(c: CaseFile, r: Review, instead: boolean): CaseFile {
  let lines: Line[] = instead ? [] : [...c.lines];
  for (const charge of r.charges) lines = [...lines, lineOf(charge, freshLineId([...lines, ...c.lines]))];
  return r.facts.filter((f) => f.take && f.value).reduce((now, f) => withValueAt(now, f.at, f.value), { ...c, lines });
}
