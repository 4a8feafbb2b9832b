// The day a photo was taken, from what the camera wrote into it.

import { parse } from 'exifr/dist/lite.esm.mjs';

const two = (n: number): string => String(n).padStart(2, '0');

/** YYYY-MM-DD as the camera's clock had it, or empty where the file says nothing. */
export async function dayTaken(file: Blob): Promise<string> {
  try {
    const found = await parse(file);
    const day = found?.['DateTimeOriginal'] ?? found?.['CreateDate'];
    return day instanceof Date && !Number.isNaN(day.getTime())
      ? `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`
      : '';
  } catch {
    // Not a picture, or one without such words: its file date is used instead, and said to be that.
    return '';
  }
}
