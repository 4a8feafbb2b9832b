// pdfjs-dist where everything is one file: held in it, gzipped, and run as a script the page's policy knows by its hash. Takes the place
// of pdf-library.ts in that build. There is no worker: a page opened from a disk may not start one from a file.

import { library, worker } from 'virtual:held-pdf';
import type * as Library from 'pdfjs-dist';
import { unpacked } from '../../../engine/files-held';
import type { Pdf } from './pdf-library';

export type { Pdf };

/** False where the file would have become too large with it. */
export const canReadPdf = library !== '';

async function run(base64: string, part: string): Promise<void> {
  const script = document.createElement('script');
  script.type = 'module';
  script.textContent = await (await unpacked(base64)).text();
  await new Promise<void>((done, fail) => {
    addEventListener(`held-${part}`, () => done(), { once: true });
    script.addEventListener('error', () => fail(new Error(part)));
    document.head.append(script);
  });
  script.remove();
}

let coming: Promise<Pdf> | undefined;

async function bring(): Promise<Pdf> {
  await run(worker, 'pdf-worker');
  await run(library, 'pdf');
  const held = (globalThis as unknown as { pdfjsLib: typeof Library }).pdfjsLib;
  return { library: held, options: {} };
}

export const startPdf = (): Promise<Pdf> => (coming ??= bring());
