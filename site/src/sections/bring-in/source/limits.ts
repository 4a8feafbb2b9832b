// How much of a long file is read. What is left out is said.

/** Pages of a PDF with text: more than any statement has. */
export const pagesRead = 20;
/** Pages of a scanned PDF: each takes some seconds. */
export const scannedPagesRead = 6;
/** Bytes of a file. */
export const mostBytes = 60 * 1024 * 1024;
