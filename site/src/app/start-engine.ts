// Fetches the WebAssembly module and hands it over wrapped.

import createEngine from '../generated/engine/wearline.mjs';
import { type Engine, wrap } from './engine';
import { engineBytes } from './files';

export const startEngine = async (): Promise<Engine> => wrap(await createEngine({ wasmBinary: await engineBytes() }));
