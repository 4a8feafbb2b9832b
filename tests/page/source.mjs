// The page's own modules in Node: one is bundled with what it imports, by the bundler the page is built with, and imported.
import { webcrypto } from 'node:crypto';
import { createRequire } from 'node:module';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

// Node 18 does not have it under this name.
globalThis.crypto ??= webcrypto;

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../site');
const require = createRequire(path.join(SITE, 'node_modules/vite/package.json'));
const esbuild = require('esbuild');

/** `inSource`: path under site/src, such as 'case/questions.ts'. */
export async function source(inSource) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-page-'));
  try {
    const outfile = path.join(folder, 'module.mjs');
    await esbuild.build({
      entryPoints: [path.join(SITE, 'src', inSource)], outfile, bundle: true, format: 'esm', platform: 'browser',
      define: { __ONE_FILE__: 'false' }, loader: { '.css': 'empty' }, logLevel: 'silent',
    });
    return await import(pathToFileURL(outfile));
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}
