// The same word drawn twice, a hair apart, to look bold.

import type { Word } from './layout';

/** The side of the squares a page is divided into, so that each word is compared with its neighbors alone. */
const side = 4;
/** More squares than a page has in a row. */
const across = 1 << 20;
const squareOf = (v: number): number => Math.floor(v / side);

/** The words without those drawn twice. */
export function withoutDoubles(words: readonly Word[]): Word[] {
  /** Those seen, by their text, then by the square they begin in. */
  const seen = new Map<string, Map<number, Word[]>>();
  return words.filter((w) => {
    const [x, y] = [squareOf(w.x), squareOf(w.y)];
    const alike = seen.get(w.text);
    if (!alike) {
      seen.set(w.text, new Map([[x + y * across, [w]]]));
      return true;
    }
    const near = 0.25 * w.h;
    const reach = Math.min(4, Math.ceil(near / side));
    let double = false;
    for (let i = x - reach; i <= x + reach && !double; i++)
      for (let j = y - reach; j <= y + reach && !double; j++)
        double =
          alike.get(i + j * across)?.some((s) => Math.abs(s.x - w.x) < near && Math.abs(s.y - w.y) < near) ?? false;
    const there = alike.get(x + y * across);
    if (there) there.push(w);
    else alike.set(x + y * across, [w]);
    return !double;
  });
}
