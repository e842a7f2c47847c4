// What page and worker both need: asking each other, and bytes as text.
const alive = (session) => (session && session.exp > Date.now() ? session : null);

// Sends a message with a port for the answer; null where none comes in time.
const ask = (whom, message, patience) => new Promise((resolve) => {
  const { port1, port2 } = new MessageChannel();
  const late = setTimeout(resolve, patience, null);
  port1.onmessage = (event) => { clearTimeout(late); port1.close(); resolve(event.data); };
  whom.postMessage(message, [port2]);
});

const utf8 = (text) => new TextEncoder().encode(text);
const fromText = (b64u) => Uint8Array.from(atob(b64u.replace(/-/g, "+").replace(/_/g, "/")), (sign) => sign.charCodeAt(0));
const toText = (bytes) => btoa(String.fromCharCode(...bytes)).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
