// Keeps the files of the build on the device, so that the page opens without a network. A new build waits until the old page is closed:
// a page that lies open goes on with the files it began with.

import { cleanupOutdatedCaches, precacheAndRoute } from 'workbox-precaching';

declare const __FILES__: { url: string; revision: string }[];

cleanupOutdatedCaches();
precacheAndRoute(__FILES__);
