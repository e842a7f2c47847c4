// The edition that is published: its list of files, and the files. Only what was verified is kept, and only as it was
// sealed.
const CACHE = `sld1:${given.base}`, PAGE_MS = 2000, PART_MS = 20000, PATIENCE_MS = 5000;
const manifestUrl = `${base.href}manifest.bin`, keysUrl = `${base.href}keys.json`;
const blobUrl = (name) => `${base.href}d/${name}.bin`;

const cached = async (url) => {
  const found = await (await caches.open(CACHE)).match(url);
  return found ? new Uint8Array(await found.arrayBuffer()) : null;
};
const cache = async (url, bytes) => (await caches.open(CACHE)).put(url, new Response(bytes));

// The bytes from the host. Refused as offline where there is no answer, as missing where there is no such file.
const fetched = async (url, mode, patience) => {
  const signal = patience ? AbortSignal.timeout(patience) : undefined;
  try {
    const answer = await fetch(url, { cache: mode, signal });
    if (answer.ok) return new Uint8Array(await answer.arrayBuffer());
    throw new Refused(answer.status === 404 ? "missing" : "offline");
  } catch (fault) {
    throw fault instanceof Refused ? fault : new Refused("offline");
  }
};

let edition = null, looking = null, renewal = null;

const readEdition = async (session, blob) => {
  const told = JSON.parse(new TextDecoder().decode(await opened(session, MANIFEST, "manifest", blob)));
  const seen = `serial:${session.site}`, highest = (await kept(seen)) || 0;
  if (told.v !== 1 || !(told.serial >= highest)) throw new Refused(told.v === 1 ? "older" : "altered");
  if (told.serial > highest) await keep(seen, told.serial);
  return { ...told, kid: session.kid, checked: Date.now() };
};

const lookAgain = async (session) => {
  const before = await cached(manifestUrl);
  let blob;
  try {
    blob = await fetched(manifestUrl, "no-cache", before ? PATIENCE_MS : 0);
  } catch (fault) {
    if (!before) throw new Refused("offline");
    blob = before;
  }
  const found = await readEdition(session, blob);
  if (blob !== before) await cache(manifestUrl, blob);
  if (!edition || edition.serial !== found.serial) renewal = renew(session, found);
  edition = found;
  return found;
};

const currentEdition = async (session, patience) => {
  if (edition && edition.kid === session.kid && Date.now() - edition.checked < patience) return edition;
  looking = looking || lookAgain(session).finally(() => { looking = null; });
  return looking;
};

const verified = async (session, [name, , length], blob) => {
  const bytes = await opened(session, FILE, name, blob);
  if (bytes.length !== length) throw new Refused("altered");
  return bytes;
};

const fromCache = async (session, entry) => {
  const blob = await cached(blobUrl(entry[0]));
  return blob && verified(session, entry, blob).catch(() => null);
};

// A damaged copy may lie in the browser's own cache, so the second try goes past it.
const fromHost = async (session, entry, mode = "default") => {
  const url = blobUrl(entry[0]), blob = await fetched(url, mode);
  const bytes = await verified(session, entry, blob).catch((fault) => {
    if (mode === "reload") throw fault;
    return null;
  });
  if (!bytes) return fromHost(session, entry, "reload");
  // Where there is no room left, a page is still shown.
  await cache(url, blob).catch(() => {});
  return bytes;
};

const fileOf = async (session, entry) => (await fromCache(session, entry)) || fromHost(session, entry);

// A file that is gone may belong to an edition that was replaced a moment ago.
const updating = (fault) => { throw fault.reason === "missing" ? new Refused("updating") : fault; };
const fileAt = async (session, { files }, path) => {
  try {
    return await fileOf(session, files[path]);
  } catch (fault) {
    if (fault.reason !== "missing") throw fault;
  }
  const fresh = await currentEdition(session, 0);
  if (!fresh.files[path]) throw new Refused("updating");
  return fileOf(session, fresh.files[path]).catch(updating);
};

// Copies of a former edition are taken away; what was saved for reading without a connection is brought up to date.
const renew = async (session, { files }) => {
  const wanted = new Set([manifestUrl, keysUrl, ...Object.values(files).map(([name]) => blobUrl(name))]);
  const store = await caches.open(CACHE);
  for (const { url } of await store.keys()) if (!wanted.has(url)) await store.delete(url);
  if (await kept("saved")) await saveAll(session, files, () => {}).catch(() => {});
};

const saveOne = async (session, entry) => {
  const store = await caches.open(CACHE), url = blobUrl(entry[0]);
  if (!(await store.match(url))) await fileOf(session, entry);
  if (!(await store.match(url))) throw new Error("no room");
};

const saveAll = async (session, files, progress) => {
  const entries = Object.values(files), waiting = entries.values();
  let done = 0;
  const hand = async () => {
    for (const entry of waiting) {
      await saveOne(session, entry);
      progress({ done: ++done, all: entries.length });
    }
  };
  await Promise.all([hand(), hand(), hand(), hand()]);
  await cache(keysUrl, await fetched(keysUrl, "no-cache"));
  await keep("saved", true);
};
