// The browser's own store: the cases with their photos and papers, only when asked. What comes out of it is looked at as closely as a file.

import { del, get, update } from 'idb-keyval';
import type { CaseFile } from '../case/case';
import { asClient, type Client } from '../case/client';
import type { Exhibit } from '../case/exhibit';
import { type LetterEdits, noEdits } from '../case/letter';
import { asExhibit, numbered } from '../case/saved';
import { asCase, asLetterEdits } from '../case/shape';

export interface KeptSheet {
  id: string;
  changed: string;
  version: string;
  file: string;
  subject: CaseFile;
  exhibits: Exhibit[];
  letter: LetterEdits;
  client: Client;
  /** It has changes that are in no file. */
  unsaved: boolean;
}

export interface Kept {
  wearline: 2;
  /** One more with each writing, so that a window sees that another wrote. */
  revision: number;
  front: number;
  sheets: KeptSheet[];
}

const place = 'wearline';

type Plain = Record<string, unknown>;
const isPlain = (v: unknown): v is Plain => typeof v === 'object' && v !== null && !Array.isArray(v);

function asSheet(data: unknown): KeptSheet | undefined {
  if (!isPlain(data)) return undefined;
  const shaped = asCase(data['subject']);
  if (!shaped) return undefined;
  const attached = Array.isArray(data['exhibits']) ? data['exhibits'] : [];
  const exhibits = attached.map((x: unknown) => {
    const bytes = isPlain(x) && x['data'] instanceof Blob ? x['data'] : undefined;
    return asExhibit(x, bytes);
  });
  const text = (name: string): string => (typeof data[name] === 'string' ? data[name] : '');
  return {
    id: /^[0-9a-f]{32}$/.test(text('id')) ? text('id') : '',
    changed: text('changed').slice(0, 40),
    version: text('version').slice(0, 40),
    file: text('file').slice(0, 300),
    subject: shaped.subject,
    exhibits: numbered(exhibits.filter((x): x is Exhibit => x !== undefined)),
    letter: data['letter'] === undefined ? noEdits : asLetterEdits(data['letter']),
    client: asClient(data['client']),
    unsaved: data['unsaved'] === true || shaped.dropped.length > 0,
  };
}

/** What was kept: nothing, a store of a version that is not known here, or cases; `damaged` counts those that could not be read. */
export type Found = 'nothing' | 'unknown' | { kept: Kept; damaged: number };

export function asKept(data: unknown): Found {
  if (data === undefined || data === null) return 'nothing';
  if (isPlain(data) && typeof data['wearline'] === 'number' && data['wearline'] > 2) return 'unknown';
  const given = isPlain(data) && Array.isArray(data['sheets']) ? data['sheets'] : undefined;
  if (!isPlain(data) || !given) return { kept: { wearline: 2, revision: 0, front: 0, sheets: [] }, damaged: 1 };
  const sheets = given.map(asSheet).filter((s): s is KeptSheet => s !== undefined);
  const whole = (v: unknown): number => (Number.isSafeInteger(v) && (v as number) >= 0 ? (v as number) : 0);
  const kept: Kept = {
    wearline: 2,
    revision: whole(data['revision']),
    front: Math.min(whole(data['front']), Math.max(0, sheets.length - 1)),
    sheets,
  };
  return { kept, damaged: given.length - sheets.length };
}

/** What was kept. A store that cannot be opened counts as empty. */
export async function kept(): Promise<Found> {
  try {
    return asKept(await get(place));
  } catch {
    return 'nothing';
  }
}

/** How writing ended: 'other': another window wrote meanwhile, or took everything out. */
export type Written = 'kept' | 'other' | 'full' | 'refused';

class Other extends Error {}

/** Writes all, if what is there is still of the revision `seen` (0: nothing may be there); reading and writing are one step. */
export async function keep(all: Kept, seen: number): Promise<Written> {
  try {
    await update(place, (there: unknown) => {
      const revision = isPlain(there) ? there['revision'] : undefined;
      if ((Number.isSafeInteger(revision) ? revision : 0) !== seen) throw new Other();
      return all;
    });
    return 'kept';
  } catch (e) {
    if (e instanceof Other) return 'other';
    return (e as { name?: string } | null)?.name === 'QuotaExceededError' ? 'full' : 'refused';
  }
}

export const forget = (): Promise<void> => del(place).catch(() => undefined);
