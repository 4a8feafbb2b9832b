// Makes the page installable and usable without a network: the manifest, and a service worker that keeps every file of the build.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import { headersFile } from './policy';

/** Large helpers that are fetched only on use, and what is for other programs; they are kept when they are used, not before. */
const onUse = /(?:^|\/)(?:pdf|tesseract|ocr)[^/]*(?:\/|\.|$)|^schema\//;

function filesOf(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const file = path.join(folder, name);
    return statSync(file).isDirectory() ? filesOf(file) : [file];
  });
}

/** A name that changes with what the file holds: it is taken as the browser has it and not fetched a second time. */
const namedByContent = /^(?:assets\/.*-[\w-]{8}|generated\/.*\.[0-9a-f]{10})\.\w+$/;

/** What to keep: every file, with a mark of its content where its name is none; the folder itself stands for index.html. */
function toKeep(dist: string): { url: string; revision: string | null }[] {
  return filesOf(dist)
    .map((file) => [path.relative(dist, file).split(path.sep).join('/'), file] as const)
    .filter(
      ([url]) => !onUse.test(url) && url !== 'service-worker.js' && url !== 'wearline.html' && url !== headersFile,
    )
    .map(([url, file]) => ({
      url,
      revision: namedByContent.test(url)
        ? null
        : createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 16),
    }))
    .sort((a, b) => a.url.localeCompare(b.url));
}

export function offline(catalogue: URL): Plugin {
  let dist = '';
  return {
    name: 'wearline-offline',
    apply: 'build',
    configResolved(config) {
      dist = path.resolve(config.root, config.build.outDir);
    },
    generateBundle() {
      const words = JSON.parse(readFileSync(catalogue, 'utf8')) as Record<string, string>;
      const manifest = {
        name: words['page.name'],
        short_name: words['page.name'],
        description: words['page.description'],
        lang: 'en',
        start_url: './',
        scope: './',
        display: 'standalone',
        background_color: '#fbfbfa',
        theme_color: '#fbfbfa',
        icons: [{ src: './icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      };
      this.emitFile({ type: 'asset', fileName: 'manifest.webmanifest', source: JSON.stringify(manifest) });
    },
    async closeBundle() {
      await build({
        configFile: false,
        logLevel: 'warn',
        publicDir: false,
        define: { __FILES__: JSON.stringify(toKeep(dist)), 'process.env.NODE_ENV': '"production"' },
        build: {
          outDir: dist,
          emptyOutDir: false,
          target: 'es2021',
          lib: {
            entry: fileURLToPath(new URL('../src/service-worker.ts', import.meta.url)),
            formats: ['iife'],
            name: 'worker',
            fileName: () => 'service-worker.js',
          },
        },
      });
    },
  };
}
