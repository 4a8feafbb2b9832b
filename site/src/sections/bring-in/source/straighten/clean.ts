// What is not text is taken off a straight page: the ruled lines of tables, and specks.

import type { Rule } from '../layout';
import type { Box } from '../source';
import { cellsOf } from './cells';
import type { Grey, Ink } from './grey';
import { heightOf, type Spot, spotsOf, widthOf } from './spots';

interface Line {
  /** Across the line: where it begins and ends. Along it likewise, inclusive. */
  from: number;
  to: number;
  start: number;
  end: number;
}

/** `ink` read along columns instead of rows. */
function flipped({ width, height, data }: Ink): Ink {
  const out = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) out[x * height + y] = data[y * width + x]!;
  return { width: height, height: width, data: out };
}

/** Level ruled lines: ink that goes on for `least` dots, small breaks and a small slope allowed, and is thin. */
function levelLines(ink: Ink, least: number, thickest: number): Line[] {
  const { width, height, data } = ink;
  const long: Ink = { width, height, data: new Uint8Array(data.length) };
  const gap = 1;
  for (let y = 0; y < height; y++) {
    let start = -1;
    let last = -2;
    for (let x = 0; x <= width + gap; x++) {
      // A line that slopes a little steps to the row above or below.
      const on =
        x < width &&
        (data[y * width + x] || (y > 0 && data[(y - 1) * width + x]) || (y + 1 < height && data[(y + 1) * width + x]));
      if (on) {
        if (start < 0) start = x;
        last = x;
      } else if (start >= 0 && x - last > gap) {
        if (last - start + 1 >= least) long.data.fill(1, y * width + start, y * width + last + 1);
        start = -1;
      }
    }
  }
  return spotsOf(long)
    .filter((s) => widthOf(s) >= least)
    .map((s) => ({ from: s.top, to: s.bottom, start: s.left, end: s.right }))
    .filter((l) => l.to - l.from + 1 <= thickest + Math.ceil((l.end - l.start) / 200) && standsFree(ink, l));
}

/** No ink just above or below for most of its length. The feet of letters that run together are no line. */
function standsFree({ width, height, data }: Ink, line: Line): boolean {
  const inked = (y: number): number => {
    if (y < 0 || y >= height) return 0;
    let n = 0;
    for (let x = line.start; x <= line.end; x++) n += data[y * width + x]!;
    return n / (line.end - line.start + 1);
  };
  return inked(line.from - 2) < 0.25 && inked(line.to + 2) < 0.25;
}

/** A stroke too long and too thin for a letter: what is left of a ruled line. */
const isStroke = (s: Spot, height: number): boolean =>
  (widthOf(s) >= 1.7 * height && heightOf(s) <= 0.22 * height) ||
  (heightOf(s) >= 1.7 * height && widthOf(s) <= 0.25 * height);

type Frame = Pick<Spot, 'left' | 'top' | 'right' | 'bottom'>;

/** Gives everything in the frame and a little around it one tone. */
function wipe(picture: Grey | Ink, { left, top, right, bottom }: Frame, around: number, tone: number): void {
  const from = Math.max(0, left - around);
  const to = Math.min(picture.width - 1, right + around);
  // Nothing of it is on the picture; `fill` would count an end below 0 from behind.
  if (to < from) return;
  for (let y = Math.max(0, top - around); y <= Math.min(picture.height - 1, bottom + around); y++)
    picture.data.fill(tone, y * picture.width + from, y * picture.width + to + 1);
}

/**
 * Specks: small, with no letter near; or far smaller than a letter and not at the foot of one. What stands at the foot of a letter, up to
 * where the next sign of a typewriter would begin, can be the point of a sum and stays, however small.
 */
function specksOf(spots: readonly Spot[], height: number): Spot[] {
  const side = Math.max(8, Math.round(height * 2));
  const cells = new Map<string, Spot[]>();
  const cellOf = (x: number, y: number): string => `${Math.floor(x / side)},${Math.floor(y / side)}`;
  for (const s of spots) {
    if (heightOf(s) < 0.45 * height) continue;
    for (let x = s.left; x <= s.right + side; x += side)
      for (let y = s.top; y <= s.bottom + side; y += side) {
        const key = cellOf(Math.min(x, s.right), Math.min(y, s.bottom));
        const cell = cells.get(key);
        if (!cell) cells.set(key, [s]);
        else if (cell[cell.length - 1] !== s) cell.push(s);
      }
  }
  const nearOne = (s: Spot, fits: (o: Spot) => boolean): boolean => {
    for (let dx = -1; dx <= 1; dx++)
      for (let dy = -1; dy <= 1; dy++)
        for (const o of cells.get(cellOf(s.left + dx * side, s.top + dy * side)) ?? []) {
          const across = Math.max(o.left - s.right, s.left - o.right, 0);
          const down = Math.max(o.top - s.bottom, s.top - o.bottom, 0);
          if (across < 1.2 * height && down < 0.35 * height && fits(o)) return true;
        }
    return false;
  };
  return spots.filter((s) => {
    const size = Math.max(widthOf(s), heightOf(s));
    if (size >= 0.4 * height) return false;
    return !nearOne(s, (o) => size >= 0.1 * height || Math.abs(s.bottom - o.bottom) < 0.25 * height);
  });
}

/**
 * The part of the page that holds text: from the first to the last row in which letters stand beside each other, as wide as anything like a
 * letter in such rows, be it alone. What lies outside is the edge of the paper, the table under it, a shadow. Nothing if there is no text.
 */
function textFrame(spots: readonly Spot[], height: number): Frame | undefined {
  const letters = spots
    .filter(
      (s) =>
        heightOf(s) >= 0.5 * height &&
        heightOf(s) <= 2 * height &&
        widthOf(s) >= 0.12 * height &&
        widthOf(s) <= 3 * height,
    )
    .sort((a, b) => a.left - b.left);
  const lines = new Map<number, Spot[]>();
  for (const s of letters) {
    const at = Math.floor((s.top + s.bottom) / 2 / height);
    lines.set(at, [...(lines.get(at) ?? []), s]);
  }
  const beside = (s: Spot): number => {
    const at = Math.floor((s.top + s.bottom) / 2 / height);
    return [at - 1, at, at + 1]
      .flatMap((l) => lines.get(l) ?? [])
      .filter(
        (o) =>
          o !== s &&
          Math.abs(o.bottom - s.bottom) < 0.4 * height &&
          o.left - s.right < 2 * height &&
          s.left - o.right < 2 * height,
      ).length;
  };
  const text = letters.filter((s) => beside(s) >= 2);
  if (text.length < 3) return undefined;
  const margin = Math.round(1.5 * height);
  const most = (of: readonly Spot[], pick: (s: Spot) => number): number =>
    of.reduce((m, s) => Math.max(m, pick(s)), -Infinity);
  const rowOf = (s: Spot): number => Math.floor((s.top + s.bottom) / 2 / height);
  const wide = [...new Set(text.map(rowOf))].flatMap((row) => lines.get(row) ?? []);
  return {
    left: -most(wide, (s) => -s.left) - margin,
    top: -most(text, (s) => -s.top) - margin,
    right: most(wide, (s) => s.right) + margin,
    bottom: most(text, (s) => s.bottom) + margin,
  };
}

export interface Cleaned {
  grey: Grey;
  /** What ink stands together, whether it is read or not. */
  cells: Box[];
  /** The ruled lines that run down the page. */
  rules: Rule[];
}

/** Takes lines and specks off a straight, brightened page. `height`: the usual height of a letter on it. */
export function cleaned(page: Grey, ink: Ink, height: number): Cleaned {
  const grey = { ...page, data: page.data.slice() };
  const bare = { ...ink, data: ink.data.slice() };
  const thickest = Math.max(5, Math.round(height / 3));
  const level = levelLines(ink, Math.round(height * 4), thickest);
  const upright = levelLines(flipped(ink), Math.round(height * 2.2), thickest);
  // The soft rim that turning and enlarging leave around ink.
  const rim = Math.max(1, Math.round(height / 12));
  const frames = [
    ...level.map((l) => ({ left: l.start, top: l.from, right: l.end, bottom: l.to })),
    ...upright.map((l) => ({ left: l.from, top: l.start, right: l.to, bottom: l.end })),
  ];
  for (const f of frames) {
    wipe(grey, f, rim, 255);
    wipe(bare, f, 1, 0);
  }
  const spots = spotsOf(bare);
  const strokes = spots.filter((s) => isStroke(s, height));
  const gone = new Set([...strokes, ...specksOf(spots, height)]);
  for (const s of gone) wipe(grey, s, rim, 255);
  const frame = textFrame(spots, height);
  if (frame) {
    const { width, height: tall } = grey;
    for (const outside of [
      { left: 0, top: 0, right: width, bottom: frame.top - 1 },
      { left: 0, top: frame.bottom + 1, right: width, bottom: tall },
      { left: 0, top: 0, right: frame.left - 1, bottom: tall },
      { left: frame.right + 1, top: 0, right: width, bottom: tall },
    ])
      wipe(grey, outside, 0, 255);
  }
  const within = (s: Spot): boolean =>
    !frame || (s.left >= frame.left && s.right <= frame.right && s.top >= frame.top && s.bottom <= frame.bottom);
  const cells = cellsOf(
    spots.filter((s) => !gone.has(s) && within(s)),
    height,
  );
  return { grey, cells, rules: upright.map((l) => ({ x: (l.from + l.to) / 2, top: l.start, bottom: l.end })) };
}
