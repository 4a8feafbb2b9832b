// Fetches pdfjs-dist with its worker, on use. The single offline file replaces this module by one that holds them.

import type * as Library from 'pdfjs-dist';
import readers from '../../../generated/readers.json';

/** True where PDFs can be read at all. */
export const canReadPdf = true;

export interface Pdf {
  library: typeof Library;
  /** What `getDocument` is given besides the file. */
  options: object;
}

export async function startPdf(): Promise<Pdf> {
  const library = (await import('pdfjs-dist/legacy/build/pdf.min.mjs')) as unknown as typeof Library;
  library.GlobalWorkerOptions.workerSrc = new URL(`generated/${readers.pdf}/worker.js`, document.baseURI).href;
  return { library, options: {} };
}
