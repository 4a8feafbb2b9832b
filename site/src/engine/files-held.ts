// The page's own files where everything is one file: held in it, gzipped. Takes the place of files.ts in that build.

import { engine, rules } from 'virtual:held';

export async function unpacked(base64: string): Promise<Response> {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip')));
}

let bundles: Promise<Record<string, unknown>> | undefined;

export async function rulesText(file: string): Promise<string> {
  bundles ??= unpacked(rules).then((r) => r.json());
  const found = (await bundles)[file];
  if (!found) throw new Error(file);
  return JSON.stringify(found);
}

export const engineBytes = async (): Promise<ArrayBuffer> => (await unpacked(engine)).arrayBuffer();
