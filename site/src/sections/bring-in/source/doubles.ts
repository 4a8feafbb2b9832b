// The same word drawn twice, a hair apart, to look bold.

import type { Word } from './layout';

/** The words without those drawn twice. */
export function withoutDoubles(words: readonly Word[]): Word[] {
  // Words by their text and the square of the page they begin in, so that each is compared with its neighbors alone.
  const side = 4;
  const seen = new Map<string, Word[]>();
  const squares = (w: Word, reach: number): string[] => {
    const [x, y] = [Math.floor(w.x / side), Math.floor(w.y / side)];
    const steps = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
    return steps.flatMap((i) => steps.map((j) => `${x + i} ${y + j} ${w.text}`));
  };
  return words.filter((w) => {
    const near = 0.25 * w.h;
    const reach = Math.min(4, Math.ceil(near / side));
    const double = squares(w, reach).some((at) =>
      seen.get(at)?.some((s) => Math.abs(s.x - w.x) < near && Math.abs(s.y - w.y) < near),
    );
    const [own] = squares(w, 0) as [string];
    const there = seen.get(own);
    if (there) there.push(w);
    else seen.set(own, [w]);
    return !double;
  });
}
