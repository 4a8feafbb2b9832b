// How a page lies: which of its four sides is up, and how far it is askew. Letters stand on lines: seen the right way up, the feet of
// the letters gather at fewer heights than at any other turn.

import { heightOf, type Spot, widthOf } from './spots';

export interface Turn {
  /** Quarter turns against the clock that bring the page upright. */
  quarters: 0 | 1 | 2 | 3;
  /** Degrees against the clock that then make its lines level. */
  degrees: number;
}

/** Seen from one side, the lines of a page spread like a fan: how much steeper each is, in parts of its length, for each dot further down. */
export type Fan = number;

type Foot = [x: number, y: number];

/** The middle of the lower edge of a spot once the page has been turned by so many quarters. */
function foot(s: Spot, quarters: number): Foot {
  const x = (s.left + s.right) / 2;
  const y = (s.top + s.bottom) / 2;
  switch (quarters) {
    case 0:
      return [x, s.bottom];
    case 1:
      return [y, -s.left];
    case 2:
      return [-x, -s.top];
    default:
      return [-y, s.right];
  }
}

/**
 * How closely the feet gather at few heights when the page is turned by `degrees`: the sum of the squares of the numbers at each height.
 * `block`: feet further apart across are not held against each other. Where a wide gap parts words from sums, those of one line could as
 * well stand in the line of the next.
 */
function gathering(feet: readonly Foot[], degrees: number, step: number, block = Infinity, fan = 0, phase = 0): number {
  const turn = (degrees * Math.PI) / 180;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const counts = new Map<number, number>();
  for (const [x, y] of feet) {
    // Shared out between the two nearest heights, so that the answer does not hang on where heights are cut.
    const at = (y * c - x * s) / (1 + x * fan) / step + phase;
    const low = Math.floor(at);
    const key = block === Infinity ? low : low + 1e6 * Math.floor(x / block);
    counts.set(key, (counts.get(key) ?? 0) + (1 - (at - low)));
    counts.set(key + 1, (counts.get(key + 1) ?? 0) + (at - low));
  }
  let sum = 0;
  for (const n of counts.values()) sum += n * n;
  return sum;
}

function best(
  feet: readonly Foot[],
  from: number,
  to: number,
  by: number,
  step: number,
  block?: number,
): { degrees: number; sum: number } {
  let found = { degrees: 0, sum: -1 };
  for (let d = from; d <= to + by / 2; d += by) {
    const sum = gathering(feet, d, step, block);
    if (sum > found.sum) found = { degrees: d, sum };
  }
  return found;
}

/** Letters so many heights apart across are held against each other. */
const blockOf = (height: number): number => 25 * height;

/** Askew further than this is taken for a quarter turn and the rest. */
const mostAskew = 15;

/** `height`: the usual height of a letter. */
export function turnOf(spots: readonly Spot[], height: number): Turn {
  const letters = spots.filter((s) => {
    const [w, h] = [widthOf(s), heightOf(s)];
    return Math.max(w, h) >= 0.5 * height && Math.max(w, h) <= 2.2 * height && s.ink >= 8;
  });
  if (letters.length < 12) return { quarters: 0, degrees: 0 };
  const step = Math.max(1.5, height / 6);
  const ways = ([0, 1, 2, 3] as const).map((quarters) => {
    const feet = letters.map((s) => foot(s, quarters));
    const { degrees, sum } = best(feet, -mostAskew, mostAskew, 0.25, step);
    // Lines as far apart as a typewriter sets them all fall on a cut between heights, or none does.
    return { quarters, feet, sum: sum + gathering(feet, degrees, step, Infinity, 0, 0.5) };
  });
  // Upright unless another side is clearly better: figures and capitals stand as well on their heads.
  const upright = ways[0]!;
  const other = ways.reduce((a, b) => (b.sum > a.sum ? b : a));
  const way = other.sum > upright.sum * 1.08 ? other : upright;
  // From letters near each other to whole lines, each closer.
  const near = best(way.feet, -mostAskew, mostAskew, 0.25, step, blockOf(height)).degrees;
  const wide = best(way.feet, near - 2, near + 2, 0.1, step, 2 * blockOf(height)).degrees;
  const finer = best(way.feet, wide - 0.6, wide + 0.6, 0.05, Math.max(1, height / 10));
  return { quarters: way.quarters, degrees: finer.degrees };
}

/** A page is looked at in so many strips for the fan of its lines. */
const strips = 6;

/** The lines of a page: `degrees` more level them, on the whole; `fan` then levels each. */
export interface Lines {
  degrees: number;
  fan: Fan;
}

/** The line through the medians of all pairs (Theil and Sen), so that one point does not tip it. */
function throughMost(points: readonly Foot[]): { rise: number; at: number } {
  const median = (numbers: number[]): number => numbers.sort((a, b) => a - b)[numbers.length >> 1] ?? 0;
  const rise = median(
    points.flatMap((a, i) =>
      points.slice(i + 1).flatMap((b) => (b[0] !== a[0] ? [(b[1] - a[1]) / (b[0] - a[0])] : [])),
    ),
  );
  return { rise, at: median(points.map(([x, y]) => y - rise * x)) };
}

/**
 * The fan of a page's lines. `spots` as the page came, `page` its size; `degrees` is the whole turn that makes its lines level on the whole,
 * `letter` the usual height of a letter. No fan unless the letters then stand clearly better in line.
 */
export function fanOf(
  spots: readonly Spot[],
  page: { width: number; height: number },
  degrees: number,
  letter: number,
): Lines {
  const turn = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const feet = spots
    .filter((o) => heightOf(o) >= 0.5 * letter && heightOf(o) <= 2.2 * letter && widthOf(o) <= 4 * letter && o.ink >= 8)
    .map((o): Foot => {
      const x = (o.left + o.right) / 2 - page.width / 2;
      const y = (o.top + o.bottom) / 2 - page.height / 2;
      // The foot of the letter lies half its height further down once the page is turned.
      return [x * c + y * s, y * c - x * s + heightOf(o) / 2];
    })
    .sort((a, b) => a[1] - b[1]);
  const none = { degrees: 0, fan: 0 };
  if (feet.length < 12 * strips) return none;
  const each = Math.ceil(feet.length / strips);
  const step = Math.max(1, letter / 8);
  const slopes = Array.from({ length: strips }, (_, i): Foot => {
    const some = feet.slice(i * each, (i + 1) * each);
    const found = best(some, -5, 5, 0.1, Math.max(1.2, letter / 7), blockOf(letter));
    return [some[some.length >> 1]?.[1] ?? 0, Math.tan((found.degrees * Math.PI) / 180)];
  });
  const { rise, at } = throughMost(slopes);
  const near = (Math.atan(at) * 180) / Math.PI;
  let found = { ...none, sum: gathering(feet, 0, step) * 1.15 };
  for (let d = near - 0.6; d <= near + 0.6; d += 0.05)
    for (let f = 0.6; f <= 1.41; f += 0.05) {
      const sum = gathering(feet, d, step, Infinity, rise * f);
      if (sum > found.sum) found = { degrees: d, fan: rise * f, sum };
    }
  return { degrees: found.degrees, fan: found.fan };
}
