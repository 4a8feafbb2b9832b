declare module 'virtual:examples' {
  const index: {
    list: { slug: string; title: string; charges: number; place: string }[];
    open: Record<string, () => Promise<{ default: string }>>;
  };
  export default index;
}

declare module '*/generated/rules-index.json' {
  const index: unknown;
  export default index;
}

declare module '*/generated/readers.json' {
  /** Folders under generated/ with what reads PDFs and pictures. */
  const folders: { pdf: string; ocr: string };
  export default folders;
}

declare module 'pdfjs-dist/legacy/build/pdf.min.mjs';

declare module 'tesseract.js/dist/tesseract.esm.min.js' {
  import type * as Tesseract from 'tesseract.js';
  const library: typeof Tesseract;
  export default library;
}

declare module 'virtual:held' {
  export const engine: string;
  export const rules: string;
}

declare module 'virtual:held-pdf' {
  export const library: string;
  export const worker: string;
}

/** True in the build that is one file. */
declare const __ONE_FILE__: boolean;

declare module 'exifr/dist/lite.esm.mjs' {
  export function parse(file: Blob): Promise<Record<string, unknown> | undefined>;
}
