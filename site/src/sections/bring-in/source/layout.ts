// Words with places back into lines of text. Columns stay apart: between two cells there are two blanks or more, and what begins at
// the same place on the page begins at about the same column, as in text set with a fixed pitch.

import { around, type Box, type SourceLine } from './source';

export interface Word extends Box {
  text: string;
  confidence?: number;
  /** What it can have been, likeliest first, where looks at it do not agree. */
  readings?: string[];
  /** A sum stands there that could not be read. */
  unread?: true;
}

/** Ruled lines that run down the page, as in tables: where they are, and from where to where they run. */
export interface Rule {
  x: number;
  top: number;
  bottom: number;
}

const middle = (b: Box): number => b.y + b.h / 2;

const median = (numbers: number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
};

/** Puts a number where it belongs among sorted ones. */
function insert(sorted: number[], n: number): void {
  let at = sorted.length;
  while (at > 0 && sorted[at - 1]! > n) at--;
  sorted.splice(at, 0, n);
}

/** Words that stand beside each other: their middles lie within half a line of the row's own. */
export function rowsOf<T extends Box>(words: readonly T[]): T[][] {
  const rows: { y: number; h: number; sum: number; words: T[]; heights: number[] }[] = [];
  for (const word of [...words].sort((a, b) => middle(a) - middle(b))) {
    const row = rows[rows.length - 1];
    const reach = row && 0.5 * Math.min(Math.max(word.h, 0.6 * row.h), Math.max(row.h, 0.6 * word.h));
    if (row && reach !== undefined && middle(word) - row.y <= reach) {
      row.words.push(word);
      row.sum += middle(word);
      row.y = row.sum / row.words.length;
      // After so many words the usual height is known.
      if (row.words.length <= 64) {
        insert(row.heights, word.h);
        row.h = row.heights[row.heights.length >> 1]!;
      }
    } else rows.push({ y: middle(word), h: word.h, sum: middle(word), words: [word], heights: [word.h] });
  }
  return rows.map((r) => r.words.sort((a, b) => a.x - b.x));
}

/** What a page is set in: the width of one sign where all signs are as wide, as on a typewriter; undefined where they are not. */
function signWidth(words: readonly Word[]): number | undefined {
  // The ink of a word is a little narrower than its signs.
  const widths = words
    .filter((w) => w.text.length >= 4)
    .map((w) => w.w / (w.text.length - (w.confidence === undefined ? 0 : 0.25)));
  if (widths.length < 8) return undefined;
  const usual = median(widths);
  const near = widths.filter((w) => Math.abs(w - usual) < 0.07 * usual);
  return near.length >= 0.8 * widths.length ? usual : undefined;
}

/** How many blanks part two neighbours: none where they touch, one between words, two or more between cells. */
function parting(left: Word, right: Word, size: number, sign: number | undefined, rules: readonly Rule[]): number {
  const gap = right.x - (left.x + left.w);
  const ruled = rules.some(
    (r) =>
      r.x > left.x + left.w / 2 && r.x < right.x + right.w / 2 && r.top <= middle(right) && r.bottom >= middle(right),
  );
  if (ruled) return 2;
  // Words of a picture are parted because the reader parted them, however close they stand.
  const least = left.confidence === undefined && gap <= 0.12 * size ? 0 : 1;
  if (sign !== undefined) return Math.max(least, Math.floor(gap / sign + 0.2));
  return gap > 0.85 * size ? 2 : least;
}

interface Run {
  words: Word[];
  /** Blanks before each word but the first: 0 or 1. */
  blanks: number[];
  x: number;
  length: number;
}

/** Figures of a column end, not begin, at the same place. */
const isFigure = (run: Run): boolean =>
  run.words.every((w) => /^[-+($\u20ac]*\d[\d.,]*[)%-]*$|^[-$]$|^USD$/.test(w.text));

/** The column a cell begins at on a page whose left edge is `left`. */
function columnOf(run: Run, left: number, pitch: number): number {
  const last = run.words[run.words.length - 1]!;
  return isFigure(run) ? Math.round((last.x + last.w - left) / pitch) - run.length : Math.round((run.x - left) / pitch);
}

/** The cells of a row: words with no wide gap between them. */
function runsOf(row: readonly Word[], sign: number | undefined, rules: readonly Rule[]): Run[] {
  const runs: Run[] = [];
  const size = Math.max(...row.map((w) => w.h));
  row.forEach((word, i) => {
    const apart = i === 0 ? 2 : parting(row[i - 1]!, word, Math.min(size, 1.6 * word.h), sign, rules);
    const run = runs[runs.length - 1];
    if (apart >= 2 || !run) runs.push({ words: [word], blanks: [], x: word.x, length: word.text.length });
    else {
      run.words.push(word);
      run.blanks.push(apart);
      run.length += apart + word.text.length;
    }
  });
  return runs;
}

/** The width of one column, small enough that every cell finds room before the next one begins. */
function pitchOf(rows: readonly Run[][]): number {
  const usual = median(rows.flat().flatMap((r) => r.words.map((w) => w.w / Math.max(1, w.text.length))));
  const needed = rows.flatMap((row) => row.slice(1).map((run, i) => (run.x - row[i]!.x) / (row[i]!.length + 2)));
  return Math.max(usual * 0.4, Math.min(usual, ...needed)) || 1;
}

function lineOf(row: readonly Run[], left: number, pitch: number, page: number): SourceLine {
  const line: SourceLine = { text: '', page, pieces: [] };
  row.forEach((run, n) => {
    const column = Math.max(0, columnOf(run, left, pitch));
    const start = n === 0 ? column : Math.max(line.text.length + 2, column);
    line.text = line.text.padEnd(start);
    run.words.forEach((word, i) => {
      if (i > 0) line.text += ' '.repeat(run.blanks[i - 1]!);
      const { x, y, w, h } = word;
      line.pieces.push({
        start: line.text.length,
        end: line.text.length + word.text.length,
        box: { x, y, w, h },
        confidence: word.confidence,
        ...(word.readings && { readings: word.readings }),
        ...(word.unread && { unread: word.unread }),
      });
      line.text += word.text;
    });
  });
  return line;
}

/** The lines of one page from top to bottom; a gap of more than a line shows as an empty line. */
export function layOut(words: readonly Word[], page: number, rules: readonly Rule[] = []): SourceLine[] {
  const rows = rowsOf(words.filter((w) => w.text.trim() !== ''));
  if (rows.length === 0) return [];
  const sign = signWidth(words);
  const runs = rows.map((r) => runsOf(r, sign, rules));
  const left = Math.min(...words.map((w) => w.x));
  const pitch = sign ?? pitchOf(runs);
  const lines: SourceLine[] = [];
  let before: Box | undefined;
  for (const [i, row] of rows.entries()) {
    const here = around(row);
    if (before && here.y - (before.y + before.h) > 1.1 * Math.min(here.h, before.h))
      lines.push({ text: '', page, pieces: [] });
    lines.push(lineOf(runs[i]!, left, pitch, page));
    before = here;
  }
  return lines;
}
