// A photo or scan made fit for reading: brightened, turned upright and level, its letters of a good size, lines and specks taken off.

import type { Rule } from '../layout';
import { cleaned } from './clean';
import type { Box } from '../source';
import { brightened, doubled, evened, type Grey, greyOf, inkOf, softened, turned, withoutGrain } from './grey';
import { isGrainy, isSquashed, letterHeight, type Spot, spotsOf } from './spots';
import { fanOf, turnOf } from './turn';

export interface Straight {
  /** For the person to look at: straight and bright, everything still on it. */
  shown: Grey;
  /** For the reader of letters. */
  read: Grey;
  /** The same with everything still on it that was taken for a line or speck, for a second look. */
  whole: Grey;
  /** Where ink stands together on it. */
  cells: Box[];
  /** The usual height of a letter on it. */
  letter: number;
  rules: Rule[];
  /** What was done, in degrees against the clock. */
  turnedBy: number;
}

/** The height of letters the reader does best with, in dots. */
const goodHeight = 30;
/** No more dots than this: enough for a whole page of small print, and within the memory of a phone. */
const mostDots = 12_000_000;

interface Inked {
  bright: Grey;
  spots: Spot[];
  /** The usual height of a letter. */
  letters: number;
}

function inked(bright: Grey): Inked {
  const spots = spotsOf(inkOf(bright));
  return { bright, spots, letters: letterHeight(spots, bright) };
}

/** `quarters` forces a side up; without it the side is found. */
export function straighten(rgba: Uint8ClampedArray, width: number, height: number, quarters?: 0 | 1 | 2 | 3): Straight {
  const came = greyOf(rgba, width, height);
  let { bright, spots, letters } = inked(brightened(came));
  let turn = turnOf(spots, letters || 12);
  const onItsSide = (quarters ?? turn.quarters) % 2 === 1;
  // In a squashed picture the mean of nine dots would run lines together.
  const squashed = !onItsSide && isSquashed(spots, letters);
  if (squashed) ({ bright, spots, letters } = inked(doubled(bright)));
  else if (isGrainy(spots, letters)) {
    const soft = inked(brightened(softened(came)));
    if (soft.letters > 0) ({ bright, spots, letters } = soft);
  }
  turn = turnOf(spots, letters || 12);
  const upright = (quarters ?? turn.quarters) * 90 + turn.degrees;
  const { degrees, fan } = letters ? fanOf(spots, bright, upright, letters) : { degrees: 0, fan: 0 };
  const by = upright + degrees;
  const wanted = letters ? goodHeight / letters : 1;
  const scale = Math.max(0.3, Math.min(3, wanted, Math.sqrt(mostDots / bright.data.length)));
  const asIs = Math.abs(by) < 0.03 && fan === 0 && Math.abs(scale - 1) < 0.05;
  const shown = asIs ? bright : turned(bright, by, scale, fan);
  const letter = Math.max(8, letters * scale);
  const even = evened(shown, letter);
  const quiet = withoutGrain(even);
  const { grey, rules, cells } = cleaned(quiet, inkOf(quiet), letter);
  return { shown, read: grey, whole: even, cells, letter, rules, turnedBy: by };
}
