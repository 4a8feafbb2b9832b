// The engine in a thread of its own. A message names a call of the module and its texts; the answer bears the message's number.

import createEngine, { type Engine as Module } from '../generated/engine/wearline.mjs';
import wasm from '../generated/engine/wearline.wasm?url';
import { callHere } from './engine';
import type { Answer, Question } from './start-engine';

async function start(): Promise<Module> {
  const answer = await fetch(wasm);
  if (!answer.ok) throw new Error(`${wasm}: ${answer.status}`);
  return createEngine({ wasmBinary: await answer.arrayBuffer() });
}

const module = start();

self.addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  let answer: Answer;
  try {
    answer = { id: data.id, text: await callHere(await module)(data.name, ...data.texts) };
  } catch (e) {
    answer = { id: data.id, failed: e instanceof Error ? e.message : String(e) };
  }
  self.postMessage(answer);
});
