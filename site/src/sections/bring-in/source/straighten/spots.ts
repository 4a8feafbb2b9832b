// Connected spots of ink: letters, dots, lines.

import type { Ink } from './grey';

/** The frame of a spot, and how many dots of ink it has. `right` and `bottom` are the last dots, inclusive. */
export interface Spot {
  left: number;
  top: number;
  right: number;
  bottom: number;
  ink: number;
}

export const widthOf = (s: Spot): number => s.right - s.left + 1;
export const heightOf = (s: Spot): number => s.bottom - s.top + 1;

/** Every spot, dots touching at a corner included (union-find over the runs of each row). */
export function spotsOf({ width, height, data }: Ink): Spot[] {
  const parents: number[] = [];
  const spots: Spot[] = [];
  const root = (i: number): number => {
    while (parents[i] !== i) i = parents[i] = parents[parents[i]!]!;
    return i;
  };
  const join = (a: number, b: number): void => {
    const [to, from] = a < b ? [root(a), root(b)] : [root(b), root(a)];
    if (to === from) return;
    const [low, high] = to < from ? [to, from] : [from, to];
    parents[high] = low;
    const into = spots[low]!;
    const gone = spots[high]!;
    into.left = Math.min(into.left, gone.left);
    into.right = Math.max(into.right, gone.right);
    into.top = Math.min(into.top, gone.top);
    into.bottom = Math.max(into.bottom, gone.bottom);
    into.ink += gone.ink;
  };
  let above: [number, number, number][] = [];
  for (let y = 0; y < height; y++) {
    const here: [number, number, number][] = [];
    let before = 0;
    for (let x = 0, row = y * width; x < width; x++) {
      if (!data[row + x]) continue;
      const from = x;
      while (x < width && data[row + x]) x++;
      const id = parents.length;
      parents.push(id);
      spots.push({ left: from, right: x - 1, top: y, bottom: y, ink: x - from });
      while (before < above.length && above[before]![1] < from - 1) before++;
      for (let i = before; i < above.length && above[i]![0] <= x; i++) join(above[i]![2], id);
      here.push([from, x - 1, id]);
    }
    above = here;
  }
  return spots.filter((_, i) => parents[i] === i);
}

/** The usual height of a letter or figure: the median over those that can be one, each counted by its height. */
export function letterHeight(spots: readonly Spot[], page: { width: number; height: number }): number {
  const most = Math.min(page.width, page.height) / 8;
  const heights = spots
    .filter(
      (s) =>
        heightOf(s) >= 5 &&
        heightOf(s) <= most &&
        widthOf(s) <= 3 * heightOf(s) &&
        widthOf(s) * 5 >= heightOf(s) &&
        s.ink >= 8,
    )
    .map(heightOf)
    .sort((a, b) => a - b);
  let left = heights.reduce((sum, h) => sum + h, 0) / 2;
  for (const h of heights) if ((left -= h) <= 0) return h;
  return 0;
}

/** What can be a letter, by its frame. `height`: the usual height of a letter. */
const lettersOf = (spots: readonly Spot[], height: number): Spot[] =>
  spots.filter(
    (s) =>
      heightOf(s) >= 0.7 * height &&
      heightOf(s) <= 2 * height &&
      widthOf(s) <= 4 * height &&
      widthOf(s) * 5 >= heightOf(s),
  );

/** Far more specks than letters: a grainy picture. */
export const isGrainy = (spots: readonly Spot[], height: number): boolean =>
  spots.length > 8 * Math.max(20, lettersOf(spots, height).length);

/**
 * Letters wider than high throughout: a fax of 204 by 98 dots to the inch, its rows drawn once.
 * Of no type in use are most letters wider than high.
 */
export function isSquashed(spots: readonly Spot[], height: number): boolean {
  const shares = lettersOf(spots, height)
    .map((s) => widthOf(s) / heightOf(s))
    .sort((a, b) => a - b);
  return shares.length >= 20 && shares[shares.length >> 1]! > 1.12;
}
