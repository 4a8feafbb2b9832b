// What was brought in, as the review shows it: lines of text, and where each stands on its page.

import { linesRead, signsOfLine, signsRead } from './limits';

/** Left, top, width and height on a page, in that page's own units. */
export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

/** A stretch of a line (UTF-16 offsets, end exclusive) and its place on the page. */
export interface Piece {
  start: number;
  end: number;
  box: Box;
  /** How sure the reading of a picture is, 0 to 100. Absent where the text was not read from a picture. */
  confidence?: number;
  /** What a sum can have been, likeliest first, where two looks at it do not agree. */
  readings?: string[];
  /** A sum stands there that could not be read; what the text has in its place is none. */
  unread?: true;
}

export interface SourceLine {
  text: string;
  /** Index into the pages; absent for plain text. */
  page?: number;
  pieces: Piece[];
}

/** One page as a picture. `image` is its address once it has been drawn. */
export interface SourcePage {
  width: number;
  height: number;
  image?: string;
}

export type Kind = 'text' | 'pdf' | 'picture';

export interface Source {
  kind: Kind;
  /** The file's name; empty for pasted text. */
  name: string;
  lines: SourceLine[];
  pages: SourcePage[];
  /** Pages the file has and pages that were read, where they differ. */
  pagesLeft?: { read: number; of: number };
  /** True where it is longer than any statement, and only its beginning was read. */
  cut?: boolean;
  /** Draws the pictures of the pages that have none yet, one after another; `drawn` is called after each. */
  drawPages?(drawn: () => void): Promise<void>;
  /** Lets go of what the pictures hold. */
  close(): void;
}

export const wholeText = (source: Source): string => source.lines.map((l) => l.text).join('\n');

/** A source of nothing but text. Line ends of every kind (LF, CR LF, CR, form feed) part lines. */
export function textSource(text: string, name = ''): Source {
  const all = text.slice(0, signsRead).split(/\r\n|[\n\r\f]/);
  const lines = all.slice(0, linesRead).map((line) => line.slice(0, signsOfLine));
  const cut = text.length > signsRead || all.length > lines.length || lines.some((l, i) => l.length < all[i]!.length);
  return {
    kind: 'text',
    name,
    lines: lines.map((line) => ({ text: line, pieces: [] })),
    pages: [],
    ...(cut && { cut }),
    close: () => undefined,
  };
}

/** The smallest box around all. */
export function around(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((b) => b.x));
  const y = Math.min(...boxes.map((b) => b.y));
  const right = Math.max(...boxes.map((b) => b.x + b.w));
  const bottom = Math.max(...boxes.map((b) => b.y + b.h));
  return { x, y, w: right - x, h: bottom - y };
}
