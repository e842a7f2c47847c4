// What is kept on the device: drafts, photographs, the points tapped on them, settings. Every change is written through before it is shown as kept.
const DB = { name: "recordgen-field", version: 1, stores: ["drafts", "photos", "tracings", "meta"] };
// Given back when the device says it is full, so that the small entries still fit.
const SPARE_BYTES = 8 * 1024 * 1024;
let db = null;
let memoryOnly = false;
const memory = { drafts: new Map(), photos: new Map(), tracings: new Map(), meta: new Map() };

const asked = (request) => new Promise((done, fail) => {
  request.onsuccess = () => done(request.result);
  request.onerror = () => fail(request.error);
});

const openStore = async () => {
  try {
    const request = indexedDB.open(DB.name, DB.version);
    request.onupgradeneeded = () => DB.stores.forEach((name) => request.result.createObjectStore(name));
    db = await asked(request);
    db.onversionchange = () => db.close();
  } catch {
    memoryOnly = true;
  }
};

const within = (mode, name, work) => new Promise((done, fail) => {
  const step = db.transaction(name, mode, { durability: "strict" });
  let found;
  step.oncomplete = () => done(found);
  step.onabort = () => fail(step.error || new Error("aborted"));
  const request = work(step.objectStore(name));
  if (request) request.onsuccess = () => { found = request.result; };
});

const keep = async (name, key, value) => {
  memory[name].set(key, value);
  if (memoryOnly) return false;
  try {
    await within("readwrite", name, (store) => store.put(value, key));
    return true;
  } catch (trouble) {
    return (await freeSpare()) ? within("readwrite", name, (store) => store.put(value, key)).then(() => true, () => false) : false;
  }
};
const drop = async (name, key) => {
  memory[name].delete(key);
  if (!memoryOnly) await within("readwrite", name, (store) => store.delete(key));
};
const readAll = async (name) => {
  if (memoryOnly) return;
  const keys = await within("readonly", name, (store) => store.getAllKeys());
  const values = await within("readonly", name, (store) => store.getAll());
  keys.forEach((key, at) => memory[name].set(key, values[at]));
};

const keepSpare = async () => {
  if (memoryOnly || memory.meta.has("spare") || memory.meta.get("full")) return;
  await within("readwrite", "meta", (store) => store.put(new Uint8Array(SPARE_BYTES), "spare")).then(() => memory.meta.set("spare", true), () => {});
};
const freeSpare = async () => {
  if (!memory.meta.has("spare")) return false;
  memory.meta.delete("spare");
  memory.meta.set("full", true);
  return within("readwrite", "meta", (store) => store.delete("spare")).then(() => true, () => false);
};

const forgetDevice = async () => {
  db?.close();
  await asked(indexedDB.deleteDatabase(DB.name)).catch(() => {});
  for (const name of await (self.caches ? caches.keys() : [])) if (name.startsWith("recordgen-field-")) await caches.delete(name);
  if (DATA.sealed) await askWorker("lock");
};

// A page that was published sealed is opened, kept for where there is no signal, and locked by that site's own worker.
const WORKER_MS = 10000;
const askWorker = async (say) => {
  const { active } = (await navigator.serviceWorker?.ready) || {};
  if (!active) return null;
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    setTimeout(done, WORKER_MS, null);
    // What comes in between tells how far it is.
    port1.onmessage = ({ data }) => { if (!data?.done) done(data); };
    active.postMessage({ say }, [port2]);
  });
};
const keepPage = async () => {
  if (DATA.sealed) return (await askWorker("about"))?.saved || (await askWorker("save"))?.saved || false;
  if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) return false;
  return navigator.serviceWorker.register("sw.js").then(() => true, () => false);
};

// One page at a time: two would write over each other. Kept while this page lives, also where it is hidden.
const onlyPage = () => new Promise((done) => {
  if (!navigator.locks) return done(true);
  navigator.locks.request("recordgen-field", { ifAvailable: true }, (lock) => {
    done(Boolean(lock));
    return lock ? new Promise(() => {}) : undefined;
  });
});
