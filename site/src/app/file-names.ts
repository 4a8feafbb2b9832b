// Names of files that are taken along. Two cases that lie open never give the same name, so that neither takes the other's place.

import type { Sheet } from './sheet';

const slug = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);

/** What a case would be called if it were alone: the name of its file, else its title, else its place. */
function own(s: Sheet): string {
  const { title, jurisdiction } = s.history.now;
  const file = slug(s.file.replace(/\.[a-z0-9]{1,5}$/i, ''));
  return file || slug(title ?? '') || slug(`deposit ${jurisdiction ?? ''}`);
}

const isNamed = (s: Sheet): boolean => s.file !== '' || slug(s.history.now.title ?? '') !== '';

/** The name of a case's files without ending. A case without a name of its own, or with that of another, gets four signs of its id. */
export function baseName(s: Sheet, all: readonly Sheet[]): string {
  const name = own(s);
  const alike = all.some((other) => other !== s && own(other) === name);
  return isNamed(s) && !alike ? name : `${name}-${s.id.slice(0, 4)}`;
}
