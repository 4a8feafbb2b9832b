// Turns a build into one HTML file that needs nothing beside it: script and style inside, allowed by their hashes, rules and engine within.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { gzipAsync } from '@gfx/zopfli';
import type { Plugin } from 'vite';
import { noticesFile } from './notices';
import { trusted } from './policy';

/** Gzip, as small as it gets: a twentieth smaller than zlib makes it. More rounds gain little. */
const gzipped = async (content: string | Uint8Array): Promise<Buffer> =>
  Buffer.from(await gzipAsync(Buffer.from(content), { numiterations: 1 }));
const packed = async (content: string | Uint8Array): Promise<string> => (await gzipped(content)).toString('base64');
const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

type Bundle = Record<string, unknown>;

/**
 * Every bundle by its file name. Where the bundle of a language repeats a shared file to hold both languages, that file stands once,
 * in the shared bundle: in one file nothing is saved by leaving the other language out. So does what the bundles of several places
 * hold, the federal rules.
 */
function bundlesOf(rules: URL): Record<string, Bundle> {
  const all = new Map(
    readdirSync(rules).map((name) => [name, JSON.parse(readFileSync(new URL(name, rules), 'utf8')) as Bundle]),
  );
  const shared = [...all].find(([name]) => name.startsWith('shared.'))?.[1];
  if (!shared) throw new Error('one-file: no shared rules');
  // The bundle of a language goes first: what it holds of a shared file is the whole of it.
  const wholest = [...all].sort(([a], [b]) => Number(b.startsWith('words-')) - Number(a.startsWith('words-')));
  const held = new Map<string, Bundle[]>();
  for (const [, bundle] of wholest)
    for (const file of Object.keys(bundle)) held.set(file, [...(held.get(file) ?? []), bundle]);
  for (const [file, bundles] of held) {
    if (bundles.length === 1) continue;
    shared[file] = bundles[0]![file];
    for (const bundle of bundles) if (bundle !== shared) delete bundle[file];
  }
  return Object.fromEntries(all);
}

/** `virtual:held`: the engine, and every bundle of rules by its name in one JSON object, each gzipped, in base64. */
export function held(engine: URL, rules: URL): Plugin {
  const id = 'virtual:held';
  return {
    name: 'wearline-held',
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    async load(wanted) {
      if (wanted !== `\0${id}`) return undefined;
      // Together, what the bundles have in common is packed once.
      const all = JSON.stringify(bundlesOf(rules));
      return `export const engine = ${JSON.stringify(await packed(readFileSync(engine)))};\nexport const rules = ${JSON.stringify(await packed(all))};`;
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
export async function heldPdf(): Promise<HeldPdf> {
  const id = 'virtual:held-pdf';
  const require = createRequire(import.meta.url);
  const script = (file: string, part: string): string =>
    readFileSync(require.resolve(`pdfjs-dist/legacy/build/${file}`), 'utf8') + ready(part);
  const library = script('pdf.min.mjs', 'pdf');
  const worker = script('pdf.worker.min.mjs', 'pdf-worker');
  const parts = await Promise.all([library, worker].map(packed));
  return {
    name: 'wearline-held-pdf',
    hashes: [hash(library), hash(worker)],
    packed: parts,
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    load: (wanted) => (wanted === `\0${id}` ? `export const [library, worker] = ${JSON.stringify(parts)};` : undefined),
  };
}

/**
 * Digits of base 85: four bytes in five characters, where base64 takes five and a third. None of them ends a script or means anything
 * to HTML inside one.
 */
const digits = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!#$%()*+,-./:;=?@[]^_{|';

function inBase85(bytes: Uint8Array): string {
  const whole = Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4)]);
  const groups: string[] = [];
  for (let at = 0; at < whole.length; at += 4) {
    let group = '';
    for (let left = whole.readUInt32BE(at), n = 0; n < 5; n++, left = Math.floor(left / 85))
      group = digits[left % 85] + group;
    groups.push(group);
  }
  return groups.join('');
}

/** Unpacks the page's script and runs it. It is the one script that stands in the file as such. */
const starter = `const held = document.getElementById('held');
const packed = held.textContent;
const value = new Uint8Array(128);
[...${JSON.stringify(digits)}].forEach((digit, i) => (value[digit.charCodeAt(0)] = i));
const bytes = new DataView(new ArrayBuffer((packed.length / 5) * 4));
for (let at = 0; at < packed.length; at += 5) {
  let group = 0;
  for (let n = 0; n < 5; n++) group = group * 85 + value[packed.charCodeAt(at + n)];
  bytes.setUint32((at / 5) * 4, group);
}
const gzip = bytes.buffer.slice(0, Number(held.dataset.bytes));
const stream = new Blob([gzip]).stream().pipeThrough(new DecompressionStream('gzip'));
const script = document.createElement('script');
script.type = 'module';
script.textContent = await new Response(stream).text();
document.head.append(script);`;

/** The whole page as one text; the policy lets run its starter, its script, and the scripts with these hashes. */
async function written(page: string, script: string, css: string, hashes: string[], notices: string): Promise<string> {
  const [gzip, notes] = [await gzipped(script), await packed(notices)];
  return page
    .replace(/\s*<link [^>]*rel="(?:stylesheet|manifest|icon|modulepreload)"[^>]*>/g, '')
    .replace(/\s*<script [^>]*src="[^"]*"[^>]*><\/script>/, '')
    .replace("script-src 'self'", () => ['script-src', hash(starter), hash(script), ...hashes].join(' '))
    .replace("style-src 'self'", () => `style-src ${hash(css)}`)
    .replace(`; ${trusted}`, '')
    .replace("connect-src 'self'", "connect-src 'none'")
    .replace('</head>', () => `<style>${css}</style>\n  </head>`)
    .replace(
      '</body>',
      () =>
        `<script type="application/gzip" id="notices">${notes}</script>\n  <script type="application/gzip" id="held" data-bytes="${gzip.length}">${inBase85(gzip)}</script>\n  <script type="module">${starter}</script>\n  </body>`,
    );
}

/** What reads PDFs goes in if the file then stays within its limit; else it is left out, and the page says that PDFs cannot be read. */
export function oneFile(name: string, pdf: HeldPdf): Plugin {
  return {
    name: 'wearline-one-file',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      async handler(_, bundle) {
        const all = Object.values(bundle);
        const page = all.find((f) => f.fileName.endsWith('.html'));
        const script = all.find((f) => f.type === 'chunk');
        if (page?.type !== 'asset' || script?.type !== 'chunk') throw new Error('one-file: no page or no script');
        const css = all
          .flatMap((f) => (f.type === 'asset' && f.fileName.endsWith('.css') ? [String(f.source)] : []))
          .join('\n');
        const file = bundle[noticesFile];
        const notices = file?.type === 'asset' ? String(file.source) : '';
        let source = await written(String(page.source), script.code, css, pdf.hashes, notices);
        if (Buffer.byteLength(source) > largest) {
          this.warn(`${name} is too large with what reads PDFs; it goes without.`);
          const without = pdf.packed.reduce((code, part) => code.replace(part, ''), script.code);
          source = await written(String(page.source), without, css, [], notices);
        }
        for (const f of all) delete bundle[f.fileName];
        this.emitFile({ type: 'asset', fileName: name, source });
      },
    },
  };
}
