// How a page lies: which of its four sides is up, and how far it is askew. Letters stand on lines: seen the right way up, the feet of
// the letters gather at fewer heights than at any other turn.

import { heightOf, type Spot, widthOf } from './spots';

export interface Turn {
  /** Quarter turns against the clock that bring the page upright. */
  quarters: 0 | 1 | 2 | 3;
  /** Degrees against the clock that then make its lines level. */
  degrees: number;
}

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

/** How closely the feet gather at few heights when the page is turned by `degrees`: the sum of the squares of the numbers at each height. */
function gathering(feet: readonly Foot[], degrees: number, step: number): number {
  const turn = (degrees * Math.PI) / 180;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const counts = new Map<number, number>();
  for (const [x, y] of feet) {
    // Shared out between the two nearest heights, so that the answer does not hang on where heights are cut.
    const at = (y * c - x * s) / step;
    const low = Math.floor(at);
    counts.set(low, (counts.get(low) ?? 0) + (1 - (at - low)));
    counts.set(low + 1, (counts.get(low + 1) ?? 0) + (at - low));
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
): { degrees: number; sum: number } {
  let found = { degrees: 0, sum: -1 };
  for (let d = from; d <= to + by / 2; d += by) {
    const sum = gathering(feet, d, step);
    if (sum > found.sum) found = { degrees: d, sum };
  }
  return found;
}

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
    return { quarters, feet, ...best(feet, -mostAskew, mostAskew, 0.25, step) };
  });
  // Upright unless another side is clearly better: figures and capitals stand as well on their heads.
  const upright = ways[0]!;
  const other = ways.reduce((a, b) => (b.sum > a.sum ? b : a));
  const way = other.sum > upright.sum * 1.08 ? other : upright;
  const finer = best(way.feet, way.degrees - 0.3, way.degrees + 0.3, 0.05, Math.max(1, height / 10));
  return { quarters: way.quarters, degrees: finer.degrees };
}
