// Ink that stands together on a straight page, read or not: a word, a sum. What stands alone in a row of letters counts too.

import { around, type Box } from '../source';
import { rowsOf } from '../layout';
import { heightOf, type Spot, widthOf } from './spots';

const boxOf = (s: Spot): Box => ({ x: s.left, y: s.top, w: widthOf(s), h: heightOf(s) });

/** Points beside each other: as many are a leader, which parts words from their sum. */
const leader = 3;

const median = (numbers: readonly number[]): number => [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

/** A row of letters, and the smaller ink that stands in it: points, commas, dashes. */
function rowsWithMarks(spots: readonly Spot[], height: number): { tall: number; row: Box[] }[] {
  const boxes = spots.filter((s) => heightOf(s) <= 2.6 * height && widthOf(s) <= 12 * height).map(boxOf);
  const rows = rowsOf(boxes.filter((b) => b.h >= 0.7 * height)).map((row) => {
    const { y, h } = around(row);
    return { top: y, bottom: y + h, tall: median(row.map((b) => b.h)), row: [...row] };
  });
  for (const b of boxes.filter((s) => s.h < 0.7 * height && s.w < 1.2 * height)) {
    const middle = b.y + b.h / 2;
    const own = rows.find((r) => middle > r.top && middle < r.bottom + 0.35 * r.tall);
    own?.row.push(b);
  }
  return rows.map(({ tall, row }) => ({ tall, row: row.sort((a, b) => a.x - b.x) }));
}

/** `spots`: those that are neither lines nor specks. `height`: the usual height of a letter. */
export function cellsOf(spots: readonly Spot[], height: number): Box[] {
  const cells: Box[] = [];
  for (const { tall, row } of rowsWithMarks(spots, height)) {
    let cell: Box[] = [];
    let points: Box[] = [];
    let end = -Infinity;
    const close = (): void => {
      if (cell.length > 0) cells.push(around(points.length < leader ? [...cell, ...points] : cell));
      cell = [];
      points = [];
    };
    for (const box of row) {
      if (box.x - end > 1.1 * tall) close();
      end = Math.max(end, box.x + box.w);
      if (box.h < 0.4 * tall) {
        points.push(box);
        continue;
      }
      if (points.length >= leader) close();
      cell.push(...points, box);
      points = [];
    }
    close();
  }
  // A mark alone is no cell.
  return cells.filter((c) => c.h >= 0.7 * height);
}
