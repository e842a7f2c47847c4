// What every page does beyond what it shows without a script.
(() => {
  const base = document.body.dataset.base.replace(/\/?$/, "/");

  // Light or dark, kept on this device.
  const change = document.querySelector("[data-scheme-change]");
  change.hidden = false;
  change.addEventListener("click", () => {
    const scheme = document.body.dataset.scheme === "dusk" ? "paper" : "dusk";
    document.body.dataset.scheme = scheme;
    try { localStorage.setItem("rg-scheme", scheme); } catch { /* Then it is for this page alone. */ }
  });

  // Search is loaded when somebody searches.
  const search = document.getElementById("search"), ask = document.querySelector("[data-search-open]");
  ask.hidden = false;
  ask.addEventListener("click", () => {
    search.showModal();
    if (ask.dataset.loaded) return;
    ask.dataset.loaded = "1";
    const script = document.createElement("script");
    script.src = `${base}assets/search.js`;
    document.head.append(script);
  });
  search.querySelector("[data-search-close]").addEventListener("click", () => search.close());
  search.addEventListener("click", (event) => event.target === search && search.close());

  // Words about a day stand for as long as they are true by the reader's own calendar; see the macro stage.
  const today = new Date(Date.now() - new Date().getTimezoneOffset() * 60000).toISOString().slice(0, 10);
  for (const one of document.querySelectorAll("[data-after], [data-till]")) {
    one.hidden = today <= one.dataset.after || today > one.dataset.till;
  }

  // The menu may be wider than a phone; the name of this page is in sight.
  const here = document.querySelector(".rg-line [aria-current]");
  if (here) {
    const line = here.parentElement, beyond = here.getBoundingClientRect().right - line.getBoundingClientRect().right;
    if (beyond > 0) line.scrollLeft += beyond;
  }

  // What a reader opens is printed, what stays folded is not.
  addEventListener("click", (event) => {
    const summary = event.target.closest && event.target.closest("summary");
    if (summary) summary.parentElement.classList.toggle("opened", !summary.parentElement.open);
  });

  // A link to a visit opens what it is folded into.
  const show = () => {
    const goal = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!goal) return;
    for (let fold = goal; fold; fold = fold.parentElement) if (fold.tagName === "DETAILS") {
      fold.open = true;
      fold.classList.add("opened");
    }
    goal.scrollIntoView();
  };
  addEventListener("hashchange", show);
  show();

  // Pages that were opened are read again without a signal. Where another worker hands out the pages, it does that too.
  if (document.documentElement.dataset.kept !== undefined) document.querySelector(".rg-kept").hidden = false;
  const known = /^http/.test(location.protocol) && navigator.serviceWorker;
  if (known) addEventListener("load", async () => {
    const place = new URL(base, location);
    const there = await known.getRegistration(place).catch(() => null);
    if (!there || there.scope !== place.href) known.register(new URL("worker.js", place)).catch(() => {});
  });
})();
