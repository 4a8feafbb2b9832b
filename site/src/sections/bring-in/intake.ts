// From what a person hands over to a source that can be gone through. Each kind of file is read by its own part, fetched on use.

import { canReadPdf } from './source/pdf-library';
import { canReadPictures } from './source/picture-library';
import { kindOfFile } from './source/kind-of-file';
import { mostBytes, scannedPagesRead } from './source/limits';
import { textSource, type Source } from './source/source';
import { Trouble } from './source/trouble';
import type { OpenPdf } from './source/pdf';

/** What is going on, for the person who waits. */
export interface Progress {
  /** Ending of a key under page.bring.step. */
  step: 'opening' | 'page' | 'fetching' | 'straightening' | 'reading' | 'checking';
  page?: number;
  of?: number;
  /** 0 to 1 where it is known. */
  done?: number;
}

export type Taken =
  | { as: 'source'; source: Source; attachments?: File[] }
  /** A PDF whose pages are pictures: reading them takes longer, so it is asked first. */
  | { as: 'scan'; pdf: OpenPdf }
  | { as: 'cases' };

const pictureOnly = async (): Promise<typeof import('./source/picture')> => {
  if (!canReadPictures) throw new Trouble('noPicturesHere');
  return import('./source/picture');
};

async function takePdf(
  bytes: Uint8Array,
  name: string,
  password: string | undefined,
  says: (p: Progress) => void,
  signal: AbortSignal,
): Promise<Taken> {
  if (!canReadPdf) throw new Trouble('noPdfHere');
  const { openPdf } = await import('./source/pdf');
  signal.throwIfAborted();
  const pdf = await openPdf(bytes, name, password, ({ page, of }) => says({ step: 'page', page, of }), signal);
  return pdf.words ? { as: 'source', source: pdf.source } : { as: 'scan', pdf };
}

export async function readPhotos(files: File[], says: (p: Progress) => void, signal: AbortSignal): Promise<Source> {
  const { readPictures } = await pictureOnly();
  const { canvasOf } = await import('./source/canvas');
  return readPictures(
    files.map((f) => () => canvasOf(f)),
    files.map((f) => f.name).join(', '),
    says,
    signal,
  );
}

/** Reads the pages of a scanned PDF as pictures. The PDF is let go of afterwards. */
export async function readScan(pdf: OpenPdf, says: (p: Progress) => void, signal: AbortSignal): Promise<Source> {
  const { readPictures } = await pictureOnly();
  const of = pdf.source.pagesLeft?.of ?? pdf.source.pages.length;
  const pages = pdf.source.pages.slice(0, scannedPagesRead).map((_, i) => () => pdf.picture(i, 3300));
  const source = await readPictures(pages, pdf.source.name, says, signal).finally(() => pdf.source.close());
  return of > pages.length ? { ...source, pagesLeft: { read: pages.length, of } } : source;
}

async function takeText(bytes: Uint8Array, kind: 'mail' | 'web-page' | 'text', name: string): Promise<Taken> {
  const { attachmentsOf, decoded, textOfHtml, textOfMail } = await import('./source/text');
  const text =
    kind === 'mail' ? await textOfMail(bytes) : kind === 'web-page' ? textOfHtml(decoded(bytes)) : decoded(bytes);
  const attachments = kind === 'mail' ? await attachmentsOf(bytes) : [];
  if (text.trim() === '' && attachments.length === 0) throw new Trouble('empty');
  return { as: 'source', source: textSource(text, name), attachments };
}

/** Takes one file, or several pictures that are the pages of one statement. Throws `Trouble`, `Locked`, or the reason of the signal. */
export async function takeFiles(
  files: File[],
  password: string | undefined,
  says: (p: Progress) => void,
  signal: AbortSignal,
): Promise<Taken> {
  const file = files[0];
  if (!file) throw new Trouble('empty');
  if (files.some((f) => f.size > mostBytes)) throw new Trouble('tooLarge');
  says({ step: 'opening' });
  const bytes = new Uint8Array(await file.arrayBuffer());
  signal.throwIfAborted();
  if (bytes.length === 0) throw new Trouble('empty');
  const kind = kindOfFile(bytes, file.name);
  if (files.length > 1 && kind !== 'picture' && kind !== 'case') throw new Trouble('severalFiles');
  switch (kind) {
    case 'pdf':
      return takePdf(bytes, file.name, password, says, signal);
    case 'picture':
      return { as: 'source', source: await readPhotos(files, says, signal) };
    case 'mail':
    case 'web-page':
    case 'text':
      return takeText(bytes, kind, file.name);
    case 'case':
      return { as: 'cases' };
    case 'word-file':
      throw new Trouble('wordFile');
    case 'spreadsheet':
      throw new Trouble('spreadsheet');
    default:
      throw new Trouble('unknownKind');
  }
}
