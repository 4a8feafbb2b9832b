import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { examples } from './plugins/examples';
import { htmlWords } from './plugins/html-words';
import { notices } from './plugins/notices';
import { offline } from './plugins/offline';
import { hostHeaders } from './plugins/policy';
import { held, heldPdf, oneFile } from './plugins/one-file';
import { schemas } from './plugins/schemas';

const here = (path: string): URL => new URL(path, import.meta.url);
const words = here('../engine/rules/wording/en/page.json');

async function onlyInOneFile(): Promise<Plugin[]> {
  const pdf = await heldPdf();
  const rest = held(here('./src/generated/engine/wearline.wasm'), here('./public/generated/rules/'));
  return [rest, pdf, oneFile('wearline.html', pdf)];
}

/** The engine's own loader names the undivided module, which the page never fetches: left in, it would be put beside the page. */
const noUndividedEngine: Plugin = {
  name: 'wearline-no-undivided-engine',
  enforce: 'pre',
  transform(code, id) {
    if (!id.endsWith('/generated/engine/wearline.mjs')) return undefined;
    const without = code.replace(/new URL\("wearline\.wasm",\s*import\.meta\.url\)\.toString\(\)/, '""');
    if (without === code) this.error('the loader names the undivided engine in another way');
    return without;
  },
};

/** `vite build` makes the page, `vite build --mode one-file` adds dist/wearline.html, the whole page in one file. */
export default defineConfig(({ mode }) => {
  const single = mode === 'one-file';
  const bringIn = './src/sections/bring-in/source';
  return {
    base: './',
    json: { stringify: true },
    define: { __ONE_FILE__: JSON.stringify(single) },
    publicDir: single ? false : 'public',
    resolve: {
      alias: single
        ? [
            { find: /^\.\/files$/, replacement: fileURLToPath(here('./src/engine/files-held.ts')) },
            {
              find: /^(?:\.\/engine|\.)\/start-engine$/,
              replacement: fileURLToPath(here('./src/engine/start-engine-held.ts')),
            },
            {
              find: /^(?:\.\/source|\.)\/pdf-library$/,
              replacement: fileURLToPath(here(`${bringIn}/pdf-library-held.ts`)),
            },
            {
              find: /^(?:\.\/source|\.)\/picture-library$/,
              replacement: fileURLToPath(here(`${bringIn}/picture-library-none.ts`)),
            },
          ]
        : [],
    },
    build: {
      target: 'es2021',
      modulePreload: { polyfill: false },
      assetsInlineLimit: 0,
      emptyOutDir: !single,
      cssCodeSplit: !single,
      rollupOptions: single ? { output: { inlineDynamicImports: true } } : {},
    },
    worker: { format: 'es', plugins: () => [noUndividedEngine] },
    server: { fs: { allow: ['..'] } },
    plugins: [
      noUndividedEngine,
      htmlWords(words),
      examples(here('../examples/')),
      notices(),
      single ? onlyInOneFile() : [hostHeaders(), schemas(here('../engine/rules/schema/')), offline(words)],
    ],
  };
});
