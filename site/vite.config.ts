import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { examples } from './plugins/examples';
import { htmlWords } from './plugins/html-words';
import { offline } from './plugins/offline';
import { held, oneFile } from './plugins/one-file';

const here = (path: string): URL => new URL(path, import.meta.url);
const words = here('../engine/rules/wording/en/page.json');

/** `vite build` makes the page, `vite build --mode one-file` adds dist/wearline.html, the whole page in one file. */
export default defineConfig(({ mode }) => {
  const single = mode === 'one-file';
  return {
    base: './',
    json: { stringify: true },
    define: { __ONE_FILE__: JSON.stringify(single) },
    publicDir: single ? false : 'public',
    resolve: {
      alias: single ? [{ find: /^\.\/files$/, replacement: fileURLToPath(here('./src/app/files-held.ts')) }] : [],
    },
    build: {
      target: 'es2021',
      modulePreload: { polyfill: false },
      assetsInlineLimit: 0,
      emptyOutDir: !single,
      cssCodeSplit: !single,
      rollupOptions: single ? { output: { inlineDynamicImports: true } } : {},
    },
    server: { fs: { allow: ['..'] } },
    plugins: [
      htmlWords(words),
      examples(here('../examples/')),
      ...(single
        ? [
            held(here('./src/generated/engine/wearline.wasm'), here('./public/generated/rules/')),
            oneFile('wearline.html'),
          ]
        : [offline(words)]),
    ],
  };
});
