// Keeps the chute's page and what it brings along on the phone, so that it opens without network. What is entered, and the list,
// the page itself keeps. A new version is fetched whole beside the old one and takes its place at the next opening.
const app = APP;
const prefix = `chute ${app.path} `;
const name = prefix + app.version;

self.addEventListener("install", event => {
  event.waitUntil((async () => {
    const cache = await caches.open(name);
    await cache.addAll(app.files.map(address => new Request(address, { cache: "reload" })));
    await self.skipWaiting();
  })());
});

self.addEventListener("activate", event => {
  event.waitUntil((async () => {
    for (const other of await caches.keys()) {
      if (other.startsWith(prefix) && other !== name) await caches.delete(other);
    }
    await self.clients.claim();
  })());
});

self.addEventListener("fetch", event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  const address = request.mode === "navigate" ? url.pathname : url.pathname + url.search;
  if (!app.files.includes(address)) return;
  event.respondWith((async () => {
    const cache = await caches.open(name);
    return (await cache.match(address, { ignoreVary: true })) ?? fetch(request);
  })());
});
