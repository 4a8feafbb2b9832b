// A case as a file: the case itself, and under "page" what the page keeps with it: which case it is, when it was changed, what was done
// with its letters, its photos and papers. The engine leaves "page" unread.

import type { CaseFile } from './case';
import { asClient, type Client, isNobody } from './client';
import { type Exhibit, isKindOfExhibit, type Shows, showings } from './exhibit';
import { type LetterEdits, noEdits } from './letter';
import { asCase, asLetterEdits, longestText } from './shape';

/** What a file says of a case beside what the engine reads. */
export interface Saved {
  subject: CaseFile;
  /** Empty in a file that was not saved here. */
  id: string;
  changed: string;
  /** Which of the versions of the case it is; empty in a file that was not saved here. */
  version: string;
  letter: LetterEdits;
  client: Client;
  exhibits: Exhibit[];
  /** JSON Pointers of what did not fit and was left out. */
  dropped: string[];
  /** True where it came out of a report, which leaves out what is private. */
  fromReport: boolean;
}

/** Bytes of photos and papers that go into one file; it is opened as one text. */
export const mostAttached = 40 * 1024 * 1024;

const attachedBytes = (exhibits: readonly Exhibit[]): number => exhibits.reduce((sum, x) => sum + x.data.size, 0);
/** True if the photos and papers fit into a file. */
export const fitsInFile = (exhibits: readonly Exhibit[]): boolean => attachedBytes(exhibits) <= mostAttached;

async function inBase64(data: Blob): Promise<string> {
  const bytes = new Uint8Array(await data.arrayBuffer());
  let signs = '';
  for (let at = 0; at < bytes.length; at += 0x8000) signs += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(signs);
}

/** JSON that stays data wherever it is put, be it into a web page. */
export const inert = (data: unknown, indent?: number): string =>
  JSON.stringify(data, null, indent)
    .replace(/</g, '\\u003c')
    .replace(/[\u2028\u2029]/g, (c) => (c === '\u2028' ? '\\u2028' : '\\u2029'));

/** The text of a file with all of a case. Photos and papers too large for one file go without their pictures. */
export async function toFile(s: Omit<Saved, 'dropped' | 'fromReport'>): Promise<string> {
  const whole = fitsInFile(s.exhibits);
  const exhibits = await Promise.all(
    s.exhibits.map(async ({ data, ...x }) => (whole ? { ...x, data: await inBase64(data) } : x)),
  );
  const page = {
    id: s.id,
    changed: s.changed,
    version: s.version,
    ...(s.letter !== noEdits && { letter: s.letter }),
    ...(!isNobody(s.client) && { client: s.client }),
    ...(exhibits.length && { exhibits }),
  };
  return inert({ ...s.subject, page }, 2) + '\n';
}

/** The case as it may be handed out within a report: without private notes, without what was seen in a walk-through (it may speak against
 *  the one who walked), and without what the page keeps with it. */
export function toHandOut(c: CaseFile): CaseFile {
  const lines = c.lines.map(({ note: _, ...line }) => line);
  const { page: _, walkThrough: _walk, ...rest } = c as CaseFile & { page?: unknown };
  return { ...rest, lines } as CaseFile;
}

type Plain = Record<string, unknown>;
const isPlain = (v: unknown): v is Plain => typeof v === 'object' && v !== null && !Array.isArray(v);
const text = (v: unknown, most = longestText): string => (typeof v === 'string' ? v.slice(0, most) : '');

/** A photo or paper as `data` has it, its bytes given; undefined where it is none. */
export function asExhibit(data: unknown, bytes: Blob | undefined): Exhibit | undefined {
  if (!isPlain(data) || !bytes || !isKindOfExhibit(text(data['type']))) return undefined;
  const dated = text(data['dated']);
  const shows = text(data['shows']) as Shows;
  return {
    id: Number.isSafeInteger(data['id']) ? (data['id'] as number) : 0,
    name: text(data['name'], 300),
    type: text(data['type']),
    data: bytes,
    taken: /^\d{4}-\d{2}-\d{2}$/.test(text(data['taken'])) ? text(data['taken']) : '',
    dated: dated === 'camera' || dated === 'file' ? dated : '',
    line: text(data['line'], 300),
    ...(/^\d{2}:\d{2}$/.test(text(data['time'])) && { time: text(data['time']) }),
    ...(text(data['thing'], 300) && { thing: text(data['thing'], 300) }),
    shows: showings.includes(shows) ? shows : 'other',
    note: text(data['note']),
  };
}

function blobOf(data: unknown): Blob | undefined {
  if (!isPlain(data) || typeof data['data'] !== 'string') return undefined;
  try {
    const bytes = Uint8Array.from(atob(data['data']), (c) => c.charCodeAt(0));
    return new Blob([bytes], { type: text(data['type']) });
  } catch {
    return undefined;
  }
}

/** Each with a number of its own. */
export const numbered = (exhibits: Exhibit[]): Exhibit[] => {
  const used = new Set(exhibits.map((x) => x.id));
  return used.size === exhibits.length && !used.has(0) ? exhibits : exhibits.map((x, i) => ({ ...x, id: i + 1 }));
};

/** What a file holds, or undefined where it is no case. */
export function fromFile(data: unknown, fromReport = false): Saved | undefined {
  const page = isPlain(data) && isPlain(data['page']) ? data['page'] : {};
  const { page: _, ...rest } = isPlain(data) ? data : {};
  const shaped = asCase(rest);
  if (!shaped) return undefined;
  const attached = Array.isArray(page['exhibits']) ? page['exhibits'].slice(0, 500) : [];
  const exhibits = attached.map((x) => asExhibit(x, blobOf(x)));
  const lost = exhibits.flatMap((x, i) => (x ? [] : [`/page/exhibits/${i}`]));
  return {
    subject: shaped.subject,
    id: /^[0-9a-f]{32}$/.test(text(page['id'])) ? text(page['id']) : '',
    changed: text(page['changed'], 40),
    version: text(page['version'], 40),
    letter: page['letter'] === undefined ? noEdits : asLetterEdits(page['letter']),
    client: asClient(page['client']),
    exhibits: numbered(exhibits.filter((x): x is Exhibit => x !== undefined)),
    dropped: [...shaped.dropped, ...lost],
    fromReport,
  };
}

const opening = '<script type="application/json" id="wearline-case">';

/** The case within a report, as text; undefined where it is no report. Only looks for two fixed texts, so its time is that of the search. */
export function caseInReport(html: string): string | undefined {
  const begin = html.indexOf(opening);
  if (begin < 0) return undefined;
  const from = begin + opening.length;
  const end = html.indexOf('</script>', from);
  return end < 0 ? undefined : html.slice(from, end);
}
