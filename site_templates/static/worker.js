// Keeps the pages that were opened on this device, so that they are read again without a signal. With a signal each page
// comes from its host as ever. Nothing is fetched ahead, nothing of another host or another site is kept, and what a host
// forbids to keep, or refuses to this reader by now, is kept no longer.
const PLACE = self.registration.scope, KEPT = `rg-pages:${PLACE}`, MOST = 150;

const mayKeep = (answer) => answer.ok && answer.type === "basic" && !answer.redirected
  && !/no-store/i.test(answer.headers.get("Cache-Control") || "");

const keep = async (request, answer) => {
  const store = await caches.open(KEPT);
  if (!mayKeep(answer)) return store.delete(request);
  // What was opened last stands last; what was not opened for longest goes first.
  await store.delete(request);
  await store.put(request, answer);
  const all = await store.keys();
  return Promise.all(all.slice(0, Math.max(0, all.length - MOST)).map((one) => store.delete(one)));
};

// A page that comes from the device says so.
const fromDevice = async (request) => {
  const found = await (await caches.open(KEPT)).match(request, { ignoreSearch: true });
  if (!found || request.mode !== "navigate") return found || Response.error();
  const text = (await found.text()).replace("<html ", "<html data-kept ");
  return new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8" } });
};

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(PLACE) || request.headers.has("Range")) return;
  event.respondWith(fetch(request).then((answer) => {
    event.waitUntil(keep(request, answer.clone()).catch(() => {}));
    return answer;
  }, () => fromDevice(request)));
});
