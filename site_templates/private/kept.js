// What stays on the device: a session where its owner ticked so, the highest serial seen, whether the pages are saved.
const stored = () => new Promise((resolve, reject) => {
  const asked = indexedDB.open(`sld1:${given.base}`, 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("kept");
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = asked.onblocked = () => reject(asked.error);
});

const withStore = async (mode, act) => {
  const database = await stored();
  try {
    return await new Promise((resolve, reject) => {
      const change = database.transaction("kept", mode);
      const asked = act(change.objectStore("kept"));
      change.oncomplete = () => resolve(asked.result);
      change.onabort = () => reject(change.error);
    });
  } finally {
    database.close();
  }
};
const kept = (name) => withStore("readonly", (store) => store.get(name));
const keep = (name, value) => withStore("readwrite", (store) => store.put(value, name));
const drop = (name) => withStore("readwrite", (store) => store.delete(name));
