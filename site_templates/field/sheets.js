// Any field of the vocabulary, entered by its kind: so a new field of the records needs no new code here.
const EMPTY_CHOICE = "?";

const field = (draft, foot, given, path, again) => {
  const entry = ofItsSize(draft, onItsScale(draft, foot, given, path));
  const whole = foot ? ["feet", foot, ...path] : path;
  const value = at(draft.record, whole);
  const last = foot ? lastOf(draft, foot, path) : undefined;
  const key = whole.join(".");
  const set = (what, how) => enter(draft, whole, what, how, entry).then(again);
  const makers = {
    group: () => h("fieldset", {}, h("legend", {}, capital(named(entry.key))), entry.fields.map((inner) => field(draft, foot, inner, [...path, inner.key], again))),
    number: () => numberField(entry, value, last, key, set, entry.seen),
    choice: () => choiceField(entry, entry.choices.map((word) => [word, capital(named(word, entry.key))]), value, last, key, set),
    yes: () => choiceField(entry, [[true, words("yes")], [false, words("no")]], value, last, key, set),
    day: () => h("label", { class: "field" }, capital(named(entry.key)), h("input", { type: "date", value: value || "", "data-key": key, onchange: (event) => set(event.target.value || undefined, "keys") })),
    text: () => textField(entry, value, key, (what) => enter(draft, whole, what, "keys", entry)),
    list: () => listField(draft, foot, entry, path, value || [], key, set, again),
    map: () => entry.keys.map((name) => h("details", { open: at(draft.record, [...whole, name]) !== undefined }, h("summary", {}, capital(named(name))), entry.of.fields.map((inner) => field(draft, foot, inner, [...path, name, inner.key], again)))),
  };
  return makers[entry.kind]();
};

// A grade runs as its scale does; until the scale is chosen there is nothing to tap.
const onItsScale = (draft, foot, entry, path) => {
  if (!entry.scales) return entry;
  const range = entry.scales[at(draft.record, [...(foot ? ["feet", foot] : []), ...path.slice(0, -1), "scale"])];
  return range ? { ...entry, possible: range, likely: range } : { ...entry, likely: [1, 0] };
};

// What is likely goes by the animal, where it is known what it is.
const ofItsSize = (draft, entry) => {
  const range = entry.likely_of?.[horseOf(draft)?.size];
  return range ? { ...entry, likely: range } : entry;
};

const numberField = (entry, value, last, key, set, seen) => h("div", { class: "measure" },
  h("p", {}, h("b", {}, labelOf(entry)), h("span", {}, nowWords(value, last, memory.meta.get("covered"), entry))),
  numberRow(entry, value === EMPTY_CHOICE ? undefined : value, last, key, set, () => keypad(entry, value, last, set)),
  seen && choice(words("seen_not_measured"), value === EMPTY_CHOICE, `${key}-seen`, () => set(value === EMPTY_CHOICE ? undefined : EMPTY_CHOICE, "keys")));

const choiceField = (entry, choices, value, last, key, set) => h("div", { class: "measure" },
  h("p", {}, h("b", {}, capital(named(entry.key))), h("span", {}, last && !memory.meta.get("covered") ? lastWords(last, false, entry) : "")),
  h("div", { class: "chips", role: "group", "aria-label": entry.help }, choices.map(([word, label]) => choice(label, value === word, `${key}-${word}`, () => set(value === word ? undefined : word, "keys")))));

const textField = (entry, value, key, set) => h("label", { class: "field" }, capital(named(entry.key)),
  h("textarea", { rows: 3, "data-key": key, placeholder: words("speak"), dir: "auto", oninput: (event) => set(event.target.value.trim() || undefined) }, value || ""));

const listField = (draft, foot, entry, path, value, key, set, again) => {
  if (entry.of.kind === "choice") return choicesField(entry, entry.of.choices, Array.isArray(value) ? value : [], key, set, false, entry.none && value);
  if (entry.of.kind === "text") return choicesField(entry, [...new Set([...value, ...(SUGGESTED[entry.key]?.() || [])])], value, key, set, true);
  return h("div", { class: "measure" },
    h("p", {}, h("b", {}, capital(named(entry.key)))),
    value.map((_, number) => h("fieldset", {}, h("legend", {}, `${capital(named(entry.key))} ${number + 1}`),
      entry.of.fields.map((inner) => field(draft, foot, inner, [...path, number, inner.key], again)),
      button(words("take_out"), `${key}-${number}-out`, () => set(value.filter((_, other) => other !== number), "keys")))),
    button(words("one_more"), `${key}-more`, () => set([...value, startOf(entry.of)], "keys")));
};
// A thing that is begun holds its day at once, and its first choice only once somebody chose it.
const startOf = (of) => {
  const day = of.fields.find((inner) => inner.kind === "day" && inner.must);
  return day ? { [day.key]: today() } : { begun: true };
};
const SUGGESTED = { done: () => DATA.done };

// none: where it may be said that there is none of them, what is said so far; unsaid is something else.
const NONE = "none";
const choicesField = (entry, choices, value, key, set, free = false, none = false) => h("div", { class: "measure" },
  !entry.untitled && h("p", {}, h("b", {}, capital(named(entry.key))), h("span", {}, value.length ? counted(value.length, "chosen") : "")),
  h("div", { class: "chips", role: "group", "aria-label": entry.help },
    choices.map((word) => choice(capital(named(word, entry.key)), value.includes(word), `${key}-${word}`, () => set(value.includes(word) ? value.filter((one) => one !== word) : [...value.filter((one) => one !== "begun"), word], "keys"))),
    none !== false && choice(words("none_of_them"), none === NONE, `${key}-none`, () => set(none === NONE ? undefined : NONE, "keys"))),
  free && h("form", { class: "more", onsubmit: (event) => { event.preventDefault(); const typed = event.target.elements.word.value.trim(); if (typed) set([...new Set([...value, typed])], "keys"); } },
    h("input", { name: "word", "aria-label": words("something_else"), placeholder: words("something_else"), dir: "auto", "data-key": `${key}-else` }), h("button", {}, words("add"))));

const enter = async (draft, path, what, how, entry) => {
  const kept = await change(draft, path, what, how);
  const told = `${pathWords(path)}: ${entry.word || valueWords(what, entry)}`;
  if (entry.kind !== "text") toast(told, () => undo(draft));
  showKept(kept);
};
const undo = async (draft) => {
  const step = await takeBack(draft);
  toast(step ? words("taken_back", { what: pathWords(step.path) }) : words("nothing_to_take_back"));
  render();
};
const pathWords = (path) => (path.length === 1 && path[0] === "feet" ? words("done_all") : path.filter((step) => step !== "feet" && typeof step === "string").map((step) => DATA.feet[step] || named(step)).join(", "));
const valueWords = (what, entry) => {
  if (isEmpty(what)) return words("cleared");
  if (what === EMPTY_CHOICE) return words("seen_not_measured");
  if (typeof what === "boolean") return words(what ? "yes" : "no");
  if (Array.isArray(what)) return what.map((one) => (typeof one === "string" ? named(one, entry.key) : groupWords(one))).join(", ");
  if (typeof what === "object") return groupWords(what);
  if (DATA.inches && isSize(what) && (byInches(entry) || typeof what === "string")) return `${sized({ unit: "mm", ...entry }, what)} ${named("mm")}`;
  return typeof what === "number" ? `${figure(what)}${entry.unit === "mm" ? " mm" : entry.unit === "degrees" ? "°" : ""}` : named(what, entry.key);
};

// A thing that was only begun holds nothing yet.
const groupWords = (group) => {
  const inside = Object.entries(group).filter(([key]) => key !== "begun").map(([key, one]) => valueWords(one, { key }));
  return inside.length ? inside.join(" ") : words("begun");
};
const groupSheet = (draft, foot, entry, path, title) => sheet(title, (again) => [
  h("p", { class: "quiet" }, entry.help || ""),
  (entry.kind === "group" ? entry.fields : [entry]).map((inner) => field(draft, foot, inner, entry.kind === "group" ? [...path, inner.key] : path, again)),
]);
// What a zone of the wall may show; a length or a depth may also be seen and not measured.
const zoneSheet = (draft, foot, place) => {
  const wall = DATA.foot.find((entry) => entry.key === "wall");
  if (wall.keys.includes(place)) {
    const seen = (entry) => (entry.kind === "group" ? { ...entry, fields: entry.fields.map(seen) } : { ...entry, seen: entry.kind === "number" });
    return groupSheet(draft, foot, seen({ ...wall.of, key: place, help: "" }), ["wall", place], placeTitle(foot, place));
  }
  return groupSheet(draft, foot, DATA.foot.find((one) => one.key === place), [place], placeTitle(foot, place));
};
const placeTitle = (foot, place) => `${capital(DATA.feet[foot])}, ${named(place)}`;
