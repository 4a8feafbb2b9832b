// A PDF on the device: its text with the places of the words, and pictures of its pages. pdfjs-dist does the reading, in a worker.

import type { DocumentInitParameters, PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist/types/src/display/api';
import { startPdf } from './pdf-library';
import { withoutDoubles } from './doubles';
import { layOut, type Word } from './layout';
import { pagesRead, wordsOfPage } from './limits';
import { Locked } from './locked';
import { pictureAddress } from './canvas';
import type { Source, SourceLine, SourcePage } from './source';
import { Trouble } from './trouble';

export interface PdfProgress {
  page: number;
  of: number;
}

/** An opened PDF. `words` is false where no page read holds text: a scan. */
export interface OpenPdf {
  source: Source;
  words: boolean;
  /** Draws a page, for reading it as a picture. */
  picture(page: number, longSide: number): Promise<HTMLCanvasElement>;
}

/** The error of the library as one of ours; undefined if it is none that a file can cause. */
function troubleOf(e: unknown): Error | undefined {
  const { name, code } = e as { name?: string; code?: number };
  if (name === 'PasswordException') return new Locked(code === 2);
  const broken = [
    'InvalidPDFException',
    'MissingPDFException',
    'UnknownErrorException',
    'FormatError',
    'XRefParseException',
  ];
  return name && broken.includes(name) ? new Trouble('brokenPdf') : undefined;
}

interface TextItem {
  str: string;
  transform: number[];
  width: number;
  height: number;
}

type Matrix = [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** The share of a font's height that stands above the baseline; near enough for a frame around a word. */
const ascent = 0.78;

/** Words of one item. Their places within it follow from the number of signs before them. */
function wordsOf(item: TextItem, toPage: Matrix, scale: number): Word[] {
  const [a, b, , , x, y] = times(toPage, item.transform as Matrix);
  const size = Math.hypot(item.transform[2]!, item.transform[3]!) * scale || item.height * scale;
  // Text that does not run from left to right (a stamp, a margin note) stands in the way of the lines: it is left where it begins.
  const level = Math.abs(b) <= Math.abs(a) * 0.2 && a > 0;
  const width = level ? item.width * scale : size;
  const each = width / Math.max(1, item.str.length);
  return [...item.str.matchAll(/\S+(?: \S+)*/g)].map((m) => ({
    text: m[0],
    x: x + (level ? m.index * each : 0),
    y: y - size * ascent,
    w: m[0].length * each,
    h: size,
  }));
}

async function readPage(
  page: PDFPageProxy,
  index: number,
): Promise<{ lines: SourceLine[]; page: SourcePage; cut: boolean }> {
  const viewport = page.getViewport({ scale: 1 });
  const content = await page.getTextContent();
  const items = (content.items as TextItem[]).filter((i) => typeof i.str === 'string' && i.str.trim() !== '');
  const all = items.slice(0, wordsOfPage).flatMap((i) => wordsOf(i, viewport.transform as Matrix, viewport.scale));
  const words = withoutDoubles(all.slice(0, wordsOfPage));
  const cut = items.length > wordsOfPage || all.length > wordsOfPage;
  return { lines: layOut(words, index), page: { width: viewport.width, height: viewport.height }, cut };
}

async function draw(document: PDFDocumentProxy, index: number, longSide: number): Promise<HTMLCanvasElement> {
  const page = await document.getPage(index + 1);
  const plain = page.getViewport({ scale: 1 });
  const viewport = page.getViewport({ scale: Math.min(6, longSide / Math.max(plain.width, plain.height)) });
  const canvas = window.document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(viewport.width));
  canvas.height = Math.max(1, Math.round(viewport.height));
  await page.render({ canvasContext: canvas.getContext('2d')!, viewport }).promise;
  page.cleanup();
  return canvas;
}

/** Opens and reads a PDF. Throws `Locked` where a password is wanted and `Trouble` where the file is broken. */
export async function openPdf(
  bytes: Uint8Array,
  name: string,
  password: string | undefined,
  progress: (p: PdfProgress) => void,
  signal: AbortSignal,
): Promise<OpenPdf> {
  const { library, options } = await startPdf();
  signal.throwIfAborted();
  const task = library.getDocument({
    data: bytes,
    password,
    isEvalSupported: false,
    enableXfa: false,
    stopAtErrors: false,
    verbosity: 0,
    ...options,
  } as DocumentInitParameters);
  const stop = (): void => void task.destroy();
  signal.addEventListener('abort', stop, { once: true });
  try {
    const document = await task.promise;
    const count = Math.min(document.numPages, pagesRead);
    if (count === 0) throw new Trouble('brokenPdf');
    const lines: SourceLine[] = [];
    const pages: SourcePage[] = [];
    let cut = false;
    for (let i = 0; i < count; i++) {
      signal.throwIfAborted();
      progress({ page: i + 1, of: count });
      const read = await readPage(await document.getPage(i + 1), i);
      if (i > 0) lines.push({ text: '', pieces: [] });
      lines.push(...read.lines);
      pages.push(read.page);
      cut ||= read.cut;
    }
    const source: Source = {
      kind: 'pdf',
      name,
      lines,
      pages,
      ...(cut && { cut }),
      ...(document.numPages > count ? { pagesLeft: { read: count, of: document.numPages } } : {}),
      async drawPages(drawn) {
        for (const [i, page] of pages.entries()) {
          if (page.image || task.destroyed) continue;
          page.image = await pictureAddress(await draw(document, i, 1600));
          drawn();
        }
      },
      close() {
        pages.forEach((p) => p.image && URL.revokeObjectURL(p.image));
        void task.destroy();
      },
    };
    const words = lines.some((l) => /\p{L}{2}|\d/u.test(l.text));
    return { source, words, picture: (page, longSide) => draw(document, page, longSide) };
  } catch (e) {
    void task.destroy();
    signal.throwIfAborted();
    throw troubleOf(e) ?? e;
  } finally {
    signal.removeEventListener('abort', stop);
  }
}
