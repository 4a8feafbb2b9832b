// What a build made: the program, and the probes of tests/engine/probe. WEARLINE_BUILD names another build than build/native.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = path.join(path.dirname(fileURLToPath(import.meta.url)), '..');
export const BUILD = path.resolve(ROOT, process.env.WEARLINE_BUILD ?? 'build/native');

function made(file) {
  const found = path.join(BUILD, file);
  if (!fs.existsSync(found)) throw new Error(`${found} is not there: build it first (site/run --build-only, or cmake --build)`);
  return found;
}

/** The path of the program. Throws where it is not built. */
export const program = () => made('engine/cli/wearline');
/** The path of the probe tests/engine/probe/NAME_probe.cpp, or of probe.cpp where no name is given. Throws where it is not built. */
export const probe = (name) => made(`tests/engine/wearline_${name ? `${name}_` : ''}probe`);
