// Sums read from a picture are looked at twice: once with the words, once alone, larger, as figures and nothing else, on the picture before
// it was cleaned. So is ink that stands where sums stand and was not read at all. Where the two looks do not agree the sum is marked for
// the person, with all it can have been; where neither saw a sum, its place stays, to be typed in.

import { rowsOf, type Word } from './layout';
import { type Sheet, sheetOf } from './sheet';
import { around, type Box } from './source';
import { type Grey, softened } from './straighten/grey';
import type { Straight } from './straighten/straighten';
import { bare, isFigure, isSum, likeFigure, markOf, sumMeant, tidySum } from './sums';

/** What a word's certainty becomes when the second look saw something else. */
export const disagreed = 30;

/** From here on a word that is none of figures was read well enough. */
const sureOfWord = 60;

/** Stands in the text for a sum that could not be read, so that its row stays a row. It is never shown. */
export const unreadSum = '0.00';

/** Pieces on one sheet. */
const perSheet = 60;

/** Marks a speck leaves at the edge of a word. A pair of quotes stays. */
function withoutSpecks(text: string): string {
  const trimmed = text
    .replace(/^[‘’“”'"`´«»~*_|]+(?=[\p{L}\d$(])/u, '')
    .replace(/([\p{L}\d).,])[‘“"`´«»~*_|]+$/u, '$1');
  return /^["“].*["”]$/.test(text) ? text : trimmed;
}

/** Before these words a lone stroke is the word "I", not the figure 1. */
const afterI = /^(?:am|was|have|had|also|will|would|did|do|kept|keep|paid|must|need|hope)$/;

const withI = (words: readonly Word[]): Word[] =>
  words.map((w, i) => (/^[1|l]$/.test(w.text) && afterI.test(words[i + 1]?.text ?? '') ? { ...w, text: 'I' } : w));

/** Words worth keeping, their edges clean. What holds neither letter nor figure, and was hardly read, is a speck or a line. */
const tidied = (words: readonly Word[]): Word[] =>
  withI(words)
    .filter((w) => /[\p{L}\d]/u.test(w.text) || (/[$%()&/+–-]/.test(w.text) && (w.confidence ?? 0) >= 80))
    .map((w) => ({ ...w, text: tidySum(withoutSpecks(w.text)) }));

const overlap = (a: Box, b: Box): number => Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
const besides = (a: Box, b: Box): boolean =>
  Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y) > 0.4 * Math.min(a.h, b.h);

const hasLetters = (text: string): boolean => /\p{L}{2}/u.test(text) && !likeFigure(text);

/** Ink with the words read from it. */
interface Cell {
  box: Box;
  words: Word[];
}

const stands = (a: Box, within: Box): boolean => besides(within, a) && overlap(within, a) > 0.5 * a.w;

/** A word may have been drawn wider than its ink, over the dots that lead to a sum. */
const isOf = (w: Word, box: Box): boolean =>
  stands(w, box) || (isFigure(w.text) && besides(box, w) && overlap(box, w) > 0.6 * box.w);

const cellsWith = (words: readonly Word[], boxes: readonly Box[]): Cell[] =>
  boxes.map((box) => ({ box, words: words.filter((w) => isOf(w, box)).sort((a, b) => a.x - b.x) }));

/** Read as words, and well enough. */
const isWords = (c: Cell): boolean => c.words.some((w) => hasLetters(w.text) && (w.confidence ?? 0) >= sureOfWord);
const hasSum = (c: Cell): boolean => c.words.some((w) => isSum(bare(w.text)));

/**
 * Stretches across the page in which sums stand one below the other, and what was hardly read stands where it can be one: beside words.
 * At least one of them was read as a sum, here or by the second look.
 */
function sumColumns(cells: readonly Cell[], words: readonly Word[]): Box[] {
  const columns: { box: Box; count: number }[] = [];
  const beside = (b: Box): boolean =>
    words.some((w) => hasLetters(w.text) && (w.confidence ?? 0) >= sureOfWord && besides(b, w) && overlap(b, w) < 0);
  const put = (box: Box): void => {
    const near = columns.find((c) => overlap(c.box, box) > 0.3 * Math.min(c.box.w, box.w));
    if (near) {
      near.box = around([near.box, box]);
      near.count++;
    } else columns.push({ box, count: 1 });
  };
  words.filter((w) => isSum(bare(w.text))).forEach(put);
  // Wider than a sum can be is a line of writing.
  for (const c of cells) if (!isWords(c) && !hasSum(c) && c.box.w < 9 * c.box.h && beside(c.box)) put(c.box);
  return columns.filter((c) => c.count >= 2).map((c) => c.box);
}

/** What is looked at again: a place, and the words read there. */
interface Target extends Cell {
  /** The stretch of sums it stands in. */
  column?: Box;
}

/** The ink of one sum that a wide gap parts, as where its point is thin, is one. */
function joined(cells: readonly Cell[], columnAt: (b: Box) => Box | undefined): Box[] {
  const boxes: Box[] = [];
  let before: Cell | undefined;
  const cellOf = new Map(cells.map((c) => [c.box, c]));
  const sumsOf = (c: Cell): Word[] => c.words.filter((w) => isSum(bare(w.text)));
  for (const box of rowsOf(cells.map((c) => c.box)).flat()) {
    const cell = cellOf.get(box)!;
    const last = boxes[boxes.length - 1];
    const column = columnAt(cell.box);
    const one =
      before &&
      last &&
      column &&
      columnAt(last) === column &&
      besides(last, cell.box) &&
      overlap(last, cell.box) > -1.3 * Math.max(last.h, cell.box.h) &&
      !isWords(before) &&
      !isWords(cell) &&
      new Set([...sumsOf(before), ...sumsOf(cell)]).size < 2;
    if (one) boxes[boxes.length - 1] = around([last, cell.box]);
    else boxes.push(cell.box);
    before = cell;
  }
  return boxes;
}

/** So much of a place is dark where a stain or a stamp hides what stands there; letters and lines darken less. */
const hidden = 0.2;

const isHidden = ({ width, height, data }: Grey, { x, y, w, h }: Box): boolean => {
  let dark = 0;
  let all = 0;
  for (let row = Math.max(0, Math.round(y)); row < Math.min(height, y + h); row++)
    for (let at = Math.max(0, Math.round(x)); at < Math.min(width, x + w); at++, all++)
      if (data[row * width + at]! < 140) dark++;
  return dark > hidden * all;
};

/** The targets, and where a row of words has a sum's place beside it that is hidden; bits of ink at the edge of what hides it are none. */
function withHidden(targets: readonly Target[], cells: readonly Cell[], shown: Grey): Target[] {
  const rows = rowsOf(cells.filter(isWords).map((c) => c.box)).map(around);
  const columns = [...new Set(targets.flatMap((t) => t.column ?? []))];
  const hiddenOnes = columns.flatMap((column) =>
    rows
      .filter((row) => row.y + row.h > column.y && row.y < column.y + column.h && overlap(column, row) < 0)
      .map((row): Target => ({ box: { ...row, x: column.x, w: column.w }, words: [], column }))
      .filter(
        (t) => !cells.some((c) => stands(c.box, t.box) && (isWords(c) || c.box.w > c.box.h)) && isHidden(shown, t.box),
      ),
  );
  const bits = targets.filter((t) => hiddenOnes.some((h) => stands(t.box, h.box)));
  for (const h of hiddenOnes) h.words = bits.filter((t) => stands(t.box, h.box)).flatMap((t) => t.words);
  return [...targets.filter((t) => !bits.includes(t)), ...hiddenOnes];
}

function targetsOf(words: readonly Word[], boxes: readonly Box[], shown: Grey): Target[] {
  const parts = cellsWith(words, boxes);
  const columns = sumColumns(parts, words);
  const columnAt = (b: Box): Box | undefined => columns.find((c) => overlap(c, b) > 0.6 * Math.min(b.w, c.w));
  const cells = cellsWith(words, joined(parts, columnAt));
  const taken = new Set<Word>();
  const targets: Target[] = [];
  for (const cell of cells) {
    const column = columnAt(cell.box);
    const several = cell.words.filter((w) => isSum(bare(w.text))).length > 1;
    const figures = cell.words.some((w) => isFigure(w.text)) && !cell.words.some((w) => hasLetters(w.text));
    if (isWords(cell) || several || !(column || figures)) continue;
    targets.push({ ...cell, column });
    cell.words.forEach((w) => taken.add(w));
  }
  // Figures among words, and those whose ink was not found by itself.
  for (const w of words)
    if (!taken.has(w) && isFigure(w.text)) targets.push({ box: w, words: [w], column: columnAt(w) });
  return withHidden(targets, cells, shown);
}

type ReadFigures = (page: Grey) => Promise<Word[]>;

/** What is seen at each place, in their order, on sheets made by `sheet`. */
async function seenAgain(
  boxes: readonly Box[],
  read: ReadFigures,
  sheet: (some: readonly Box[]) => Sheet,
): Promise<string[]> {
  const seen = boxes.map(() => '');
  for (let from = 0; from < boxes.length; from += perSheet) {
    const { grey, tops } = sheet(boxes.slice(from, from + perSheet));
    for (const row of rowsOf(await read(grey))) {
      const middle = row[0]!.y + row[0]!.h / 2;
      const at = tops.findIndex((top, i) => middle >= top && middle < (tops[i + 1] ?? Infinity));
      if (at >= 0) seen[from + at] += row.map((w) => w.text).join('');
    }
  }
  return seen.map(tidySum);
}

const textOf = (t: Target): string => t.words.map((w) => w.text).join('');

/** Both looks saw the same figures. */
const agree = (t: Target, second: string): boolean => {
  const [a, b] = [bare(textOf(t)), bare(second)];
  return isFigure(textOf(t)) && (a === b || (isSum(a) && sumMeant(a, '.') === sumMeant(b, '.')));
};

/** What was seen in all looks, what was seen most first; of equals what a later look saw, as it looked for figures alone. */
function readingsOf(seen: readonly string[], mark: '.' | ','): string[] {
  const votes = new Map<string, number>();
  for (const text of [...seen].reverse()) {
    const sum = sumMeant(text, mark);
    if (sum) votes.set(sum, (votes.get(sum) ?? 0) + 1);
  }
  return [...votes].sort((a, b) => b[1] - a[1]).map(([sum]) => sum);
}

/** The words of a target as all looks have them together; `seen`: the second look, and the third where there was one. */
function together(t: Target, seen: readonly string[], mark: '.' | ',', belongs: (t: Target) => boolean): Word[] {
  const first = textOf(t);
  const confidence = Math.min(100, ...t.words.map((w) => w.confidence ?? 0));
  const whole = (text: string): Word => ({ ...t.box, text, confidence });
  if (agree(t, seen[0]!)) {
    // "£195, 50": a sum in pieces, or with a sign that is none.
    const sum =
      isSum(bare(first)) && (sumMeant(first, mark) ?? sumMeant(seen[0]!, mark) ?? sumMeant(bare(first), mark));
    return sum ? [whole(sum)] : t.words;
  }
  const low = Math.min(confidence, disagreed);
  const readings = readingsOf([first, ...seen], mark);
  if (!t.column) {
    const [only] = t.words;
    const better = t.words.length === 1 && readings[0] && isSum(seen[0]!);
    return better
      ? [{ ...only!, text: readings[0]!, confidence: low }]
      : t.words.map((w) => ({ ...w, confidence: low }));
  }
  if (readings.length > 0) return [{ ...whole(readings[0]!), confidence: low, readings }];
  if (!belongs(t)) return t.words;
  return [{ ...whole(unreadSum), confidence: 0, unread: true }];
}

/**
 * The words tidied, and sums a further look saw otherwise marked. The second look is at the page before it was cleaned, a third, at what the
 * first two saw differently, at the page after.
 */
export async function secondLook(
  words: readonly Word[],
  { cells, shown, whole, read: cleaned }: Pick<Straight, 'cells' | 'shown' | 'whole' | 'read'>,
  read: ReadFigures,
): Promise<Word[]> {
  // What was read where no ink as high as a letter stands is none: dots that lead to a sum, specks.
  const inked = (w: Word): boolean =>
    (w.confidence ?? 0) >= sureOfWord || cells.some((c) => besides(c, w) && overlap(c, w) > 0);
  const clean = tidied(words).filter(inked);
  const targets = targetsOf(clean, cells, shown);
  const again = await seenAgain(
    targets.map((t) => t.box),
    read,
    (some) => sheetOf(some, whole, 44),
  );
  const seen = targets.map((_, i) => [again[i]!]);
  const apart = targets.flatMap((t, i) => (t.column && !agree(t, again[i]!) ? [i] : []));
  const third = await seenAgain(
    apart.map((i) => targets[i]!.box),
    read,
    (some) => {
      const { grey, tops } = sheetOf(some, cleaned, 34, 0.5);
      return { grey: softened(grey), tops };
    },
  );
  apart.forEach((i, n) => seen[i]!.push(third[n]!));
  const mark = markOf([...clean.map((w) => w.text), ...again]);
  const looked = new Set(targets.flatMap((t) => t.words));
  // A sum belongs where others stand above or below; a head above them all is none.
  const sums = targets.filter((t, i) => isSum(bare(textOf(t))) || isSum(bare(again[i]!)));
  const belongs = (t: Target): boolean => {
    const others = sums.filter((o) => o.column === t.column);
    const head = t.words.some((w) => hasLetters(w.text)) && others.every((o) => o.box.y > t.box.y);
    const beside = clean.some((w) => !looked.has(w) && hasLetters(w.text) && besides(t.box, w));
    return others.length > 0 && !head && beside && t.box.w > t.box.h;
  };
  return [...clean.filter((w) => !looked.has(w)), ...targets.flatMap((t, i) => together(t, seen[i]!, mark, belongs))];
}
