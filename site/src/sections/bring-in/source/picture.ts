// A photo or scan on the device: straightened in one worker, its words read by tesseract.js in another. Figures are looked at twice.

import { canvasOfGrey, pictureAddress } from './canvas';
import { startReader, type Tidy } from './picture-library';
import { layOut } from './layout';
import { fullestRows, upsideDown } from './sample';
import { secondLook } from './second-look';
import type { Source, SourceLine, SourcePage } from './source';
import { Trouble } from './trouble';

export type PictureStep = 'fetching' | 'straightening' | 'reading' | 'checking';

export interface PictureProgress {
  step: PictureStep;
  /** 0 to 1 where it is known. */
  done?: number;
  page?: number;
  of?: number;
}

/** Below this a whole page was hardly read: perhaps it stands on its head. */
const hardlyRead = 62;

interface ReadPage {
  lines: SourceLine[];
  page: SourcePage;
  words: number;
}

async function readPage(
  canvas: HTMLCanvasElement,
  index: number,
  tidy: Tidy,
  progress: (p: PictureProgress) => void,
): Promise<ReadPage> {
  const dots = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  const look = async (quarters?: 0 | 1 | 2 | 3) => {
    progress({ step: 'straightening' });
    const straight = await tidy.straighten(dots, quarters);
    progress({ step: 'reading', done: 0 });
    return { straight, ...(await tidy.read(straight.read, (done) => progress({ step: 'reading', done }))) };
  };
  let best = await look();
  const first = best.straight;
  const side = (((Math.round(first.turnedBy / 90) % 4) + 4) % 4) as 0 | 1 | 2 | 3;
  const turned = ((side + 2) % 4) as 0 | 1 | 2 | 3;
  // Upside down first, then as it came. A hardly legible page takes long to read: a few of its rows tell whether it is worth it.
  for (const quarters of new Set([turned, 0 as const])) {
    if (best.confidence >= hardlyRead || quarters === side) continue;
    const rows = fullestRows(quarters === turned ? first : await tidy.straighten(dots, quarters));
    const sample = await tidy.read(quarters === turned ? upsideDown(rows) : rows, () => undefined);
    if (sample.confidence <= best.confidence) continue;
    const again = await look(quarters);
    if (again.confidence > best.confidence) best = again;
  }
  progress({ step: 'checking' });
  const { shown, rules } = best.straight;
  const words = await secondLook(best.words, best.straight, (page) => tidy.readFigures(page));
  const page: SourcePage = {
    width: shown.width,
    height: shown.height,
    image: await pictureAddress(canvasOfGrey(shown)),
  };
  return { lines: layOut(words, index, rules), page, words: words.length };
}

/** Reads pictures, one page each, in order. Aborting stops the workers at once. */
export async function readPictures(
  pages: ((signal: AbortSignal) => Promise<HTMLCanvasElement>)[],
  name: string,
  progress: (p: PictureProgress) => void,
  signal: AbortSignal,
): Promise<Source> {
  progress({ step: 'fetching' });
  const tidy = await startReader((done) => progress({ step: 'fetching', done }), signal);
  try {
    const lines: SourceLine[] = [];
    const read: SourcePage[] = [];
    let words = 0;
    for (const [i, open] of pages.entries()) {
      signal.throwIfAborted();
      const canvas = await open(signal);
      const page = await readPage(canvas, i, tidy, (p) =>
        progress(pages.length > 1 ? { ...p, page: i + 1, of: pages.length } : p),
      );
      signal.throwIfAborted();
      if (i > 0) lines.push({ text: '', pieces: [] });
      lines.push(...page.lines);
      read.push(page.page);
      words += page.words;
    }
    const close = (): void => read.forEach((p) => p.image && URL.revokeObjectURL(p.image));
    if (words === 0) {
      close();
      throw new Trouble('noWords');
    }
    return { kind: 'picture', name, lines, pages: read, close };
  } finally {
    tidy.close();
  }
}
