// Straightens one picture a message, away from the page.

import { straighten } from './straighten';

interface Task {
  rgba: Uint8ClampedArray;
  width: number;
  height: number;
  quarters?: 0 | 1 | 2 | 3;
}

self.onmessage = ({ data }: MessageEvent<Task>) => {
  const straight = straighten(data.rgba, data.width, data.height, data.quarters);
  (self as unknown as { postMessage(m: unknown, t: Transferable[]): void }).postMessage(straight, [
    straight.shown.data.buffer,
    straight.read.data.buffer,
    straight.whole.data.buffer,
  ]);
};
