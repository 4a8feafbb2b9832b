// Parts of the page that are not needed at first: fetched when they are, drawn when they are there.

import type { Desk } from './desk';

export interface Later<T> {
  /** The part, or undefined while it is on its way; the desk is drawn again when it has come. */
  get(d: Desk): T | undefined;
  /** Fetches it ahead of use. */
  fetch(): Promise<T>;
}

export function later<T>(load: () => Promise<T>): Later<T> {
  let part: T | undefined;
  let coming: Promise<T> | undefined;
  const fetch = () => (coming ??= load().then((loaded) => (part = loaded)));
  return {
    fetch,
    get(d) {
      if (!part) void fetch().then(() => d.draw());
      return part;
    },
  };
}
