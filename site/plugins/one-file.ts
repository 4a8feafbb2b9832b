// Turns a build into one HTML file that needs nothing beside it: script and style inside, allowed by their hashes, rules and engine within.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const packed = (content: string | Uint8Array): string => gzipSync(content, { level: 9 }).toString('base64');
const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** `virtual:held`: the engine, and every bundle of rules by its name in one JSON object, each gzipped, in base64. */
export function held(engine: URL, rules: URL): Plugin {
  const id = 'virtual:held';
  return {
    name: 'wearline-held',
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    load(wanted) {
      if (wanted !== `\0${id}`) return undefined;
      // Together, what the bundles have in common is packed once.
      const texts = readdirSync(rules).map((name) => [name, readFileSync(new URL(name, rules), 'utf8')]);
      const all = JSON.stringify(Object.fromEntries(texts));
      return `export const engine = ${JSON.stringify(packed(readFileSync(engine)))};\nexport const rules = ${JSON.stringify(packed(all))};`;
    },
  };
}

/** The largest the file may be, in bytes. */
const largest = 2_000_000;

/** Where the scripts of `heldPdf` say that they have run. (`Event` alone is another thing within them.) */
const ready = (part: string): string => `\n;globalThis.dispatchEvent(new globalThis.Event('held-${part}'));`;

interface HeldPdf extends Plugin {
  /** Of its scripts, for the policy. */
  hashes: string[];
  packed: string[];
}

/**
 * `virtual:held-pdf`: pdfjs-dist and its worker as scripts, gzipped, in base64. A script made from one of them may run: its hash stands
 * in the policy. Both leave what they bring in globalThis; the library then does without a worker.
 */
export function heldPdf(): HeldPdf {
  const id = 'virtual:held-pdf';
  const require = createRequire(import.meta.url);
  const script = (file: string, part: string): string =>
    readFileSync(require.resolve(`pdfjs-dist/legacy/build/${file}`), 'utf8') + ready(part);
  const library = script('pdf.min.mjs', 'pdf');
  const worker = script('pdf.worker.min.mjs', 'pdf-worker');
  const parts = [library, worker].map(packed);
  return {
    name: 'wearline-held-pdf',
    hashes: [hash(library), hash(worker)],
    packed: parts,
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    load: (wanted) => (wanted === `\0${id}` ? `export const [library, worker] = ${JSON.stringify(parts)};` : undefined),
  };
}

/** Unpacks the page's script and runs it. It is the one script that stands in the file as such. */
const starter = `const packed = atob(document.getElementById('held').textContent);
const bytes = new Uint8Array(packed.length);
for (let i = 0; i < packed.length; i++) bytes[i] = packed.charCodeAt(i);
const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
const script = document.createElement('script');
script.type = 'module';
script.textContent = await new Response(stream).text();
document.head.append(script);`;

/** The whole page as one text; the policy lets run its starter, its script, and the scripts with these hashes. */
function written(page: string, script: string, css: string, hashes: string[]): string {
  return page
    .replace(/\s*<link [^>]*rel="(?:stylesheet|manifest|icon|modulepreload)"[^>]*>/g, '')
    .replace(/\s*<script [^>]*src="[^"]*"[^>]*><\/script>/, '')
    .replace("script-src 'self'", () => ['script-src', hash(starter), hash(script), ...hashes].join(' '))
    .replace("style-src 'self'", () => `style-src ${hash(css)}`)
    .replace("connect-src 'self'", "connect-src 'none'")
    .replace('</head>', () => `<style>${css}</style>\n  </head>`)
    .replace(
      '</body>',
      () =>
        `<script type="application/gzip" id="held">${packed(script)}</script>\n  <script type="module">${starter}</script>\n  </body>`,
    );
}

/** What reads PDFs goes in if the file then stays within its limit; else it is left out, and the page says that PDFs cannot be read. */
export function oneFile(name: string, pdf: HeldPdf): Plugin {
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
        const css = all
          .flatMap((f) => (f.type === 'asset' && f.fileName.endsWith('.css') ? [String(f.source)] : []))
          .join('\n');
        let source = written(String(page.source), script.code, css, pdf.hashes);
        if (Buffer.byteLength(source) > largest) {
          this.warn(`${name} is too large with what reads PDFs; it goes without.`);
          const without = pdf.packed.reduce((code, part) => code.replace(part, ''), script.code);
          source = written(String(page.source), without, css, []);
        }
        for (const f of all) delete bundle[f.fileName];
        this.emitFile({ type: 'asset', fileName: name, source });
      },
    },
  };
}
