// Where the page's own files come from: beside the page. The single offline file replaces this module by one that holds them.

import wasm from '../generated/engine/wearline.wasm?url';

async function ask(address: string): Promise<Response> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer;
}

/** A bundle of rules as text. */
export const rulesText = async (file: string): Promise<string> =>
  (await ask(new URL(`generated/rules/${file}`, document.baseURI).href)).text();

/** The WebAssembly module. */
export const engineBytes = async (): Promise<ArrayBuffer> => (await ask(wasm)).arrayBuffer();
