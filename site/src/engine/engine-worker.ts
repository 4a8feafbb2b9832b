// The engine in a thread of its own: the judge, then the whole engine when it is asked for. A message names a call and its texts; the
// answer bears the message's number.

import createJudge from '../generated/engine/judge.mjs';
import judge from '../generated/engine/judge.wasm?url';
import whole from '../generated/engine/wearline.wasm?url';
import { callGrowing } from './engine';
import type { Answer, Question } from './start-engine';

async function bytes(address: string): Promise<ArrayBuffer> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer.arrayBuffer();
}

async function fetchWhole() {
  const glue = import('../generated/engine/wearline.mjs');
  const [{ default: createEngine }, wasmBinary] = await Promise.all([glue, bytes(whole)]);
  return createEngine({ wasmBinary });
}

const call = bytes(judge)
  .then((wasmBinary) => createJudge({ wasmBinary }))
  .then((module) => callGrowing(module, fetchWhole));

self.addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  let answer: Answer;
  try {
    answer = { id: data.id, text: await (await call)(data.name, ...data.texts) };
  } catch (e) {
    answer = { id: data.id, failed: e instanceof Error ? e.message : String(e) };
  }
  self.postMessage(answer);
});
