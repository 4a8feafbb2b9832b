// Parts of the page that are not needed at first: fetched when they are, drawn when they are there.

import { say } from '../say/wording';
import type { Desk } from './desk';

const pause = 10_000;

export interface Later<T> {
  /** The part, or undefined while it is on its way; the desk is drawn again when it has come. */
  get(d: Desk): T | undefined;
  /** Fetches it ahead of use. */
  fetch(): Promise<T>;
}

export function later<T>(load: () => Promise<T>): Later<T> {
  let part: T | undefined;
  let coming: Promise<T> | undefined;
  /** When it may be tried again; until then a part that could not be fetched is not asked for at every drawing. */
  let again = 0;
  const fetch = (): Promise<T> =>
    (coming ??= load().then(
      (loaded) => (part = loaded),
      (e: unknown) => {
        coming = undefined;
        again = Date.now() + pause;
        throw e;
      },
    ));
  return {
    fetch,
    get(d) {
      if (part || coming || Date.now() < again) return part;
      void fetch().then(
        () => d.draw(),
        () => d.tell(say('page.notice.partNotLoaded')),
      );
      return part;
    },
  };
}
