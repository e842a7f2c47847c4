// The few things every screen is made of.
const h = (tag, props = {}, ...inside) => {
  const made = document.createElementNS(SVG_TAGS.has(tag) ? "http://www.w3.org/2000/svg" : "http://www.w3.org/1999/xhtml", tag);
  for (const [name, value] of Object.entries(props)) {
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== undefined && value !== null) made.setAttribute(name, value);
  }
  made.append(...inside.flat(9).filter((part) => part !== null && part !== undefined && part !== false));
  return made;
};
const SVG_TAGS = new Set(["svg", "path", "g", "text"]);

// A hand that trembles presses one button twice; two different ones pressed fast are meant.
const TREMBLE_MS = 90;
const lastPress = { key: "", at: 0 };
const pressed = (key, work) => () => {
  const now = performance.now();
  if (lastPress.key === key && now - lastPress.at < TREMBLE_MS) return;
  Object.assign(lastPress, { key, at: now });
  work();
};
const button = (label, key, work, props = {}) => h("button", { type: "button", "data-key": key, onclick: pressed(key, work), ...props }, label);
const choice = (label, on, key, work, props = {}) => button(label, key, work, { "aria-pressed": String(Boolean(on)), ...props });

const say = (told) => { document.getElementById("say").textContent = told; };
let telling = 0;
const TOAST_GAP_PX = 8;
const toast = (told, back) => {
  document.getElementById("toast")?.remove();
  const made = h("div", { id: "toast" }, h("span", {}, told), back && button(words("take_back"), "toast-back", back));
  made.style.bottom = `${(document.querySelector("#trace .bar") || document.getElementById("bar")).offsetHeight + TOAST_GAP_PX}px`;
  document.body.append(made);
  say(told);
  clearTimeout(telling);
  telling = setTimeout(() => made.remove(), 6000);
};

// The numbers around the last value: one tap sets, a second one clears. Nothing is set until a finger sets it.
const ROW_REACH = 9;
const numberRow = (entry, value, last, key, set, type) => {
  const covered = memory.meta.get("covered");
  const about = value ?? (covered ? undefined : last?.[0]);
  const strip = h("div", { class: byInches(entry) ? "strip sizes" : "strip", role: "group", "aria-label": `${labelOf(entry)}. ${lastWords(last, covered, entry)}` });
  for (const number of rowOf(entry, about)) {
    const on = value === number;
    const was = !covered && last && stepsOf(entry, last[0]) === stepsOf(entry, number);
    strip.append(choice(sized(entry, number), on, `${key}-${number}`, () => set(on ? undefined : number, "row"), { class: was ? "was" : "", "data-middle": isSize(about) && stepsOf(entry, number) === stepsOf(entry, about) }));
  }
  return h("div", { class: "row-of" }, strip, button(words("keys"), `${key}-keys`, type, { "aria-label": `${labelOf(entry)}: ${words("by_keys")}` }));
};
// Around the value; where there is none yet, all that are likely, if they are few: so many mm of a flare.
const FEW = 40;
const rowOf = (entry, about) => {
  const [low, high] = (entry.likely || [0, Infinity]).map((one) => one / stepSize(entry));
  const from = isSize(about) ? stepsOf(entry, about) - ROW_REACH : Math.ceil(low);
  const to = isSize(about) ? stepsOf(entry, about) + ROW_REACH : high - low <= FEW ? Math.floor(high) : from - 1;
  const [least, most] = entry.possible || [-Infinity, Infinity];
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, step) => atStep(entry, from + step)).filter((number) => inUnit(entry, number) >= least && inUnit(entry, number) <= most);
};
const labelOf = (entry) => (entry.unit && entry.unit !== "points" ? `${capital(named(entry.key))}, ${named(entry.unit)}` : capital(named(entry.key)));
const lastWords = (last, covered, entry = {}) => (!last ? words("no_last") : covered ? words("covered") : words("last", { value: typeof last[0] === "boolean" ? words(last[0] ? "yes" : "no") : typeof last[0] === "string" ? named(last[0], entry.key) : sized(entry, last[0]), day: spokenDay(last[1]) }));
const nowWords = (value, last, covered, entry) => {
  if (value === undefined) return lastWords(last, covered, entry);
  if (!last || !isSize(value) || covered) return words("now", { value: value === "?" ? words("not_measured") : sized(entry, value) });
  return words("last_now", { last: sized(entry, last[0]), now: sized(entry, value), difference: apart(entry, value, last[0]) });
};

// What lies over the page, or nothing; under a sheet no key and no screen reader gets to the rest.
const over = (...inside) => {
  document.getElementById("over").replaceChildren(...inside);
  for (const one of document.body.children) if (!["say", "over"].includes(one.id)) one.inert = inside.length > 0;
};

// A sheet from below; closed by its button, by a tap outside and by Escape. What was entered stays.
const sheet = (title, fill, done = () => {}) => {
  const before = document.activeElement?.dataset?.key;
  const close = () => {
    over();
    document.removeEventListener("keydown", escape);
    done();
    render();
    if (before) document.querySelector(`[data-key="${CSS.escape(before)}"]`)?.focus({ preventScroll: true });
  };
  const escape = (event) => { if (event.key === "Escape") close(); };
  const body = h("div", { class: "sheet-body" });
  const again = () => {
    const scrolled = body.scrollTop;
    body.replaceChildren(...[fill(again, close)].flat(9).filter(Boolean));
    body.scrollTop = scrolled;
    settleStrips(body);
  };
  over(
    h("div", { class: "veil", onclick: close }),
    h("section", { class: "sheet", role: "dialog", "aria-modal": "true", "aria-label": title },
      h("header", {}, h("h2", { tabindex: -1 }, title), button(words("close"), "sheet-close", close, { class: "go" })), body));
  again();
  document.addEventListener("keydown", escape);
  document.querySelector("#over h2").focus();
};
const settleStrips = (around) => {
  for (const middle of around.querySelectorAll(".strip [data-middle]")) {
    const strip = middle.parentElement;
    strip.scrollLeft = middle.offsetLeft - strip.offsetLeft - (strip.clientWidth - middle.offsetWidth) / 2;
  }
};

// Big keys. A comma is a point, and is shown as the language writes it; a value that is unlikely is kept only when it is set twice.
// In inches the whole ones are typed, and the sixteenths behind them are chosen.
const keypad = (entry, value, last, set) => {
  const comma = DATA.tracing.decimal;
  const inches = byInches(entry);
  let typed = value === undefined || value === "?" ? "" : String(sized(entry, value));
  let part = 0;
  if (inches && typed.includes("/")) {
    part = partsOf(entry, value) % PARTS;
    typed = typed.includes(" ") ? typed.split(" ")[0] : "";
  }
  let asked = "";
  sheet(labelOf(entry), (again, close) => {
    const written = () => [typed, part ? onRule(part) : ""].filter(Boolean).join(" ");
    const entered = () => (inches ? `${written().replace(comma, ".")}${UNIT_IN}` : Number(typed.replace(comma, ".")));
    const number = () => inUnit(entry, entered());
    const choose = (one) => () => { asked = ""; typed = typed.split(comma)[0]; part = part === one ? 0 : one; again(); };
    const press = (sign) => () => {
      asked = "";
      if (sign === "back" && part) part = 0;
      else if (sign === "back") typed = typed.slice(0, -1);
      else if (inches && sign === "half") return choose(PARTS / 2)();
      else if (sign === "half") typed = typed && !typed.includes(comma) ? `${typed}${comma}5` : typed;
      else if (sign === ",") { part = 0; typed = typed.includes(comma) ? typed : `${typed || "0"}${comma}`; }
      else if (typed.replace(comma, "").length < 5) typed += sign;
      again();
    };
    const keepIt = () => {
      if (written() === "" || Number.isNaN(Number(number()))) { set(undefined, "keys"); return close(); }
      const wrong = impossible(entry, number());
      const odd = unlikely(entry, number(), last);
      if (wrong || (odd && asked !== written())) {
        asked = wrong ? "" : written();
        again();
        return say(wrong || odd);
      }
      set(entered(), "keys");
      return close();
    };
    const wrong = written() ? impossible(entry, number()) : "";
    const odd = written() && !wrong ? unlikely(entry, number(), last) : "";
    return [
      h("p", { class: "quiet" }, entry.help),
      h("output", { "aria-live": "polite" }, written() || "–"),
      h("p", { class: "quiet room" }, wrong || odd || lastWords(last, memory.meta.get("covered"), entry)),
      inches && h("div", { class: "strip", role: "group", "aria-label": labelOf(entry) }, Array.from({ length: PARTS - 1 }, (_, one) => choice(onRule(one + 1), part === one + 1, `pad-part-${one + 1}`, choose(one + 1)))),
      h("div", { class: "keys" },
        ["7", "8", "9", "back", "4", "5", "6", "half", "1", "2", "3", ",", "0"].map((sign) => button(sign === "," ? comma : /\d/.test(sign) ? sign : words(`key_${sign}`), `pad-${sign}`, press(sign), { class: sign === "0" ? "wide" : "" })),
        button(asked === written() && asked ? words("keep_it", { value: asked }) : words("set"), "pad-set", keepIt, { class: "go wide" })),
    ];
  });
};
