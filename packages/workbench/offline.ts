// Writes the service worker that keeps the built page for use without a network: every file of the page, under a name that
// changes whenever one of them does.

import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

const KEPT_OUT = /\.map$|^sw\.js$/;

export const offline: Plugin = {
  name: 'offline',
  enforce: 'post',
  generateBundle(_options, bundle) {
    const files = Object.keys(bundle).filter((name) => !KEPT_OUT.test(name));
    const hash = createHash('sha256');
    for (const name of files) {
      const file = bundle[name]!;
      hash.update(name).update(file.type === 'chunk' ? file.code : file.source);
    }
    const kept = ['./', 'manifest.webmanifest', 'icon.svg', ...files.filter((name) => name !== 'index.html')];
    this.emitFile({ type: 'asset', fileName: 'sw.js', source: serviceWorker(hash.digest('hex').slice(0, 12), kept) });
  },
};

function serviceWorker(version: string, files: readonly string[]): string {
  return `// The page without a network. Answers of the local server (api/) are never kept.
const CACHE = 'stillair-${version}';
const FILES = ${JSON.stringify(files)};

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter((name) => name !== CACHE).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  const scope = new URL(self.registration.scope);
  if (event.request.method !== 'GET' || url.origin !== scope.origin) return;
  if (url.pathname.slice(scope.pathname.length).startsWith('api/')) return;
  // The page itself comes fresh where there is a network; its parts carry their contents in their names.
  const fresh = event.request.mode === 'navigate';
  event.respondWith(
    caches.open(CACHE).then(async (cache) => {
      const kept = await cache.match(fresh ? './' : event.request, { ignoreSearch: fresh });
      if (!fresh) return kept ?? fetch(event.request);
      try {
        return await fetch(event.request);
      } catch {
        return kept ?? Response.error();
      }
    }),
  );
});
`;
}
