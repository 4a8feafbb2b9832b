// The moment a photo was taken, from what the camera wrote into it.

import { parse } from 'exifr/dist/lite.esm.mjs';

const two = (n: number): string => String(n).padStart(2, '0');

/** The day and the time of day (YYYY-MM-DD, HH:MM) of a clock. */
export const momentOf = (at: Date): { day: string; time: string } => ({
  day: `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`,
  time: `${two(at.getHours())}:${two(at.getMinutes())}`,
});

/** The moment as the camera's clock had it, or nothing where the file says none. */
export async function whenTaken(file: Blob): Promise<{ day: string; time: string } | undefined> {
  try {
    const found = await parse(file);
    const at = found?.['DateTimeOriginal'] ?? found?.['CreateDate'];
    return at instanceof Date && !Number.isNaN(at.getTime()) ? momentOf(at) : undefined;
  } catch {
    // Not a picture, or one without such words: its file date is used instead, and said to be that.
    return undefined;
  }
}
