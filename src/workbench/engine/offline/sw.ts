/// <reference lib="webworker" />
import { createShelf, type Listed } from './shelf.ts';

/**
 * Keeps Laydown's own files on this machine, so that it opens with the network off. Own code, a page of it: the usual
 * generators bring routing and strategies for the many-sided web, and here there is one rule. What was kept whole is
 * served, nothing else is kept, and a newer Laydown waits until the person takes it.
 */
const scope = self as unknown as ServiceWorkerGlobalScope;

/** Put here when built: every file of this Laydown with its fingerprint (vite.config.ts). */
declare const LAYDOWN_FILES: readonly Listed[];
declare const LAYDOWN_EDITION: string;

/** An edition that is damaged here and gone from where it came: open pages load again, this time from the network. */
const loadAgain = (): void => {
  void scope.clients.matchAll({ type: 'window' }).then((pages) => {
    for (const page of pages) void page.navigate(page.url).catch(() => undefined);
  });
};
const shelf = createShelf(LAYDOWN_FILES, `laydown-${LAYDOWN_EDITION}`, scope.registration.scope, undefined, undefined, loadAgain);

scope.addEventListener('install', (event) => {
  event.waitUntil(shelf.fill());
});
scope.addEventListener('activate', (event) => {
  event.waitUntil(shelf.clearOthers().then(() => scope.clients.claim()));
});
scope.addEventListener('message', (event) => {
  if (event.data === 'take') void scope.skipWaiting();
});
scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const path = shelf.pathOf(request.method, request.url);
  if (path !== null) event.respondWith(shelf.find(path).then((kept) => kept ?? fetch(request)));
});
