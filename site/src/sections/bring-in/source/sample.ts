// A few rows of a page, to find out which way up it is without reading all of it.

import type { Grey } from './straighten/grey';
import type { Straight } from './straighten/straighten';

/** As high as about five rows. */
const heights = 12;

/** The stretch across the page in which most ink stands. */
export function fullestRows({ read, cells, letter }: Pick<Straight, 'read' | 'cells' | 'letter'>): Grey {
  const height = Math.min(read.height, Math.round(heights * letter));
  const inked = (top: number): number =>
    cells.reduce((sum, c) => (c.y >= top && c.y + c.h <= top + height ? sum + c.w : sum), 0);
  const tops = cells.map((c) => Math.max(0, Math.min(read.height - height, Math.floor(c.y - letter / 2))));
  const top = [0, ...tops].reduce((best, y) => (inked(y) > inked(best) ? y : best), 0);
  return { width: read.width, height, data: read.data.slice(top * read.width, (top + height) * read.width) };
}

export const upsideDown = ({ width, height, data }: Grey): Grey => ({ width, height, data: data.slice().reverse() });
