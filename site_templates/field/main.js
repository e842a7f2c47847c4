// Which screen stands on the page is told by the address, so that the phone's own way back works.
const route = () => {
  const [name, ...parts] = location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  return screens[name] ? [name, parts] : ["today", []];
};
let shown = "";
const render = () => {
  const page = document.getElementById("page");
  const [name, parts] = route();
  const fresh = shown !== location.hash;
  const focused = document.activeElement?.dataset?.key;
  // Somebody who traces or types is not disturbed.
  if (!fresh && name === "trace") return;
  if (!fresh && /^(TEXTAREA|INPUT)$/.test(document.activeElement?.tagName || "") && document.activeElement.type !== "file" && page.contains(document.activeElement)) return;
  const scrolled = [window.scrollY, ...[...page.querySelectorAll(".strip")].map((strip) => strip.scrollLeft)];
  shown = location.hash;
  document.body.dataset.screen = name;
  page.replaceChildren(...[screens[name](...parts)].flat(9).filter(Boolean));
  settleStrips(page);
  if (fresh) {
    window.scrollTo(0, 0);
    page.querySelector("h1")?.focus({ preventScroll: true });
  } else {
    window.scrollTo(0, scrolled[0]);
    if (focused) document.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
  }
};
const look = () => document.body.classList.toggle("left-handed", Boolean(memory.meta.get("left_handed")));

const start = async () => {
  if (!(await onlyPage())) {
    document.getElementById("page").replaceChildren(h("h1", {}, words("open_elsewhere")), h("p", {}, words("open_elsewhere_why")), button(words("try_again"), "again", () => location.reload()));
    return;
  }
  await openStore();
  await Promise.all(DB.stores.map((name) => readAll(name).catch(() => {})));
  look();
  addEventListener("hashchange", () => { over(); render(); });
  // A value half out of its strip comes in sight where the keyboard is; under a finger nothing moves.
  addEventListener("focusin", ({ target }) => target.closest(".strip") && target.matches(":focus-visible") && target.scrollIntoView({ block: "nearest", inline: "nearest" }));
  render();
  document.body.dataset.ready = "yes";
  keepPage().then((kept) => { memory.meta.set("page_kept", kept); document.body.dataset.offline = kept ? "yes" : "no"; });
  const persisted = await navigator.storage?.persist?.().catch(() => false);
  memory.meta.set("persisted", Boolean(persisted));
};
start();
