// `virtual:examples`: the titles of the cases in examples/, and each case as text, fetched when it is opened.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

interface ExampleCase {
  title?: string;
  jurisdiction?: string;
  lines: unknown[];
}

export function examples(folder: URL): Plugin {
  const id = 'virtual:examples';
  return {
    name: 'wearline-examples',
    resolveId: (wanted) => (wanted === id ? `\0${id}` : undefined),
    load(wanted) {
      if (wanted !== `\0${id}`) return undefined;
      const files = readdirSync(folder)
        .filter((f) => f.endsWith('.json') && !f.endsWith('.expected.json'))
        .sort();
      const list = files.map((file) => {
        const path = new URL(file, folder);
        this.addWatchFile(fileURLToPath(path));
        const c = JSON.parse(readFileSync(path, 'utf8')) as ExampleCase;
        return {
          slug: file.replace(/\.json$/, ''),
          title: c.title ?? file,
          place: c.jurisdiction ?? '',
          charges: c.lines.length,
        };
      });
      const open = files.map((file) => {
        const path = JSON.stringify(`${fileURLToPath(new URL(file, folder))}?raw`);
        return `${JSON.stringify(file.replace(/\.json$/, ''))}: () => import(${path})`;
      });
      return `export default { list: ${JSON.stringify(list)}, open: { ${open.join(', ')} } };`;
    },
  };
}
