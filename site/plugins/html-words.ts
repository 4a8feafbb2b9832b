// Fills %page.key% in index.html from the wording catalogue and, in builds, adds the content security policy.

import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { policy } from './policy';

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');

export function htmlWords(catalogue: URL): Plugin {
  let building = false;
  return {
    name: 'wearline-html-words',
    configResolved(config) {
      building = config.command === 'build';
    },
    transformIndexHtml: {
      order: 'pre',
      handler(page) {
        const words = JSON.parse(readFileSync(catalogue, 'utf8')) as Record<string, string>;
        const filled = page.replace(/%(page\.[\w.]+)%/g, (_, key: string) => {
          if (!(key in words)) throw new Error(`index.html: no sentence for ${key}`);
          return escaped(words[key]!);
        });
        return building
          ? filled.replace(
              '<meta charset="utf-8" />',
              `$&\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
            )
          : filled;
      },
    },
  };
}
