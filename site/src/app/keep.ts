// Keeping the cases on this device, only when asked: in the browser's own store, with their photos and papers.

import { del, get, set } from 'idb-keyval';
import type { CaseFile } from '../case/case';
import type { Exhibit } from '../case/exhibit';
import type { LetterEdits } from '../case/letter';

export interface Kept {
  wearline: 1;
  front: number;
  sheets: { file: string; subject: CaseFile; exhibits: Exhibit[]; letter?: LetterEdits }[];
}

const place = 'wearline';

/** What was kept, or undefined. A store that cannot be read counts as empty. */
export async function kept(): Promise<Kept | undefined> {
  try {
    return await get<Kept>(place);
  } catch {
    return undefined;
  }
}

/** True if it could be written. */
export async function keep(all: Kept): Promise<boolean> {
  try {
    await set(place, all);
    return true;
  } catch {
    return false;
  }
}

export const forget = (): Promise<void> => del(place).catch(() => undefined);
