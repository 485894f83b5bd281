// Keeps the built page on the device, so that it opens without a connection. The build puts the list FILES in front.
/* global FILES, caches, self */
const SHELF = 'spraywright-page';
const START = ['./', 'start.json'];
const [CATALOGUE, SIGN_OUT] = ['start.json', 'sign-out'].map(
  (file) => new URL(file, self.registration.scope).href,
);

self.addEventListener('install', (event) => event.waitUntil(shelve().then(() => self.skipWaiting())));
self.addEventListener('activate', (event) => event.waitUntil(clear().then(() => self.clients.claim())));
self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  // The records are never answered from here: the page itself keeps what waits for them.
  if (method === 'POST' && url === SIGN_OUT) event.waitUntil(forget());
  if (method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  event.respondWith(answer(event.request, pathname));
});

async function shelve() {
  const shelf = await caches.open(SHELF);
  await shelf.addAll([...START, ...FILES]);
}

/** Files of earlier builds go. */
async function clear() {
  const shelf = await caches.open(SHELF);
  const wanted = new Set([...START, ...FILES].map((file) => new URL(file, self.registration.scope).href));
  for (const request of await shelf.keys()) if (!wanted.has(request.url)) await shelf.delete(request);
}

/** Whoever comes next at this device may not be told what things cost, as the one who leaves perhaps was. */
async function forget() {
  const shelf = await caches.open(SHELF);
  await shelf.delete(CATALOGUE);
}

/** Built files have a name of their own for each build and never change; everything else is asked for first. */
async function answer(request, pathname) {
  const shelf = await caches.open(SHELF);
  const known = await shelf.match(request, { ignoreSearch: true });
  if (known !== undefined && pathname.includes('/assets/')) return known;
  try {
    const fresh = await fetch(request);
    if (fresh.ok && (known !== undefined || request.url === CATALOGUE))
      await shelf.put(request, fresh.clone());
    return fresh;
  } catch (error) {
    if (known !== undefined) return known;
    throw error;
  }
}
