// The notices of every library in the page: what the engine is compiled from, what reads PDFs and pictures, and every package whose
// modules the bundle holds. notices.txt beside the page; in the single file a text of its own at the end.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

interface Notice {
  name: string;
  license: string;
  text: string;
}

/** The license under which most of these are, as the Open Source Initiative prints it. */
const mit = (holder: string): string => `Copyright ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

/** Compiled into the engine's modules. */
const inEngine: Notice[] = [
  { name: 'JSON for Modern C++', license: 'MIT', text: mit('2013-2022 Niels Lohmann') },
  { name: 'date', license: 'MIT', text: mit('2015-2021 Howard Hinnant and contributors') },
  { name: 'Emscripten', license: 'MIT', text: mit('2010-2022 Emscripten authors, see its AUTHORS file') },
  { name: 'musl', license: 'MIT', text: mit('2005-2020 Rich Felker, et al.') },
  {
    name: 'libc++ and compiler-rt',
    license: 'MIT or NCSA',
    text: mit('2009-2019 by the contributors listed in CREDITS.TXT of LLVM'),
  },
];
/** Copied beside the page by scripts/copy-readers.mjs, or built into its service worker. */
const beside = [
  'workbox-core',
  'workbox-precaching',
  'workbox-routing',
  'workbox-strategies',
  'pdfjs-dist',
  'tesseract.js',
  'tesseract.js-core',
  '@tesseract.js-data/eng',
  '@tesseract.js-data/spa',
];

/** The folder of the package a module belongs to, if it belongs to one. */
const packageOf = (id: string): string | undefined => /^\0?(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(id)?.[1];

function noticeOf(folder: string): Notice {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
    string,
    string
  >;
  const file = readdirSync(folder).find((f) => /^(licen[cs]e|copying)/i.test(f));
  if (!license && !file) throw new Error(`${name}: no license`);
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : `${license}; no text comes with the package.`;
  return { name: `${name} ${version}`, license: license ?? '', text };
}

/** Each text once, under all it belongs to. */
function written(notices: Notice[]): string {
  const line = '-'.repeat(72);
  const byText = new Map<string, Notice[]>();
  for (const one of notices) {
    const key = one.text.replace(/\s+/g, ' ');
    byText.set(key, [...(byText.get(key) ?? []), one]);
  }
  const parts = [...byText.values()].map(
    (of) => `${of.map((n) => `${n.name} (${n.license})`).join('\n')}\n\n${of[0]!.text}\n`,
  );
  return ['The libraries inside Wearline, with their licenses. Wearline itself: MIT.\n', ...parts].join(
    `\n${line}\n\n`,
  );
}

export const noticesFile = 'notices.txt';

export function notices(): Plugin {
  const require = createRequire(import.meta.url);
  return {
    name: 'wearline-notices',
    generateBundle() {
      const folders = new Set(beside.map((name) => dirname(require.resolve(`${name}/package.json`))));
      for (const id of this.getModuleIds()) {
        const folder = packageOf(id);
        if (folder && existsSync(join(folder, 'package.json'))) folders.add(folder);
      }
      const packages = [...folders].map(noticeOf).sort((a, b) => a.name.localeCompare(b.name));
      this.emitFile({ type: 'asset', fileName: noticesFile, source: written([...inEngine, ...packages]) });
    },
  };
}
