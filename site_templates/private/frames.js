// From a sealed blob to the file in it, or a refusal that says what was wrong.
class Refused extends Error {
  constructor(reason) { super(reason); this.reason = reason; }
}

const HEADER = 13, NONCE = 12, TAG = 16, FILE = 1, MANIFEST = 2;

const joined = (...parts) => new Uint8Array(parts.flatMap((part) => [...part]));

const checkHeader = (blob, kind, kid) => {
  const known = blob.length >= HEADER + NONCE + TAG && blob.subarray(0, 5).join() === [...utf8("SLD1"), kind].join();
  if (!known) throw new Refused("altered");
  if (toText(blob.subarray(5, HEADER)) !== kid) throw new Refused(kind === MANIFEST ? "changed" : "altered");
};

const inflated = (bytes) => new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"))).arrayBuffer();

const unframed = async (frame) => {
  const length = new DataView(frame.buffer).getUint32(1), body = frame.subarray(5, 5 + length);
  if (body.length !== length || frame[0] > 1) throw new Refused("altered");
  return frame[0] ? new Uint8Array(await inflated(body)) : body;
};

const opened = async (session, kind, name, blob) => {
  checkHeader(blob, kind, session.kid);
  const additionalData = joined(blob.subarray(0, HEADER), fromText(session.site), utf8(name));
  const how = { name: "AES-GCM", iv: blob.subarray(HEADER, HEADER + NONCE), additionalData };
  try {
    const frame = await crypto.subtle.decrypt(how, session.key, blob.subarray(HEADER + NONCE));
    return await unframed(new Uint8Array(frame));
  } catch {
    throw new Refused("altered");
  }
};
