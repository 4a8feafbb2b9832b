// The page's own files where everything is one file: held in it, gzipped. Takes the place of files.ts in that build.

import { engine, rules } from 'virtual:held';

async function unpacked(base64: string): Promise<Response> {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip')));
}

export async function rulesText(file: string): Promise<string> {
  const found = rules[file];
  if (!found) throw new Error(file);
  return (await unpacked(found)).text();
}

export const engineBytes = async (): Promise<ArrayBuffer> => (await unpacked(engine)).arrayBuffer();
