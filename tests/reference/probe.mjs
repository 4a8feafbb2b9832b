// Finds the native program that answers questions about days (tests/engine/probe).
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/// The path given, or that in WEARLINE_PROBE, or the one in a build folder of the project.
export function probePath(given) {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const found = [given, process.env.WEARLINE_PROBE, `${root}build/native/tests/engine/wearline_probe`, `${root}build/tests/engine/wearline_probe`]
    .filter(Boolean).find((path) => existsSync(path));
  if (!found) throw new Error('wearline_probe is not built: cmake --build <build folder> --target wearline_probe');
  return found;
}
