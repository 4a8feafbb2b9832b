// The engine in a thread of its own. A message names a call and its texts; the answer bears the message's number. The first message brings
// the first part of the engine: the page fetches it while this thread is still to come.

import createEngine, { type Engine as Module } from '../generated/engine/wearline.mjs';
import { callHere, type Call, type Name } from './engine';
import { compiled } from './fetched';
import type { Answer, Question, Start } from './start-engine';
import { twoParts, type TwoParts } from './two-parts';

/** What the first part was made for; other calls wait for the second. */
const early: Name[] = ['load', 'version', 'catalogue', 'assess'];

/** A call that came upon the second part before it was here waits for it: this thread has nothing else to do. */
function bytesNow(address: string): ArrayBuffer {
  const request = new XMLHttpRequest();
  request.open('GET', address, false);
  request.responseType = 'arraybuffer';
  request.send();
  if (request.status !== 200) throw new Error(`${address}: ${request.status}`);
  return request.response as ArrayBuffer;
}

let rest: string;
let parts: TwoParts;
let begin: (given: Start) => void;
const started: Promise<Call> = new Promise<Start>((given) => (begin = given))
  .then(({ first, rest: address }) => {
    rest = address;
    return new Promise<Module>((done, fail) => {
      createEngine({
        instantiateWasm: (imports, receive) => {
          parts = twoParts(imports, () => bytesNow(rest));
          WebAssembly.instantiate(first, parts.imports)
            .then((instance) => {
              parts.begun(instance);
              receive(instance, first);
            })
            .catch(fail);
          return {};
        },
      }).then(done, fail);
    });
  })
  .then(callHere);
// Each question is told of a failure; one that comes before the first question is none of its own.
started.catch(() => undefined);

let coming: Promise<void> | undefined;
/** The second part, fetched once; what failed is tried again. */
function complete(): Promise<void> {
  coming ??= compiled(rest).then((module) => parts.complete(module));
  coming.catch(() => (coming = undefined));
  return coming;
}

async function reply(data: Question): Promise<void> {
  let answer: Answer;
  try {
    const call = await started;
    if (!early.includes(data.name)) await complete();
    answer = { id: data.id, text: await call(data.name, ...data.given) };
  } catch (e) {
    answer = { id: data.id, failed: e instanceof Error ? e.message : String(e) };
  }
  self.postMessage(answer);
}

self.addEventListener('message', ({ data }: MessageEvent<Start | Question>) => {
  if ('first' in data) begin(data);
  else void reply(data);
});
