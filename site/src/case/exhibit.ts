// A photo or paper that a person attached, and what its date tells.

import type { CaseFile } from './case';
import { isDay } from './day';

export type Shows = 'move-in' | 'move-out' | 'receipt' | 'statement' | 'other';
export const showings: Shows[] = ['move-in', 'move-out', 'receipt', 'statement', 'other'];

/** Pictures a browser draws without running anything in them, and papers. Not SVG, not web pages: both can hold scripts and links. */
export const isKindOfExhibit = (type: string): boolean =>
  /^(?:image\/(?:png|jpeg|gif|webp|avif|bmp|heic|heif|tiff)|application\/pdf)$/.test(type);

export interface Exhibit {
  id: number;
  name: string;
  /** MIME type of the file. */
  type: string;
  data: Blob;
  /** Day it was taken, YYYY-MM-DD, or empty. */
  taken: string;
  /** Where that day comes from: written in the photo by the camera, or only the file's own date. */
  dated: 'camera' | 'file' | '';
  /** Time of that day by the camera's clock, HH:MM, where it is known. */
  time?: string;
  /** Id of the charge it belongs to; empty: the whole case. */
  line: string;
  /** Id of the thing of the walk-through that it shows. */
  thing?: string;
  shows: Shows;
  note: string;
}

export type Warning = 'before-move-out' | 'after-next-tenancy' | 'after-move-in' | 'no-date';

const eventOn = (c: CaseFile, what: string): string => c.events?.find((e) => e.kind === what)?.date ?? '';
const month = 31 * 86_400_000;

/** What is doubtful about an exhibit's date, given what it is meant to show. */
export function warningOf(x: Exhibit, c: CaseFile): Warning | null {
  if (x.shows !== 'move-in' && x.shows !== 'move-out') return null;
  if (!x.taken) return 'no-date';
  const left = c.tenancy?.['possessionReturned'] ?? c.tenancy?.['ended'];
  const began = c.tenancy?.['began'];
  const next = eventOn(c, 'new-tenant-in') || String(c.lines.find((l) => l['reletOn'])?.['reletOn'] ?? '');
  const at = (day: string) => new Date(`${day}T12:00:00Z`).getTime();
  if (x.shows === 'move-out' && isDay(left) && at(x.taken) < at(left) - month) return 'before-move-out';
  if (x.shows === 'move-out' && isDay(next) && x.taken > next) return 'after-next-tenancy';
  if (x.shows === 'move-in' && isDay(began) && at(x.taken) > at(began) + month) return 'after-move-in';
  return null;
}
