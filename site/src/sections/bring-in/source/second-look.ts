// Figures read from a picture are looked at twice: once with the words, once alone and larger. Where the two do not agree the figure
// is marked for the person, whatever the reader's own certainty.

import { rowsOf, type Word } from './layout';
import type { Tidy } from './picture-library';

/** What a word's certainty becomes when the second look saw something else. */
export const disagreed = 30;

/** Two figures or more, and no letters: a sum, a date, a count. */
const isFigure = (text: string): boolean => /\d.*\d/.test(text) && !/\p{L}{2}/u.test(text);

/** Figures on one sheet: more would make it taller than a canvas may be. */
const perSheet = 60;

/** What is compared: the figures and what parts them. */
const bare = (text: string): string => text.replace(/[^\d.,]/g, '').replace(/[.,]+$/, '');

/** "1,100,00" can only be one sum: the last mark parts the cents, so the others are the other mark. */
export const tidySum = (text: string): string =>
  text.replace(
    /^(\D*)(\d{1,3}(?:([.,])\d{3})+)\3(\d{2})(\D*)$/,
    (_, before: string, whole: string, mark: string, cents: string, after: string) => {
      const other = mark === ',' ? '.' : ',';
      return `${before}${whole.split(mark).join(other)}${mark}${cents}${after}`;
    },
  );

/** A sum with cents and nothing else. */
const isSum = (text: string): boolean => /^[$(-]?\d{1,3}(?:[.,]?\d{3})*[.,]\d{2}\)?$/.test(text);

/** The last two figures are the same. */
const endsAlike = (a: string, b: string): boolean => a.replace(/\D/g, '').slice(-2) === b.replace(/\D/g, '').slice(-2);

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

/** The figures one below the other on a white sheet, each half as large again. */
function sheetOf(figures: readonly Word[], page: HTMLCanvasElement): { canvas: HTMLCanvasElement; tops: number[] } {
  const scale = 1.4;
  const margin = (w: Word): number => Math.round(0.35 * w.h);
  const gap = 24;
  const tops: number[] = [];
  let height = gap;
  for (const w of figures) {
    tops.push(height);
    height += Math.ceil((w.h + 2 * margin(w)) * scale) + gap;
  }
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(Math.max(...figures.map((w) => w.w + 2 * margin(w))) * scale) + 2 * gap;
  canvas.height = height;
  const context = canvas.getContext('2d')!;
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  figures.forEach((w, i) => {
    const m = margin(w);
    const [from, wide, high] = [w.x - m, w.w + 2 * m, w.h + 2 * m];
    context.drawImage(page, from, w.y - m, wide, high, gap, tops[i]!, wide * scale, high * scale);
  });
  return { canvas, tops };
}

/** What the second look sees of each figure, in their order. */
async function seenAgain(figures: readonly Word[], page: HTMLCanvasElement, tidy: Tidy): Promise<string[]> {
  const { canvas, tops } = sheetOf(figures, page);
  const seen = figures.map(() => '');
  for (const row of rowsOf(await tidy.readFigures(canvas))) {
    const middle = row[0]!.y + row[0]!.h / 2;
    const at = tops.findIndex((top, i) => middle >= top && middle < (tops[i + 1] ?? Infinity));
    if (at >= 0) seen[at] += row.map((w) => w.text).join('');
  }
  return seen.map(tidySum);
}

/** The words tidied, and figures the second look saw otherwise marked. `page` is the picture they were read from. */
export async function secondLook(words: readonly Word[], page: HTMLCanvasElement, tidy: Tidy): Promise<Word[]> {
  const clean = tidied(words);
  const figures = clean.filter((w) => isFigure(w.text));
  const again = new Map<Word, string>();
  for (let from = 0; from < figures.length; from += perSheet) {
    const some = figures.slice(from, from + perSheet);
    (await seenAgain(some, page, tidy)).forEach((text, i) => again.set(some[i]!, text));
  }
  return clean.map((w) => {
    const second = again.get(w);
    if (second === undefined || bare(second) === bare(w.text)) return w;
    const confidence = Math.min(w.confidence ?? 0, disagreed);
    // "90-00", "9000", "[90.00": where only the second look saw a sum, that is shown, to be checked.
    const better = isSum(second) && !isSum(w.text) && endsAlike(second, w.text);
    return { ...w, text: better ? second : w.text, confidence };
  });
}
