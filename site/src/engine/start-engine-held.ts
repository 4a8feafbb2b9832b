// Starts the engine that the single offline file holds. A file opened from a disk may have no worker; it runs in the page.

import createEngine from '../generated/engine/wearline.mjs';
import { callHere, type Engine, wrap } from './engine';
import { engineBytes } from './files-held';

export const startEngine = async (): Promise<Engine> =>
  wrap(callHere(await createEngine({ wasmBinary: await engineBytes() })));
