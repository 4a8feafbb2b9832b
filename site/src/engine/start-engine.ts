// Starts the engine in a worker and hands it over wrapped. In the single offline file start-engine-held.ts takes this module's place.

import type { Text } from '../generated/engine/wearline.mjs';
import { type Engine, type Name, wrap } from './engine';

export interface Question {
  id: number;
  name: Name;
  given: (Text | number)[];
}
export type Answer = { id: number; text: string; failed?: undefined } | { id: number; failed: string };

export function startEngine(): Promise<Engine> {
  const worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { done: (text: string) => void; fail: (e: Error) => void }>();
  let asked = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.failed === undefined) asker?.done(data.text);
    else asker?.fail(new Error(data.failed));
  });
  // The worker itself could not start or broke: nobody would be answered any more.
  worker.addEventListener('error', (e) => {
    waiting.forEach(({ fail }) => fail(new Error(e.message || 'worker')));
    waiting.clear();
  });
  const started = wrap(
    (name, ...given) =>
      new Promise((done, fail) => {
        const question: Question = { id: ++asked, name, given };
        waiting.set(question.id, { done, fail });
        worker.postMessage(question);
      }),
  );
  started.catch(() => worker.terminate());
  return started;
}
