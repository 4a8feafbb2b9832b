// Where everything is one file there is no reader of pictures: its data alone is larger than the file may be. Takes the place of
// picture-library.ts in that build.

import type { Tidy } from './picture-library';

export type { Tidy };

export const canReadPictures = false;

export const startReader = (): Promise<Tidy> => Promise.reject(new Error('not in the one file'));
