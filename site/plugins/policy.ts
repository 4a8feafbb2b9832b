// What the page may do, as its content security policy says it: within the page, and in a file of headers for whoever hosts it.

import type { Plugin } from 'vite';

/** Nothing but the page's own files; pictures also from what a person hands over. No text becomes markup or script on its way. */
const directives = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];
/** Only for the page as served: the single file runs scripts it holds itself. lit-html names its own policy. */
export const trusted = "require-trusted-types-for 'script'; trusted-types default lit-html inert";

export const policy = [...directives, trusted].join('; ');

/** What a page cannot say about itself: who may show it within another page. */
const policyOfHost = `${policy}; frame-ancestors 'none'`;

const forEver = 'Cache-Control: public, max-age=31536000, immutable';
const askAgain = 'Cache-Control: no-cache';

/** In the form several hosts of static files read: a path, and below it the headers that go with it. */
const headers: [path: string, headers: string[]][] = [
  [
    '/*',
    [
      'X-Content-Type-Options: nosniff',
      'Referrer-Policy: no-referrer',
      'Cross-Origin-Opener-Policy: same-origin',
      'Cross-Origin-Resource-Policy: same-origin',
      'Permissions-Policy: geolocation=(), microphone=(), payment=(), usb=()',
    ],
  ],
  ['/', [`Content-Security-Policy: ${policyOfHost}`, askAgain]],
  ['/index.html', [`Content-Security-Policy: ${policyOfHost}`, askAgain]],
  ['/wearline.html', ["Content-Security-Policy: frame-ancestors 'none'", askAgain]],
  ['/service-worker.js', [askAgain]],
  ['/manifest.webmanifest', [askAgain]],
  // Names of these change with their content.
  ['/assets/*', [forEver]],
  ['/generated/*', [forEver]],
];

export const headersFile = '_headers';

/** Writes the headers beside the page. */
export const hostHeaders = (): Plugin => ({
  name: 'wearline-host-headers',
  apply: 'build',
  generateBundle() {
    const source = headers.map(([path, lines]) => [path, ...lines.map((l) => `  ${l}`)].join('\n')).join('\n') + '\n';
    this.emitFile({ type: 'asset', fileName: headersFile, source });
  },
});
