// How much of a long file is read. What is left out is said.

/** Pages of a PDF with text: more than any statement has. */
export const pagesRead = 20;
/** Pages of a scanned PDF: each takes some seconds. */
export const scannedPagesRead = 6;
/** Lines of a text: no statement of one tenancy has a thousand. */
export const linesRead = 1000;
/** Signs of a line; a paragraph of an e-mail may be one line. */
export const signsOfLine = 8000;
/** Signs of a text in all. */
export const signsRead = 400_000;
/** Words of a page of a PDF; a page set closely has about a thousand. */
export const wordsOfPage = 5000;
/** Bytes of a file. */
export const mostBytes = 60 * 1024 * 1024;
