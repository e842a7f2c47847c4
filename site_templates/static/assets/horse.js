// What a horse's page does beyond what it shows without a script: two photographs laid over each other, two dates side by
// side, and a jump to a visit. Nothing is asked of a server, and nothing is kept.
(() => {
  // Photographs: the later one is uncovered from the right as far as the slider says.
  for (const overlay of document.querySelectorAll("[data-overlay]")) {
    const label = overlay.nextElementSibling, slider = label && label.querySelector("input");
    const [earlier, later] = overlay.querySelectorAll("figcaption");
    if (!slider || !later) continue;
    const show = () => {
      overlay.style.setProperty("--cut", `${slider.value}%`);
      slider.setAttribute("aria-valuetext", `${slider.value} % ${earlier.textContent}, ${100 - slider.value} % ${later.textContent}`);
    };
    overlay.classList.add("over");
    label.hidden = false;
    slider.addEventListener("input", show);
    show();
  }

  // Two dates: figures from the page's own data, drawings and photographs from wherever on the page they stand.
  for (const fold of document.querySelectorAll("#compare")) {
    const data = fold.querySelector("[data-figures]"), chooser = fold.querySelector("[data-choose]");
    const table = fold.querySelector("[data-compared]"), pictures = fold.querySelector("[data-pictures]");
    if (!data || !chooser || !table) continue;
    const rows = JSON.parse(data.textContent), choices = [...chooser.querySelectorAll("select")];
    const told = (choice) => choice.selectedOptions[0].textContent;

    const element = (name, text, parent) => {
      const made = document.createElement(name);
      made.textContent = text;
      if (parent) parent.append(made);
      return made;
    };
    const fill = (first, last) => {
      const body = document.createElement("tbody");
      for (const row of rows) {
        const was = row.days[first] || [], now = row.days[last] || [];
        if (!was.some((value, at) => value && now[at])) continue;
        const line = element("tr", "", body), head = element("th", row.name, line);
        head.scope = "row";
        if (row.unit) element("small", row.unit, head);
        for (const at of [0, 1, 2, 3]) element("td", was[at] || now[at] ? `${was[at] || "–"} → ${now[at] || "–"}` : "–", line);
      }
      table.tBodies[0].replaceWith(body);
      table.caption.textContent = choices.map(told).join(" → ");
    };

    const shown = (day) => [...document.querySelectorAll(`.rg-part [data-day="${day}"]`)];
    const copy = (figure, parent) => {
      const made = figure.cloneNode(true);
      for (const one of made.querySelectorAll("[aria-labelledby]")) {
        const title = one.querySelector("title");
        if (title) one.setAttribute("aria-label", title.textContent);
        one.removeAttribute("aria-labelledby");
      }
      for (const one of made.querySelectorAll("[id]")) one.removeAttribute("id");
      parent.append(made);
    };
    const beside = (days) => {
      pictures.replaceChildren();
      const found = days.map(shown), kinds = new Set(found.flat().map((one) => one.dataset.what));
      for (const kind of kinds) {
        const pair = found.map((held) => held.find((one) => one.dataset.what === kind));
        if (!pair.every(Boolean)) continue;
        const place = element("div", "", pictures);
        for (const one of pair) copy(one, place);
      }
    };

    const show = () => {
      const days = choices.map((choice) => choice.value);
      fill(...days);
      beside(days);
    };
    chooser.hidden = false;
    for (const choice of choices) choice.addEventListener("change", show);
    fold.addEventListener("toggle", () => fold.open && show(), { once: true });
  }

  // A visit of the history: its address does the rest.
  for (const jump of document.querySelectorAll("[data-jump]")) {
    jump.hidden = false;
    jump.querySelector("select").addEventListener("change", (event) => {
      if (event.target.value) location.hash = event.target.value;
    });
  }
})();
