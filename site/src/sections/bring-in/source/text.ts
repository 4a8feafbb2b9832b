// Files of text: plain text and tables as they are, e-mail by its parts, web pages by their words.

import PostalMime from 'postal-mime';
import { forInertDocument } from '../../../app/trusted';
import { elementsRead, signsRead } from './limits';
import { textSource, type Source } from './source';

/** UTF-16 by its mark, UTF-8 if it is that, else the Windows code page of western Europe, which any bytes are. */
export function decoded(bytes: Uint8Array): string {
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : '';
  if (mark) return new TextDecoder(mark).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

const block = new Set(
  'ADDRESS ARTICLE BLOCKQUOTE DD DIV DL DT FIGURE FOOTER FORM H1 H2 H3 H4 H5 H6 HEADER HR LI MAIN OL P PRE SECTION TABLE TR UL'.split(
    ' ',
  ),
);
const silent = new Set('HEAD SCRIPT STYLE TEMPLATE NOSCRIPT TITLE'.split(' '));

/** Gathers text piece by piece; only the last sign is ever looked back at. */
class Gathered {
  private pieces: string[] = [];
  private last = '';
  signs = 0;
  add(text: string): void {
    if (text === '') return;
    this.pieces.push(text);
    this.last = text[text.length - 1]!;
    this.signs += text.length;
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

/**
 * The words of a web page in lines; the cells of a row of a table are parted by tabs. Nothing in it is run or fetched. A page of more than
 * any statement's elements is read as far as that.
 */
export function textOfHtml(html: string): string {
  const page = new DOMParser().parseFromString(forInertDocument(html), 'text/html');
  const gathered = new Gathered();
  let left = elementsRead;
  const row = (cells: Element[]): void => {
    gathered.lineEnd();
    gathered.add(cells.map((c) => (c.textContent ?? '').replace(/\s+/g, ' ').trim()).join('\t') + '\n');
  };
  const walk = (node: Node): void => {
    if (left-- <= 0 || gathered.signs > signsRead) return;
    if (node.nodeType === Node.TEXT_NODE) return gathered.words((node.textContent ?? '').replace(/[ \t\r\n]+/g, ' '));
    if (!(node instanceof Element) || silent.has(node.tagName)) return;
    if (node.tagName === 'BR') return gathered.add('\n');
    if (node.tagName === 'TR' && !node.querySelector('table')) return row([...node.children]);
    const own = block.has(node.tagName);
    if (own) gathered.lineEnd();
    for (let child = node.firstChild; child && left > 0; child = child.nextSibling) walk(child);
    if (own) gathered.lineEnd();
  };
  walk(page.body);
  return gathered.text
    .split('\n')
    .map((l) => l.trimEnd())
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}

/** The words of an e-mail as it is kept in a file (RFC 5322, MIME): its date and subject, then its text. */
export async function textOfMail(bytes: Uint8Array): Promise<string> {
  const mail = await PostalMime.parse(bytes);
  const raw = (key: string): string => mail.headers.find((h) => h.key === key)?.value ?? '';
  const head = [raw('date') && `Date: ${raw('date')}`, mail.subject && `Subject: ${mail.subject}`].filter(Boolean);
  const body =
    mail.html && (!mail.text?.trim() || /<table/i.test(mail.html)) ? textOfHtml(mail.html) : (mail.text ?? '');
  return [...head, '', body].join('\n');
}

/** Attachments of an e-mail that could be the statement itself. */
export async function attachmentsOf(bytes: Uint8Array): Promise<File[]> {
  const mail = await PostalMime.parse(bytes);
  return mail.attachments
    .filter((a) => /^(application\/pdf|image\/(png|jpeg)|text\/csv)$/.test(a.mimeType) && a.disposition !== 'inline')
    .map((a) => new File([a.content as ArrayBuffer], a.filename ?? 'attachment', { type: a.mimeType }));
}

const lines = (text: string): string => text.replace(/^\ufeff/, '');

export const sourceOfText = (text: string, name: string): Source => textSource(lines(text), name);
