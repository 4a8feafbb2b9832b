// The engine in a thread of its own. A message names a call and its texts; the answer bears the message's number.

import createEngine, { type Engine as Module } from '../generated/engine/wearline.mjs';
import address from '../generated/engine/wearline.wasm?url';
import { callHere } from './engine';
import type { Answer, Question } from './start-engine';

/** Compiled while it comes in, where the host says what it is; from its bytes otherwise. */
async function instantiate(imports: WebAssembly.Imports): Promise<WebAssembly.WebAssemblyInstantiatedSource> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  if (answer.headers.get('content-type') === 'application/wasm')
    return WebAssembly.instantiateStreaming(answer, imports);
  return WebAssembly.instantiate(await answer.arrayBuffer(), imports);
}

const call = new Promise<Module>((done, fail) => {
  createEngine({
    instantiateWasm: (imports, receive) => {
      instantiate(imports).then(({ instance, module }) => receive(instance, module), fail);
      return {};
    },
  }).then(done, fail);
}).then(callHere);
// Each question is told of a failure; one that comes before the first question is none of its own.
call.catch(() => undefined);

async function reply(data: Question): Promise<void> {
  let answer: Answer;
  try {
    answer = { id: data.id, text: await (await call)(data.name, ...data.given) };
  } catch (e) {
    answer = { id: data.id, failed: e instanceof Error ? e.message : String(e) };
  }
  self.postMessage(answer);
}

self.addEventListener('message', ({ data }: MessageEvent<Question>) => void reply(data));
