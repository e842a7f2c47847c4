// Keeps the page on the device, so that it opens without a signal. A newer edition is taken where there is one.
const NAME = "recordgen-field-EDITION";
const FILES = ["./", "index.html", "app.webmanifest", "icon.svg"];

self.addEventListener("install", (event) => event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(FILES)).then(() => self.skipWaiting())));
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("recordgen-field-") && name !== NAME) await caches.delete(name);
  await self.clients.claim();
})()));
self.addEventListener("fetch", (event) => {
  const here = new URL(event.request.url);
  if (event.request.method !== "GET" || here.origin !== location.origin) return;
  event.respondWith(fetch(event.request).catch(() => caches.match(event.request, { ignoreSearch: true }).then((found) => found || caches.match("index.html"))));
});
