// What leaves the phone: a file of lines, each sealed for the practice alone, so that mail and clouds may carry it and a
// file that was cut short still gives every whole line before the cut.
const FORMAT = 1;
const text = new TextEncoder();
const toBase64 = (bytes) => {
  let binary = "";
  for (let start = 0; start < bytes.length; start += 0x8000) binary += String.fromCharCode(...bytes.subarray(start, start + 0x8000));
  return btoa(binary);
};
const toUrl64 = (bytes) => toBase64(bytes).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
const fromUrl64 = (word) => Uint8Array.from(atob(word.replaceAll("-", "+").replaceAll("_", "/")), (sign) => sign.charCodeAt(0));
const sha256 = async (bytes) => new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
const hex = (bytes) => [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
const joined = (...parts) => {
  const all = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  parts.reduce((start, part) => { all.set(part, start); return start + part.length; }, 0);
  return all;
};
const deflated = async (bytes) => {
  if (!self.CompressionStream) return null;
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
};

const practiceKey = () => crypto.subtle.importKey("raw", fromUrl64(DATA.key), { name: "ECDH", namedCurve: "P-256" }, true, []);

// The key of one file: ECDH on P-256 with a pair made for it, then HKDF-SHA-256 (RFC 5869).
const fileKey = async () => {
  const pair = await crypto.subtle.generateKey({ name: "ECDH", namedCurve: "P-256" }, false, ["deriveBits"]);
  const own = new Uint8Array(await crypto.subtle.exportKey("raw", pair.publicKey));
  const shared = await crypto.subtle.deriveBits({ name: "ECDH", public: await practiceKey() }, pair.privateKey, 256);
  const base = await crypto.subtle.importKey("raw", shared, "HKDF", false, ["deriveKey"]);
  const how = { name: "HKDF", hash: "SHA-256", salt: own, info: text.encode("recordgen field notes 1") };
  return { own, key: await crypto.subtle.deriveKey(how, base, { name: "AES-GCM", length: 256 }, false, ["encrypt"]) };
};

const nonceOf = (number) => {
  const nonce = new Uint8Array(12);
  new DataView(nonce.buffer).setUint32(8, number);
  return nonce;
};
// The first byte tells whether what follows was made smaller.
const packed = async (part) => {
  const plain = text.encode(JSON.stringify(part));
  const small = await deflated(plain).catch(() => null);
  return small && small.length < plain.length ? joined(Uint8Array.of(1), small) : joined(Uint8Array.of(0), plain);
};

// The lines of a file that holds `parts`; sealed where the page knows the practice's key and the browser can.
const fileOf = async (id, parts) => {
  const sealing = DATA.key && self.crypto?.subtle ? await fileKey() : null;
  const to = sealing ? toUrl64((await sha256(fromUrl64(DATA.key))).slice(0, 9)) : "";
  const head = JSON.stringify({ field_notes: FORMAT, file: id, to, key: sealing ? toUrl64(sealing.own) : "", lines: parts.length });
  const bound = sealing ? await sha256(text.encode(head)) : null;
  const lines = [head];
  for (const [at, part] of parts.entries()) lines.push(await lineOf(at + 1, part, sealing, bound));
  return lines.join("\n") + "\n";
};
const lineOf = async (number, part, sealing, bound) => {
  if (!sealing) {
    const plain = JSON.stringify(part);
    const sum = self.crypto?.subtle ? hex(await sha256(text.encode(plain))) : "-";
    return `${number} ${sum} ${plain}`;
  }
  const how = { name: "AES-GCM", iv: nonceOf(number), additionalData: joined(bound, nonceOf(number)) };
  return `${number} ${toUrl64(new Uint8Array(await crypto.subtle.encrypt(how, sealing.key, await packed(part))))}`;
};

// The word that the computer prints once a file is taken in: four letters that tell the file and all its visits.
const receiptOf = async (id, visits) => {
  if (!self.crypto?.subtle) return "";
  const told = visits.map((draft) => `${draft.id}.${draft.rev}`).sort().join(" ");
  const sum = await sha256(text.encode(`receipt ${id} ${told}`));
  return [...sum.slice(0, 4)].map((byte) => "abcdefghijkmnpqrstuvwxyz23456789"[byte % 32]).join("");
};
