// What the paper's own sums say of what was read from a picture.

import type { Charge } from './review';

export interface PictureSums {
  /** Lines whose sums come out. */
  settled: Set<number>;
  /** Lines whose sums ought to come out and do not. */
  off: Set<number>;
  /** Rows the engine has no charge of: the sum could not be read, or was left open as the account does not come out. */
  rows: Omit<Charge, 'key'>[];
}

/** Of text that was not read from a picture. */
export const noSums: PictureSums = { settled: new Set(), off: new Set(), rows: [] };
