// Pictures on canvases, and canvases as pictures.

import type { Grey } from './straighten/grey';
import { Trouble } from './trouble';

/** Neither side of what is looked at is longer: a letter page at 300 dots to the inch. */
const longestSide = 3300;

/** The picture on a canvas, upright as the camera held it, not too large. Throws `notAPicture` where the browser cannot show it. */
export async function canvasOf(file: Blob): Promise<HTMLCanvasElement> {
  const bitmap = await createImageBitmap(file).catch(() => {
    throw new Trouble('notAPicture');
  });
  const scale = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const context = canvas.getContext('2d')!;
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return canvas;
}

export function canvasOfGrey({ width, height, data }: Grey): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d')!;
  const image = context.createImageData(width, height);
  const dots = new Uint32Array(image.data.buffer);
  for (let i = 0; i < data.length; i++) dots[i] = 0xff000000 | (data[i]! * 0x010101);
  context.putImageData(image, 0, 0);
  return canvas;
}

/** An address under which the page can show the canvas; to be revoked by whoever asked. */
export const pictureAddress = (canvas: HTMLCanvasElement): Promise<string> =>
  new Promise((done, fail) =>
    canvas.toBlob((blob) => (blob ? done(URL.createObjectURL(blob)) : fail(new Error('no picture'))), 'image/png'),
  );
