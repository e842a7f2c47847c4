// What comes up from below: the scale's length and place, how to hold the camera, and what was traced.
const traceSheets = (root, data, draft, words) => {
  const h = (name, values = {}, ...inside) => {
    const made = document.createElement(name);
    for (const [key, value] of Object.entries(values)) {
      if (key === "onclick") made.addEventListener("click", value);
      else if (key in made && key !== "list") made[key] = value;
      else made.setAttribute(key, value);
    }
    made.append(...inside.flat(9).filter((one) => one !== null && one !== undefined && one !== false && one !== ""));
    return made;
  };
  const svg = (parts, box, more = "") => `<svg class="drawing" viewBox="0 0 ${box}" aria-hidden="true">${parts.map(([kind, path]) => `<path class="${kind}" d="${path}"/>`).join("")}${more}</svg>`;
  const drawing = (html, kind) => { const made = h("div", { className: kind }); made.innerHTML = html; return made; };
  const button = (text, key, onclick, kind = "") => h("button", { type: "button", className: kind, "data-key": key, onclick }, text);

  let last = null;
  // Under a sheet no key and no screen reader gets to the rest.
  const restIsOut = (out) => { for (const one of root.children) one.inert = out; };
  const close = () => {
    root.querySelector(".sheet")?.remove();
    root.querySelector(".veil")?.remove();
    restIsOut(false);
    last?.focus();
    last = null;
  };
  const open = (title, ...inside) => {
    close();
    last = document.activeElement;
    const sheet = h("section", { className: "sheet", role: "dialog", "aria-modal": "true", "aria-label": title, tabIndex: -1 }, h("h2", {}, title), inside);
    sheet.addEventListener("keydown", (event) => { if (event.key === "Escape") close(); });
    restIsOut(true);
    root.append(h("div", { className: "veil", onclick: close }), sheet);
    sheet.focus();
    return sheet;
  };

  const written = (number) => String(number).replace(".", data.decimal);
  // Of a rule, in the unit that is shown; what is kept is mm.
  const inches = data.units.mm, per = inches ? inches.per : 1, howLong = words(inches ? "how_long_inches" : "how_long");
  const LENGTHS = inches ? [1, 2, 4, 6, 8] : [20, 50, 100, 150, 200];
  const typedNumber = (text) => text.split(/[ -]+/).reduce((sum, part) => { const [top, below] = part.split("/"); return sum + (below ? top / below : Number(part)); }, 0);
  const scale = (done) => {
    const typed = h("input", { type: "text", inputMode: "decimal", value: written(Math.round((draft.now.length / per) * 10000) / 10000), "aria-label": howLong });
    const said = h("p", { className: "wrong", role: "alert" });
    const length = () => Math.round((inches ? typedNumber : Number)(typed.value.replace(",", ".").trim()) * per * 10000) / 10000;
    const chosen = (lay) => {
      if (!(length() >= 1 && length() <= 2000)) { said.textContent = words("length_wrong", inches ? { low: "1/16", high: 78 } : { low: 1, high: 2000 }); return; }
      draft.change((now) => Object.assign(now, { length: length(), lay, noScale: false }));
      close();
      done();
    };
    open(howLong,
      h("div", { className: "choices" }, LENGTHS.map((mm) => button(String(mm), `length-${mm}`, () => { typed.value = String(mm); })), typed), said,
      h("h2", {}, words("where_lay")),
      Object.entries(words.table.lay).map(([lay, text]) => button(text, `lay-${lay.replace(" ", "-")}`, () => chosen(lay), draft.now.lay === lay ? "go" : "")),
      h("p", { className: "quiet" }, words("lay_lost")));
  };
  const camera = (anew, leave) => open(words("camera"),
    drawing(svg(data.steps.camera[data.view], "200 120"), "hold"),
    h("p", {}, words.table.camera_how[data.view]), h("p", {}, words("camera_safe")), h("p", { className: "quiet by-touch" }, words("settle")), h("p", { className: "quiet by-keys" }, words("keys")),
    h("div", { className: "choices" }, button(words("close"), "close", close, "go"), button(words("anew"), "anew", () => { close(); anew(); }), leave && button(words("leave"), "leave", leave)));

  const told = (name, value, sd, bare) => {
    const [, kept, fewest] = words.table.figures[name], shown = data.units[kept], unit = shown ? shown.unit : kept, decimals = fewest + (shown ? shown.more : 0);
    if (shown) [value, sd] = [value / shown.per, sd && sd / shown.per];
    const text = written(value.toFixed(decimals).replace(/^-(?=[0.]*$)/, "").replace("-", "−"));
    return `${text}${sd ? ` ± ${written(Math.max(1.96 * sd, 10 ** -decimals).toFixed(decimals))}` : ""}${unit && !bare ? ` ${unit}` : ""}`;
  };
  const figures = (found) => {
    const rows = Object.keys(words.table.figures).filter((name) => name in found);
    if (!rows.length) return h("p", {}, words("no_figures"));
    return h("table", {}, rows.map((name) => h("tr", {}, h("th", { scope: "row" }, words.table.figures[name][0]), h("td", {}, told(name, ...[found[name]].flat())))));
  };
  const review = ({ found, faults, noLengths, write, more }) => open(words("review"),
    faults.map((text) => h("p", { className: "wrong" }, text)),
    h("div", { className: "stack" },
      draft.now.from === null ? button(words("write"), "write", () => write(null), "go") : [button(words("write_instead"), "write-instead", () => write(draft.now.from), "go"), button(words("write_both"), "write-both", () => write(null))],
      more && button(words("more"), "more", more), button(words("go_back"), "go-back", close)),
    noLengths && h("p", { className: "quiet" }, words("no_scale_told")),
    figures(found));
  const taken = (answer) => open(words("written", { visit: data.visit }),
    answer.problems.length ? [h("h2", {}, words("remarks")), answer.problems.map((text) => h("p", { className: "wrong" }, text))] : null,
    figures(answer.figures), h("p", { className: "quiet" }, words("error_told")));

  return { h, svg, drawing, button, open, close, scale, camera, review, taken, told };
};
