// Files of text: plain text and tables as they are, e-mail by its parts, web pages by their words.

import PostalMime from 'postal-mime';
import { forInertDocument } from '../../../app/trusted';
import { textSource, type Source } from './source';
import { flatText } from './web-page';

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

/** The words of a web page in lines; the cells of a row of a table are parted by tabs. Nothing in it is run or fetched. */
export function textOfHtml(html: string): string {
  // What is left holds no element: the browser only spells out the character references.
  const flat = flatText(html).replaceAll('<', '&lt;');
  return new DOMParser().parseFromString(forInertDocument(`<pre>\n${flat}`), 'text/html').body.textContent ?? '';
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
