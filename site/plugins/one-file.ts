// Turns a build into one HTML file that needs nothing beside it: script and style inside, allowed by their hashes, rules and engine within.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const packed = (file: URL): string => gzipSync(readFileSync(file), { level: 9 }).toString('base64');
const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** `virtual:held`: the engine and every bundle of rules, gzipped, in base64. */
export function held(engine: URL, rules: URL): Plugin {
  const id = 'virtual:held';
  return {
    name: 'wearline-held',
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    load(wanted) {
      if (wanted !== `\0${id}`) return undefined;
      const files = readdirSync(rules).map((name) => [name, packed(new URL(name, rules))]);
      return `export const engine = ${JSON.stringify(packed(engine))};\nexport const rules = ${JSON.stringify(Object.fromEntries(files))};`;
    },
  };
}

export function oneFile(name: string): Plugin {
  return {
    name: 'wearline-one-file',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const all = Object.values(bundle);
        const page = all.find((f) => f.fileName.endsWith('.html'));
        const script = all.find((f) => f.type === 'chunk');
        if (page?.type !== 'asset' || script?.type !== 'chunk') throw new Error('one-file: no page or no script');
        const code = script.code.replace(/<\/(script)/gi, '<\\/$1').replace(/<!--/g, '<\\!--');
        const css = all
          .flatMap((f) => (f.type === 'asset' && f.fileName.endsWith('.css') ? [String(f.source)] : []))
          .join('\n');
        const html = String(page.source)
          .replace(/\s*<link [^>]*rel="(?:stylesheet|manifest|icon|modulepreload)"[^>]*>/g, '')
          .replace(/\s*<script [^>]*src="[^"]*"[^>]*><\/script>/, '')
          .replace("script-src 'self'", () => `script-src ${hash(code)}`)
          .replace("style-src 'self'", () => `style-src ${hash(css)}`)
          .replace("connect-src 'self'", "connect-src 'none'")
          .replace('</head>', () => `<style>${css}</style>\n  </head>`)
          .replace('</body>', () => `<script type="module">${code}</script>\n  </body>`);
        for (const f of all) delete bundle[f.fileName];
        this.emitFile({ type: 'asset', fileName: name, source: html });
      },
    },
  };
}
