// Puts the schemas of the case file and of the engine's answers beside the page, under schema/: for other programs, not for the page.

import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

/** Those of rules files stay with the rules. */
const published = /^(case|case-1|common|assessment|letter|reading|recognition|catalogue)\.schema\.json$/;

export function schemas(folder: URL): Plugin {
  return {
    name: 'wearline-schemas',
    apply: 'build',
    generateBundle() {
      for (const file of readdirSync(folder).filter((f) => published.test(f)))
        this.emitFile({ type: 'asset', fileName: `schema/${file}`, source: readFileSync(new URL(file, folder)) });
    },
  };
}
