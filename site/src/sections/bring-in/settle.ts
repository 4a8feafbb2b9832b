// What was read badly and what the paper's own sums say of it. Of the sums that two looks saw differently those readings are taken with
// which a sum of the paper comes out (the engine's closing of sums); where more than one way is as good, none is taken.

import type { TextPlace, Reading } from '../../case/reading';
import { noSums, type PictureSums } from './picture-sums';
import { type Charge, piecesAt, rowOf } from './review';
import { type Piece, type Source, type SourceLine, wholeText } from './source/source';

/** The engine is asked no more often. */
const mostReadings = 150;
/** As many sums of a paper are taken otherwise at once. */
const mostChanged = 3;

interface Unsure {
  line: number;
  piece: number;
  readings: string[];
}

const unsureOf = (source: Source): Unsure[] =>
  source.lines.flatMap((l, line) =>
    l.pieces.flatMap((p, piece) =>
      p.readings && p.readings.length > 1 ? [{ line, piece, readings: p.readings }] : [],
    ),
  );

/** The line with another text in one of its pieces. What stands behind keeps its place where there is room. */
function withText(line: SourceLine, index: number, text: string): SourceLine {
  const piece = line.pieces[index]!;
  const longer = text.length - (piece.end - piece.start);
  const before = line.text.slice(0, piece.start);
  const room = before.length - before.trimEnd().length - 2;
  const moved = longer <= 0 ? longer : Math.min(longer, Math.max(0, room));
  const head = moved > 0 ? before.slice(0, before.length - moved) : before.padEnd(before.length - moved);
  const shift = longer - moved;
  return {
    ...line,
    text: head + text + line.text.slice(piece.end),
    pieces: line.pieces.map((p, i) =>
      i < index
        ? p
        : i === index
          ? { ...p, start: head.length, end: head.length + text.length }
          : { ...p, start: p.start + shift, end: p.end + shift },
    ),
  };
}

function taking(source: Source, unsure: readonly Unsure[], choice: readonly number[]): Source {
  const lines = [...source.lines];
  unsure.forEach((u, i) => {
    if (choice[i]) lines[u.line] = withText(lines[u.line]!, u.piece, u.readings[choice[i]]!);
  });
  return { ...source, lines };
}

/** The lines whose sums come out. One that could not be read comes out nowhere. */
function linesSettled(source: Source, reading: Reading): Set<number> {
  const unread = (line: number): boolean => source.lines[line - 1]?.pieces.some((p) => p.unread) ?? false;
  const closed = reading.arithmeticConfirmed.map((c) => [c.line, ...c.lines]).filter((lines) => !lines.some(unread));
  return new Set(closed.flat());
}

const covers = (place: TextPlace | undefined, line: number, piece: Piece): boolean =>
  place?.line === line && place.start < piece.end && place.end > piece.start;

/** A row of the paper whose sum could not be read, where the engine made nothing of it. */
function unreadRow(source: Source, line: number, piece: Piece): Omit<Charge, 'key'> {
  const { text, pieces } = source.lines[line - 1]!;
  const before = pieces.filter((p) => p !== piece && !p.unread && p.start < piece.start);
  const words = before.length ? before : pieces.filter((p) => p !== piece && !p.unread);
  return {
    text: words.map((p) => text.slice(p.start, p.end)).join(' '),
    amount: '',
    credit: false,
    places: [{ line, start: 0, end: piece.start }],
    amountPlace: { line, start: piece.start, end: piece.end },
    doubtful: [piece],
    sumInDoubt: true,
    checked: false,
  };
}

/** Where a sum stands that could not be read, and that is neither a charge nor one of the paper's own sums. */
function unreadElsewhere(source: Source, reading: Reading): { line: number; piece: Piece }[] {
  const known = [...reading.lines.map((l) => l.amountSpan), ...Object.values(reading.spans)];
  return source.lines.flatMap((l, i) =>
    l.pieces
      .filter((p) => p.unread && !known.some((place) => covers(place, i + 1, p)))
      .map((piece) => ({ line: i + 1, piece })),
  );
}

const ofAccount = new Set(['sum', 'refund', 'balance', 'subtotal']);

function sumsOf(source: Source, reading: Reading): PictureSums {
  const settled = linesSettled(source, reading);
  const fails = reading.arithmeticErrors.filter((c) => ofAccount.has(c.code));
  const charges =
    fails.some((c) => c.code === 'sum' || c.code === 'subtotal') || !reading.statedTotal ? reading.lines : [];
  const lines = [...fails.map((c) => c.line), ...charges.map((l) => l.amountSpan.line)];
  const parts = ['deposit', 'interest', 'statedTotal'] as const;
  const stated = parts.map((name) => reading.spans[name]?.line ?? 0);
  // Where a sum could not be read the account cannot come out; that says nothing of the others.
  const whole = !source.lines.some((l) => l.pieces.some((p) => p.unread));
  const off = fails.length && whole ? [...lines, ...stated] : [];
  off.push(...reading.arithmeticErrors.filter((c) => c.code === 'extension').map((c) => c.line));
  return { settled, off: new Set(off.filter((line) => !settled.has(line))), rows: [] };
}

/** Ways to take what is unsure, those that change least first: of each the index of its reading. */
function* ways(unsure: readonly Unsure[]): Generator<number[]> {
  const none = unsure.map(() => 0);
  function* changed(from: number, left: number, choice: readonly number[]): Generator<number[]> {
    if (left === 0) return yield [...choice];
    for (let i = from; i < unsure.length; i++)
      for (let r = 1; r < unsure[i]!.readings.length; r++)
        yield* changed(
          i + 1,
          left - 1,
          choice.map((c, k) => (k === i ? r : c)),
        );
  }
  for (let count = 1; count <= mostChanged; count++) yield* changed(0, count, none);
}

export interface Settled {
  source: Source;
  reading: Reading;
  sums: PictureSums;
}

/** The source with the readings taken that the paper's sums settle, and what the engine reads in it. */
export async function settle(source: Source, read: (text: string) => Promise<Reading>): Promise<Settled> {
  const first = await read(wholeText(source));
  const found = first.lines ? await bestWay(source, first, read) : { source, reading: first };
  const unread = (place: TextPlace): boolean =>
    source.lines[place.line - 1]?.pieces.some((p) => p.unread && covers(place, place.line, p)) ?? false;
  const { reading } = found;
  if (!reading.lines) return { ...found, sums: noSums };
  const sums = sumsOf(found.source, reading);
  // What could not be read is typed in, not chosen.
  const choices = reading.uncertainCharges.filter((c) => !unread(c.amountSpan));
  const sure = sums.off.size === 0 && !found.source.lines.some((l) => l.pieces.some((p) => p.unread));
  const open =
    sure || reading.arithmeticConfirmed.some((c) => c.code === 'sum') ? [] : choices.filter((c) => c.reading !== 1);
  const unreadRows = unreadElsewhere(found.source, reading).map((u) => unreadRow(found.source, u.line, u.piece));
  return {
    source: found.source,
    reading: { ...reading, uncertainCharges: open.length ? [] : choices },
    sums: { ...sums, rows: [...unreadRows, ...open.map((c) => rowOf(c, piecesAt(found.source, c.amountSpan)))] },
  };
}

async function bestWay(
  source: Source,
  first: Reading,
  read: (text: string) => Promise<Reading>,
): Promise<{ source: Source; reading: Reading }> {
  const own = { source, reading: first };
  const unsure = unsureOf(source);
  if (unsure.length === 0) return own;
  const settledBy = (s: Source, r: Reading): number => {
    const lines = linesSettled(s, r);
    return unsure.filter((u) => lines.has(u.line + 1)).length;
  };
  let best = { ...own, settled: settledBy(source, own.reading), cost: 0, alone: true };
  let asked = 0;
  for (const choice of ways(unsure)) {
    const cost = choice.reduce((sum, c) => sum + (c > 0 ? 10 + c : 0), 0);
    if (best.settled === unsure.length && cost > best.cost) break;
    if (++asked > mostReadings) break;
    const taken = taking(source, unsure, choice);
    const reading = await read(wholeText(taken));
    const settled = settledBy(taken, reading);
    if (settled > best.settled) best = { source: taken, reading, settled, cost, alone: true };
    else if (settled === best.settled && settled > 0 && cost === best.cost) best.alone = false;
  }
  return best.alone ? best : own;
}
