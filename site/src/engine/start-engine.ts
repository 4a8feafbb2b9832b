// Starts the engine in a worker and hands it over wrapped. In the single offline file start-engine-held.ts takes this module's place.

import type { Text } from '../generated/engine/wearline.mjs';
import firstPart from '../generated/engine/first.wasm?url';
import secondPart from '../generated/engine/rest.wasm?url';
import { type Engine, type Name, wrap } from './engine';
import { compiled } from './fetched';

/** What the worker begins with: the first part of the engine, and where the second lies. */
export interface Start {
  first: WebAssembly.Module;
  rest: string;
}

export interface Question {
  id: number;
  name: Name;
  given: (Text | number)[];
}
export type Answer = { id: number; text: string; failed?: undefined } | { id: number; failed: string };

export function startEngine(): Promise<Engine> {
  const first = compiled(firstPart);
  const worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { name: Name; done: (text: string) => void; fail: (e: Error) => void }>();
  let asked = 0;
  let broken: Error | undefined;
  /** Nobody would be answered any more, or wrongly. */
  const end = (e: Error): void => {
    broken = e;
    worker.terminate();
    waiting.forEach(({ fail }) => fail(e));
    waiting.clear();
  };
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.failed === undefined) return asker?.done(data.text);
    const e = new Error(data.failed);
    asker?.fail(e);
    // What could not be fetched may be fetched later; a call that broke off midway leaves an engine that is not to be trusted.
    if (asker?.name !== 'complete') end(e);
  });
  // The worker itself could not start or broke.
  worker.addEventListener('error', (e) => end(new Error(e.message || 'worker')));
  first.then(
    (module) => worker.postMessage({ first: module, rest: new URL(secondPart, document.baseURI).href } satisfies Start),
    (e: Error) => end(e),
  );
  return wrap(
    (name, ...given) =>
      new Promise((done, fail) => {
        if (broken) return fail(broken);
        const question: Question = { id: ++asked, name, given };
        waiting.set(question.id, { name, done, fail });
        worker.postMessage(question);
      }),
  );
}
