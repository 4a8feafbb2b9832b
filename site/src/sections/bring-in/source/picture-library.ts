// Fetches tesseract.js with its core and data, and the straightener, on use, all from the site's own files. Each runs in a worker of its own.

import { relaxedSimd, simd } from 'wasm-feature-detect';
import readers from '../../../generated/readers.json';
import type { Word } from './layout';
import type { Grey } from './straighten/grey';
import type { Straight } from './straighten/straighten';

/** True where pictures can be read at all. */
export const canReadPictures = true;

export interface Tidy {
  straighten(picture: ImageData, quarters?: 0 | 1 | 2 | 3): Promise<Straight>;
  /** The words with places and certainty. `confidence`: of the whole, 0 to 100. */
  read(page: Grey, progress: (done: number) => void): Promise<{ words: Word[]; confidence: number }>;
  /** The same for a picture that holds nothing but figures. */
  readFigures(page: Grey): Promise<Word[]>;
  close(): void;
}

/** The part of the answer of tesseract.js that is used. */
interface Block {
  paragraphs: {
    lines: {
      words: { text: string; confidence: number; bbox: { x0: number; y0: number; x1: number; y1: number } }[];
    }[];
  }[];
}

const wordsOf = (blocks: Block[] | null): Word[] =>
  (blocks ?? [])
    .flatMap((b) => b.paragraphs)
    .flatMap((p) => p.lines)
    .flatMap((l) => l.words)
    .map((w) => ({
      text: w.text,
      x: w.bbox.x0,
      y: w.bbox.y0,
      w: w.bbox.x1 - w.bbox.x0,
      h: w.bbox.y1 - w.bbox.y0,
      confidence: w.confidence,
    }));

/** "uniform block": rows are read across columns, nothing is taken for a picture. */
const oneBlock = '6';

/** As a file of the plainest kind (PGM), which costs nothing to write and to read. */
function asFile({ width, height, data }: Grey): Uint8Array {
  const head = new TextEncoder().encode(`P5\n${width} ${height}\n255\n`);
  const file = new Uint8Array(head.length + data.length);
  file.set(head);
  file.set(data, head.length);
  return file;
}

async function core(): Promise<string> {
  return (await relaxedSimd()) ? 'relaxedsimd-lstm' : (await simd()) ? 'simd-lstm' : 'lstm';
}

/** Fails as soon as the signal is aborted, whatever `work` does. */
function orAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  return new Promise((done, fail) => {
    signal.addEventListener('abort', () => fail(signal.reason as Error), { once: true });
    work.then(done, fail);
  });
}

export async function startReader(progress: (done: number) => void, signal: AbortSignal): Promise<Tidy> {
  const folder = new URL(`generated/${readers.ocr}`, document.baseURI).href;
  const { default: Tesseract } = await import('tesseract.js/dist/tesseract.esm.min.js');
  signal.throwIfAborted();
  let reading: (done: number) => void = () => undefined;
  const opening = Tesseract.createWorker(['eng', 'spa'], 1, {
    workerPath: `${folder}/worker.js`,
    corePath: `${folder}/tesseract-core-${await core()}.js`,
    langPath: folder,
    workerBlobURL: false,
    cacheMethod: 'none',
    logger: (m) => {
      if (m.status === 'loading language traineddata') progress(m.progress);
      if (m.status === 'recognizing text') reading(m.progress);
    },
    errorHandler: () => undefined,
  });
  // Aborted while it is on its way: it is let go of when it has come.
  signal.addEventListener(
    'abort',
    () =>
      void opening.then(
        (w) => w.terminate(),
        () => undefined,
      ),
    { once: true },
  );
  const reader = await orAborted(opening, signal);
  await reader.setParameters({ tessedit_pageseg_mode: oneBlock as never, user_defined_dpi: '300' });
  const straightener = new Worker(new URL('./straighten/worker.ts', import.meta.url), { type: 'module' });

  const recognise = async (page: Grey) => {
    // Its types do not name bytes, which it takes.
    const file = asFile(page) as unknown as File;
    const answer = await orAborted(reader.recognize(file, {}, { text: false, blocks: true }), signal);
    return { words: wordsOf(answer.data.blocks as Block[] | null), confidence: answer.data.confidence };
  };

  return {
    straighten({ width, height, data }, quarters) {
      return orAborted(
        new Promise<Straight>((done, fail) => {
          straightener.onmessage = (e: MessageEvent<Straight>) => done(e.data);
          straightener.onerror = (e) => fail(new Error(e.message));
          straightener.postMessage({ rgba: data, width, height, quarters });
        }),
        signal,
      );
    },
    async read(page, says) {
      reading = says;
      return recognise(page);
    },
    async readFigures(page) {
      reading = () => undefined;
      await reader.setParameters({ tessedit_char_whitelist: '0123456789.,$()-%/' });
      const { words } = await recognise(page);
      await reader.setParameters({ tessedit_char_whitelist: '' });
      return words;
    },
    close() {
      straightener.terminate();
      void reader.terminate();
    },
  };
}
