// From words or a link's secret to the readers' key, which never becomes bytes that a script can read.
const FEWEST = 600000, MOST = 10000000;
const normal = (text) => text.normalize("NFKC").toLowerCase().split(/[\t\n\v\f\r -@[-`{-~\u200b-\u200d\u2018-\u201f\ufeff]+/).filter(Boolean).join(" ");

const ownKey = async (slot, typed) => {
  const salt = fromText(slot.salt), link = slot.kind === "link", hash = "SHA-256";
  const secret = link ? fromText(typed) : utf8(normal(typed));
  const step = link
    ? { name: "HKDF", hash, salt, info: utf8("sld1 link") }
    : { name: "PBKDF2", hash, salt, iterations: slot.iter };
  const from = await crypto.subtle.importKey("raw", secret, step.name, false, ["deriveKey"]);
  return crypto.subtle.deriveKey(step, from, { name: "AES-GCM", length: 256 }, false, ["unwrapKey"]);
};

const fits = (kind) => (slot) =>
  slot.kind === kind && (kind === "link" ? slot.iter === 0 : Number.isInteger(slot.iter) && slot.iter >= FEWEST && slot.iter <= MOST);

const unwrapped = async (ring, slot, typed) => {
  const additionalData = utf8(`sld1 slot|${[ring.site, ring.kid, slot.id, slot.kind, slot.iter].join("|")}`);
  const how = { name: "AES-GCM", iv: fromText(slot.iv), additionalData };
  return crypto.subtle.unwrapKey("raw", fromText(slot.key), await ownKey(slot, typed), how, "AES-GCM", false, ["decrypt"]);
};

// The key of the first slot that opens; null where none does. Throws where there is no ring.
const keyFrom = async (ring, kind, typed) => {
  if (ring.v !== 1) throw new Error("another kind of key ring");
  for (const slot of ring.slots.filter(fits(kind))) {
    try {
      return await unwrapped(ring, slot, typed);
    } catch { /* the next slot may open */ }
  }
  return null;
};
