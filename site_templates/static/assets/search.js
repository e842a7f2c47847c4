// Search over the words of the site, which `search/index.js` hands over: loaded when somebody searches, from a disk too.
(() => {
  const box = document.getElementById("search"), field = box.querySelector("input");
  const told = box.querySelector("[role=status]"), list = box.querySelector("ol");
  const base = document.body.dataset.base.replace(/\/?$/, "/");
  let pages = [], days = [];

  // As the index is made: small letters without accents, and ß as ss.
  const folded = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toUpperCase().toLowerCase();
  const words = (text) => folded(text).match(/[\p{L}\p{N}_]+/gu) || [];

  // How well one word that was typed fits: as the whole of a word, or as its beginning.
  const fit = (typed, among, whole) => {
    if (among.includes(typed)) return whole;
    return among.some((word) => word.startsWith(typed)) ? whole / 2 : 0;
  };
  const score = (page, typed) => {
    let sum = 0;
    for (const word of typed) {
      const best = Math.max(fit(word, page.title, 100), fit(word, page.names, 20), fit(word, page.words, 4));
      if (!best) return 0;
      sum += best;
    }
    return sum * page.weight;
  };

  // A day as it is typed: 18/11/2026, 18.11.26, 2026-11-18, 18 November 2026; the address goes to that visit.
  const dayOf = (text) => {
    const plain = folded(text).replace(/[\s,]+/g, " ").trim().replace(/(^|[^\d])0+(?=\d)/g, "$1");
    return /\d/.test(plain) && plain.length > 3 && days.find(([, spelled]) => spelled.some((one) => one === plain));
  };
  const found = (text) => {
    const day = dayOf(text), typed = words(text);
    const scored = pages.map((page) => {
      const there = day && page.days.includes(day[0]);
      return { ...page, hash: there ? `#visit-${day[0]}` : "", score: there ? 1000 * page.weight : score(page, typed) };
    });
    return scored.filter((page) => page.score).sort((one, other) => other.score - one.score).slice(0, 30);
  };

  const line = (page) => {
    const made = document.createElement("li"), link = made.appendChild(document.createElement("a"));
    const name = link.appendChild(document.createElement("b"));
    name.textContent = page.name;
    name.dir = "auto";
    link.href = base + page.address + page.hash;
    if (page.part && page.part !== page.name) link.appendChild(document.createElement("span")).textContent = page.part;
    return made;
  };
  const show = () => {
    const text = field.value.trim(), all = text ? found(text) : [];
    list.replaceChildren(...all.map(line));
    told.textContent = text && !all.length ? told.dataset.none : "";
  };

  globalThis.recordgenFound = (index) => {
    days = Object.entries(index.days);
    const fronts = new Map(index.pages.map(([address, name]) => [address, name]));
    const partOf = (address) => address.includes("/") && fronts.get(`${address.split("/")[0]}/index.html`);
    pages = index.pages.map(([address, name, weight, visits, names, text]) => (
      { address, name, weight, part: partOf(address), days: visits, title: words(name), names: words(names), words: text.split(" ") }));
    show();
  };
  const index = document.createElement("script");
  index.src = `${base}search/index.js`;
  index.onerror = () => { told.textContent = told.dataset.failed; };
  document.head.append(index);
  field.addEventListener("input", show);
  list.addEventListener("click", () => box.close());
})();
