// The words of a web page, read in one pass from its marks: no document is built of it, so that neither how much it holds nor how deep it
// nests can hold the page up. Tags and raw text are told apart as the HTML standard's tokenizer does (13.2.5).

import { signsRead } from './limits';

const block = new Set(
  'address article blockquote dd div dl dt figure footer form h1 h2 h3 h4 h5 h6 header hr li main ol p pre section table ul'.split(
    ' ',
  ),
);
/** Elements whose content nobody reads. */
const silent = new Set('script style template noscript title'.split(' '));

/** Gathers text piece by piece; only the last sign is ever looked back at. */
class Gathered {
  private pieces: string[] = [];
  private last = '';
  add(text: string): void {
    if (text === '') return;
    this.pieces.push(text);
    this.last = text[text.length - 1]!;
  }
  words(text: string): void {
    this.add(this.last === '' || this.last === '\n' || this.last === '\t' ? text.trimStart() : text);
  }
  lineEnd(): void {
    if (this.last !== '' && this.last !== '\n') this.add('\n');
  }
  get text(): string {
    return this.pieces.join('');
  }
}

/** Where a tag that begins at `from` ends: past its ">", which a quoted value may hold too. */
function tagEnd(html: string, from: number): number {
  let quote = '';
  let before = '';
  for (let i = from; i < html.length; i++) {
    const sign = html[i]!;
    if (quote) quote = sign === quote ? '' : quote;
    else if (sign === '>') return i + 1;
    else if ((sign === '"' || sign === "'") && before === '=') quote = sign;
    if (!/\s/.test(sign)) before = sign;
  }
  return html.length;
}

const past = (html: string, what: string, from: number): number => {
  const at = html.indexOf(what, from);
  return at < 0 ? html.length : at + what.length;
};

/** Past the end tag of an element whose content is no markup. */
function rawEnd(html: string, name: string, from: number): number {
  const end = new RegExp(`</${name}(?=[\\s/>])`, 'gi');
  end.lastIndex = from;
  return end.exec(html) ? tagEnd(html, end.lastIndex) : html.length;
}

/** A row of a table that is open: its cells so far. One that holds a table itself only sets the page out, and its cells are lines. */
interface Row {
  cells: string[];
  setsOut: boolean;
}

const closed = (cell: string): string => cell.replace(/\s+/g, ' ').trim();

/** Puts the words in lines and cells as the tags come. */
class Setting {
  private out = new Gathered();
  private rows: Row[] = [];
  /** Signs of words so far. */
  signs = 0;

  /** The row whose cells are being gathered. */
  private get row(): Row | undefined {
    const last = this.rows[this.rows.length - 1];
    return last?.setsOut ? undefined : last;
  }
  words(text: string): void {
    this.signs += text.length;
    const { row } = this;
    if (!row) return this.out.words(text.replace(/[ \t\r\n]+/g, ' '));
    if (row.cells.length === 0) row.cells.push('');
    row.cells[row.cells.length - 1] += text;
  }
  private lineEnd(): void {
    if (this.row) this.words(' ');
    else this.out.lineEnd();
  }
  private endRow(): void {
    const row = this.rows.pop();
    this.out.lineEnd();
    if (row && !row.setsOut) this.out.add(row.cells.map(closed).join('\t') + '\n');
  }
  /** What was gathered of a row that turns out to hold a table becomes lines. */
  private setOut(row: Row): void {
    row.setsOut = true;
    for (const cell of row.cells.map(closed)) {
      this.out.lineEnd();
      this.out.add(cell);
    }
    this.out.lineEnd();
  }
  opens(name: string): void {
    const { row } = this;
    if (name === 'tr') {
      if (row) this.endRow();
      this.rows.push({ cells: [], setsOut: false });
    } else if (name === 'td' || name === 'th') {
      if (row) row.cells.push('');
      else this.out.lineEnd();
    } else if (name === 'table' && row) this.setOut(row);
    else if (name === 'br') {
      if (row) this.words(' ');
      else this.out.add('\n');
    } else if (block.has(name)) this.lineEnd();
  }
  closes(name: string): void {
    if ((name === 'tr' && this.rows.length) || (name === 'table' && this.row)) this.endRow();
    else if (block.has(name)) this.lineEnd();
  }
  finish(): string {
    while (this.rows.length) this.endRow();
    return this.out.text;
  }
}

/**
 * The words of a web page in lines, its character references as they are; the cells of a row of a table are parted by tabs. More is
 * read of it than is kept, so that it is seen to be too long.
 */
export function flatText(html: string): string {
  const setting = new Setting();
  let at = 0;
  while (at < html.length && setting.signs <= 2 * signsRead) {
    const mark = html.indexOf('<', at);
    const next = html[mark + 1] ?? '';
    if (mark < 0 || mark > at) setting.words(html.slice(at, mark < 0 ? html.length : mark));
    if (mark < 0) break;
    if (/[!?]/.test(next) || (next === '/' && !/[a-z]/i.test(html[mark + 2] ?? ''))) {
      at = html.startsWith('<!--', mark) ? past(html, '-->', mark + 4) : past(html, '>', mark + 1);
    } else if (/[a-z/]/i.test(next)) {
      const end = tagEnd(html, mark + 1);
      const name = /^<\/?([a-z][^\s/>]*)/i.exec(html.slice(mark, mark + 24))![1]!.toLowerCase();
      at = end;
      if (next === '/') setting.closes(name);
      else if (silent.has(name)) at = rawEnd(html, name, end);
      else setting.opens(name);
    } else {
      setting.words('<');
      at = mark + 1;
    }
  }
  return setting
    .finish()
    .split('\n')
    .map((l) => l.trimEnd())
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
