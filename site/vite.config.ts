import { defineConfig } from 'vite';
import { examples } from './plugins/examples';
import { htmlWords } from './plugins/html-words';

export default defineConfig({
  base: './',
  json: { stringify: true },
  build: {
    target: 'es2021',
    modulePreload: { polyfill: false },
    reportCompressedSize: true,
    assetsInlineLimit: 0,
  },
  server: { fs: { allow: ['..'] } },
  plugins: [
    htmlWords(new URL('../engine/rules/wording/en/page.json', import.meta.url)),
    examples(new URL('../examples/', import.meta.url)),
  ],
});
