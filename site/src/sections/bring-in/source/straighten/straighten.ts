// A photo or scan made fit for reading: brightened, turned upright and level, its letters of a good size, lines and specks taken off.

import type { Rule } from '../layout';
import { cleaned } from './clean';
import { brightened, evened, type Grey, greyOf, inkOf, turned } from './grey';
import { letterHeight, spotsOf } from './spots';
import { turnOf } from './turn';

export interface Straight {
  /** For the person to look at: straight and bright, everything still on it. */
  shown: Grey;
  /** For the reader of letters. */
  read: Grey;
  rules: Rule[];
  /** What was done, in degrees against the clock. */
  turnedBy: number;
}

/** The height of letters the reader does best with, in dots. */
const goodHeight = 30;
/** No more dots than this: enough for a whole page of small print, and within the memory of a phone. */
const mostDots = 12_000_000;

/** `quarters` forces a side up; without it the side is found. */
export function straighten(rgba: Uint8ClampedArray, width: number, height: number, quarters?: 0 | 1 | 2 | 3): Straight {
  const bright = brightened(greyOf(rgba, width, height));
  const spots = spotsOf(inkOf(bright));
  const letters = letterHeight(spots, bright);
  const turn = turnOf(spots, letters || 12);
  const by = (quarters ?? turn.quarters) * 90 + turn.degrees;
  const wanted = letters ? goodHeight / letters : 1;
  const scale = Math.max(0.3, Math.min(3, wanted, Math.sqrt(mostDots / (width * height))));
  const shown = Math.abs(by) < 0.03 && Math.abs(scale - 1) < 0.05 ? bright : turned(bright, by, scale);
  const letter = Math.max(8, letters * scale);
  const even = evened(shown, letter);
  const { grey, rules } = cleaned(even, inkOf(even), letter);
  return { shown, read: grey, rules, turnedBy: by };
}
