// Every private page holds the session, so that the worker may stop and start without asking for the words again. It
// forgets the session when told to, and shows a bar where a part of the page was refused.
const base = new URL(given.base || "..", document.currentScript.src || location.href);
const container = navigator.serviceWorker;
const channel = "BroadcastChannel" in self ? new BroadcastChannel(`sld1:${base.pathname}`) : null;
let session = null;

// Notes for this tab alone; a browser may refuse them.
const tab = (act) => { try { return act(sessionStorage); } catch { return undefined; } };
const taken = (name) => tab((notes) => { const had = notes.getItem(name); notes.removeItem(name); return had; });
const again = `sld1 again ${base.pathname}`, locked = `sld1 locked ${base.pathname}`;

const leave = () => location.replace(base.href);
const forget = (told) => {
  session = null;
  if (told.leave) tab((notes) => notes.setItem(locked, "1"));
  // The worker leads each window away; this is for one that it cannot lead.
  if (told.leave) setTimeout(leave, 600);
};

const showBar = (text) => {
  const bar = document.getElementById("private-bar") || document.createElement("p");
  bar.id = "private-bar";
  bar.setAttribute("role", "alert");
  bar.style.cssText = "margin:0;padding:.7em 1em;font:16px/1.4 system-ui,sans-serif;background:#9c3c17;color:#fff";
  bar.textContent = text;
  document.body.prepend(bar);
};

const worker = async () => container.controller || (await container.ready).active;
const sameWorker = (source) => source && source.scriptURL === `${base.href}sw.js`;

if (container) {
  container.addEventListener("message", (event) => {
    if (!sameWorker(event.source)) return;
    if (event.data.ask) event.ports[0].postMessage(alive(session));
    if (event.data.forget) forget(event.data);
    if (event.data.bar) showBar(event.data.bar);
  });
  container.startMessages();
}
if (channel) channel.onmessage = (event) => forget(event.data);
// A page that comes back from the browser's memory may have been locked meanwhile.
addEventListener("pageshow", (event) => {
  if (!event.persisted) return;
  session = null;
  location.reload();
});
const fetchSession = async () => { session = await ask(await worker(), { say: "session" }, 3000); };
