// Pieces of a page one below the other on a white sheet, larger: read as one column.

import type { Box } from './source';
import type { Grey } from './straighten/grey';

export interface Sheet {
  grey: Grey;
  /** Where each piece begins. */
  tops: number[];
}

const gap = 24;

/** Each piece with a margin of `margin` of its height, so large that its height becomes `height` dots. */
export function sheetOf(boxes: readonly Box[], page: Grey, height: number, margin = 0.35): Sheet {
  const pieces = boxes.map((b) => {
    const scale = height / Math.max(1, b.h);
    const m = margin * b.h;
    return { x: b.x - m, y: b.y - m, scale, w: Math.ceil((b.w + 2 * m) * scale), h: Math.ceil((b.h + 2 * m) * scale) };
  });
  const tops: number[] = [];
  let all = gap;
  for (const p of pieces) {
    tops.push(all);
    all += p.h + gap;
  }
  const width = Math.max(0, ...pieces.map((p) => p.w)) + 2 * gap;
  const grey = { width, height: all, data: new Uint8Array(width * all).fill(255) };
  const toneAt = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= page.width || y >= page.height ? 255 : page.data[y * page.width + x]!;
  pieces.forEach((p, i) => {
    for (let y = 0; y < p.h; y++)
      for (let x = 0; x < p.w; x++) {
        const fx = p.x + (x + 0.5) / p.scale - 0.5;
        const fy = p.y + (y + 0.5) / p.scale - 0.5;
        const [x0, y0] = [Math.floor(fx), Math.floor(fy)];
        const [rx, ry] = [fx - x0, fy - y0];
        const top = toneAt(x0, y0) * (1 - rx) + toneAt(x0 + 1, y0) * rx;
        const low = toneAt(x0, y0 + 1) * (1 - rx) + toneAt(x0 + 1, y0 + 1) * rx;
        grey.data[(tops[i]! + y) * width + gap + x] = top * (1 - ry) + low * ry;
      }
  });
  return { grey, tops };
}
