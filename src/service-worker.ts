/// <reference types="@sveltejs/kit" />
/// <reference lib="webworker" />
/**
 * Every page works without a network after one visit: the build, its fonts and the prerendered pages are
 * kept, and answered from there. A new build keeps under a new name and drops the old. Each language has a
 * worker of its own that leaves what the other keeps alone.
 */
import { base, build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;
/** What this worker keeps begins so: the folder it serves tells its own from the other languages'. */
const OURS = `lost-litres${base.replaceAll('/', '.')}-`;
const KEPT = OURS + version;
/** Neither pictures for the repository's own pages nor the gallery, which is for whoever changes the app. */
const pages = prerendered.filter((page) => !/\/gallery(\/|$)/.test(page));
const wanted = [...build, ...files.filter((file) => !file.endsWith('.png')), ...pages];

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(wanted)));
});

worker.addEventListener('activate', (event) => {
  const drop = async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(OURS) && name !== KEPT) await caches.delete(name);
    }
    await worker.clients.claim();
  };
  event.waitUntil(drop());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== worker.location.origin) return;
  const answer = async () => {
    const cache = await caches.open(KEPT);
    return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
  };
  event.respondWith(answer());
});
