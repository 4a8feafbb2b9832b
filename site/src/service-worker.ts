// Keeps the files of the build on the device, so that the page opens without a network. A new build waits until the old page is closed:
// a page that lies open goes on with the files it began with, be it the first that ever asked for this worker.

import { cleanupOutdatedCaches, precacheAndRoute } from 'workbox-precaching';
import readers from './generated/readers.json';

declare const __FILES__: { url: string; revision: string | null }[];

cleanupOutdatedCaches();
precacheAndRoute(__FILES__);

// What reads PDFs and pictures is large: it is kept when it was used once, not before. The names of these files change with their content.

interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Asked extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const shelf = 'wearline-on-use';
const parts = /\/assets\/(?:pdf|tesseract)[^/]*\.js$/;
const isOfReaders = (url: string): boolean =>
  parts.test(url) || Object.values(readers).some((folder) => url.includes(`/generated/${folder}/`));

async function keptOrFetched(request: Request): Promise<Response> {
  const kept = await caches.open(shelf);
  const found = await kept.match(request.url);
  if (found) return found;
  const answer = await fetch(request);
  if (answer.ok) await kept.put(request.url, answer.clone());
  return answer;
}

async function clearOld(): Promise<void> {
  const kept = await caches.open(shelf);
  const old = (await kept.keys()).filter(({ url }) => parts.test(url) || !isOfReaders(url));
  await Promise.all(old.map((request) => kept.delete(request)));
}

// Without claiming it the first page would stay with the network: after a new build its own files would be gone.
const { clients } = self as unknown as { clients: { claim(): Promise<void> } };
self.addEventListener('activate', (e) => (e as Waiting).waitUntil(clearOld().then(() => clients.claim())));
self.addEventListener('fetch', (e) => {
  const { request } = e as Asked;
  const own = request.method === 'GET' && new URL(request.url).origin === location.origin;
  if (own && isOfReaders(request.url)) (e as Asked).respondWith(keptOrFetched(request));
});
