// The worker behind the private pages: it opens what was sealed, page by page, and nothing of that leaves the device.
const base = new URL(given.base, location.origin);
// What lies open on the host; everything else is only in here.
const OPEN = /^(sw\.js|keys\.json|manifest\.bin|robots\.txt|d\/[a-z2-7]{26}\.bin)$/;
const LOCK_SCRIPT = "assets/lock.js";

const pagesOf = async () => {
  const all = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  return all.filter((page) => page.url.startsWith(base.href));
};
const tellAll = async (message) => { for (const page of await pagesOf()) page.postMessage(message); };

// The session is in memory. A worker that was stopped finds it on the device, if it is kept there, or in an open page.
// `turn` tells an answer that comes after the pages were locked, or opened with other words.
let held = null, turn = 0, seeking = null;

const fromPages = async () => {
  const asked = (await pagesOf()).map(async (page) => alive(await ask(page, { ask: "session" }, 1000)) || Promise.reject());
  return Promise.any(asked).catch(() => null);
};

const seek = async () => {
  const began = turn;
  const found = alive(await kept("session").catch(() => null)) || (await fromPages());
  if (began === turn) held = found;
  return held;
};

const currentSession = async () => {
  if (alive(held)) return held;
  held = null;
  seeking = seeking || seek().finally(() => { seeking = null; });
  return seeking;
};

const close = async () => {
  turn += 1;
  held = edition = null;
  await drop("session").catch(() => {});
};

// From the part of the address after the base to the file it means.
const meant = (path, files) => {
  const name = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  if (Object.hasOwn(files, name)) return { name };
  return Object.hasOwn(files, `${name}/index.html`) ? { to: `${name}/` } : {};
};

const decoded = (path) => { try { return decodeURIComponent(path); } catch { return ""; } };

const fileFor = async (request, url, session) => {
  const navigating = request.mode === "navigate";
  const now = await currentEdition(session, navigating ? PAGE_MS : PART_MS), { files } = now;
  const { name, to } = meant(decoded(url.pathname.slice(base.pathname.length)), files);
  if (to) return Response.redirect(`${url.origin}${url.pathname}/${url.search}`, 301);
  const page = name || (navigating && files["404.html"] && "404.html");
  if (!page) throw new Refused("missing");
  const bytes = await fileAt(session, now, page);
  return fileAnswer(bytes, files[page][1], now.csp, request.headers.get("Range"), name ? 200 : 404);
};

const bar = async (event, reason) => {
  const page = given.words[`part_${reason}`] && (await self.clients.get(event.clientId));
  if (page) page.postMessage({ bar: given.words[`part_${reason}`] });
};

const refusal = async (event, reason) => {
  const navigating = event.request.mode === "navigate";
  if (reason === "changed") {
    await close();
    await tellAll({ forget: true });
  }
  if (navigating) return reason === "changed" ? unlockAnswer("changed") : troubleAnswer(reason);
  await bar(event, reason);
  // A page without its own script still holds the session and shows the bar.
  const lockScript = event.request.url === base.href + LOCK_SCRIPT;
  return lockScript ? answerWith(given.holder, 200, "text/javascript", "default-src 'none'") : plain(STATUS[reason] || 502);
};

const lockedAnswer = async (event) => {
  if (event.request.mode === "navigate") return unlockAnswer("asked");
  await bar(event, "locked");
  return plain(401);
};

const answer = async (event) => {
  const { request } = event, url = new URL(request.url);
  if (request.method !== "GET") return plain(405);
  const session = await currentSession();
  if (!session) return lockedAnswer(event);
  try {
    return await fileFor(request, url, session);
  } catch (fault) {
    return refusal(event, fault instanceof Refused ? fault.reason : "altered");
  } finally {
    if (renewal) event.waitUntil(renewal);
    renewal = null;
  }
};

const keysAnswer = (request) => fetch(request).catch(async () => {
  const copy = await cached(keysUrl);
  return copy ? new Response(copy, { headers: { "Content-Type": "application/json" } }) : Response.error();
});

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (!url.href.startsWith(base.href)) return;
  if (url.href === keysUrl) event.respondWith(keysAnswer(event.request));
  else if (!OPEN.test(url.pathname.slice(base.pathname.length))) event.respondWith(answer(event));
});

const lockAll = async () => {
  await close();
  await tellAll({ forget: true, leave: true });
  await drop("saved").catch(() => {});
  await caches.delete(CACHE);
};
const leadAway = async () => {
  for (const page of await pagesOf()) page.navigate(base.href).catch(() => {});
};

const ACTS = {
  open: async ({ session, keeping }) => {
    turn += 1;
    held = session;
    edition = null;
    if (keeping && given.ownDevice) await keep("session", session);
    else await drop("session");
    return true;
  },
  session: currentSession,
  about: async () => ({ saved: Boolean(await kept("saved")), day: edition && edition.time }),
  lock: lockAll,
  save: async (_, port) => {
    const session = await currentSession();
    const { files } = await currentEdition(session, PAGE_MS);
    return saveAll(session, files, (told) => port.postMessage(told)).then(() => ({ saved: true }), () => ({ failed: true }));
  },
};

self.addEventListener("message", (event) => {
  const act = ACTS[event.data.say], [port] = event.ports;
  if (!act || !port || !event.source.url.startsWith(base.href)) return;
  event.waitUntil(Promise.resolve(act(event.data, port)).catch(() => null).then((told) => port.postMessage(told))
    .then(() => event.data.say === "lock" && leadAway()));
});
