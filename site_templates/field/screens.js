// What stands on the page: today's horses, a horse as four feet, one foot, and what is handed over.
const go = (...parts) => { location.hash = `#/${parts.join("/")}`; };
const bar = (...inside) => document.getElementById("bar").replaceChildren(...inside.filter(Boolean));
const title = (text, sub) => [h("h1", { tabindex: -1, dir: "auto" }, text), sub && h("p", { class: "quiet" }, sub)];

const screens = {
  today() {
    const round = DATA.rounds.find((one) => one.day === today());
    const first = round ? round.horses : [];
    const waiting = waitingDrafts();
    bar(button(words("settings"), "settings", () => go("settings")), button(waiting.length ? words("hand_over", { count: counted(waiting.length, "visit") }) : words("nothing_waiting"), "hand", () => go("hand"), { class: "go wide", disabled: waiting.length === 0 }));
    const ordered = DATA.stables.map((stable) => ({ ...stable, horses: [...stable.horses].sort(byDue(first)) })).sort((one, other) => firstPlace(other, first) - firstPlace(one, first));
    return [
      title(words("today"), words("made", { day: spokenDay(DATA.made), practice: DATA.practice })),
      stale(), notices(),
      round && h("p", { class: "note" }, words("round_today", { count: counted(first.length, "horse") })),
      ofOtherDays().length > 0 && [h("h2", {}, words("other_days")), ofOtherDays().map((draft) => row(nameOf(draft), spokenDay(draft.date), progress(draft), `draft-${draft.id}`, () => go("horse", draft.id)))],
      ordered.map((stable) => [h("h2", { dir: "auto" }, stable.name), stable.horses.map((horse) => horseRow(horse, first))]),
      drafts().filter((draft) => !horseOf(draft)).map((draft) => row(nameOf(draft), words("not_in_list"), progress(draft), `draft-${draft.id}`, () => go("horse", draft.id))),
      h("h2", {}, words("other_horse")),
      newHorseForm(),
    ];
  },
  horse(id) {
    const draft = draftOf(id);
    if (!draft) return lost();
    const horse = horseOf(draft);
    bar(button(words("horses"), "back", () => go("")), button(words("take_back"), "undo", () => undo(draft), { disabled: draft.back.length === 0 }), forward(draft));
    return [
      keptLine(draft), title(nameOf(draft), [draft.date !== today() && words("visit_of", { day: spokenDay(draft.date) }), horse?.about, horse?.last && words("last_visit", { day: spokenDay(horse.last) })].filter(Boolean).join(" · ")),
      cautionList(horse?.cautions || []),
      horse?.plan && h("p", { class: "note" }, words("vet_plan", { words: horse.plan })),
      h("div", { class: "four" }, ["left_fore", "right_fore", "left_hind", "right_hind"].map((foot) => footTile(draft, foot))),
      h("h2", {}, words("back_in")), weeksField(draft, horse),
      h("h2", {}, words("done_all")), doneOnAll(draft),
      h("h2", {}, words("care")), careField(draft, horse),
      h("h2", {}, words("the_horse")), h("div", { class: "chips" }, visitEntries().map((entry) => entryChip(draft, null, entry))),
      endsField(draft, horse),
      textField({ key: "note", help: "" }, draft.record.note, "note", (what) => enter(draft, ["note"], what, "keys", { kind: "text" })),
      textField({ key: "private_note", help: "" }, draft.record.private_note, "private_note", (what) => enter(draft, ["private_note"], what, "keys", { kind: "text" })),
      !draft.handed && dayField(draft),
      button(words("throw_away"), "throw", () => throwAway(draft), { class: "plain" }),
    ];
  },
  foot(id, foot) {
    const draft = draftOf(id);
    if (!draft || !DATA.feet[foot]) return lost();
    const next = AROUND[AROUND.indexOf(foot) + 1];
    bar(button(words("feet"), "back", () => go("horse", id)), button(words("take_back"), "undo", () => undo(draft), { disabled: draft.back.length === 0 }), next ? button(words("foot_next", { foot: DATA.feet[next] }), "next-foot", () => go("foot", id, next), { class: "go wide" }) : button(words("all_feet"), "next-foot", () => go("horse", id), { class: "go wide" }));
    const moment = memory.meta.get("moment") || "after";
    const horse = horseOf(draft);
    return [
      keptLine(draft), title(capital(DATA.feet[foot]), nameOf(draft)),
      cautionList((horse?.cautions || []).filter((one) => one.foot === foot || !one.foot)),
      h("div", { class: "two", role: "group", "aria-label": words("moment") }, ["before", "after"].map((one) => choice(words(`${one}_trim`), moment === one, `moment-${one}`, () => { memory.meta.set("moment", one); keep("meta", "moment", one); render(); }))),
      measureFields(draft, foot, moment),
      h("h2", {}, words("found")), soleMap(draft, foot),
      h("div", { class: "chips" }, otherEntries().map((entry) => entryChip(draft, foot, entry)), moreMeasures(draft, foot)),
      h("h2", {}, words("done")), doneField(draft, foot),
      h("h2", {}, words("photographs")), photoPart(draft, foot),
      textField({ key: "note", help: "" }, at(draft.record, ["feet", foot, "note"]), `${foot}.note`, (what) => enter(draft, ["feet", foot, "note"], what, "keys", { kind: "text" })),
    ];
  },
  settings() {
    bar(button(words("horses"), "back", () => go("")));
    const toggle = (name, label) => choice(words(label), memory.meta.get(name), name, () => { const on = !memory.meta.get(name); memory.meta.set(name, on); keep("meta", name, on); look(); render(); });
    return [title(words("settings")), h("div", { class: "chips" }, toggle("covered", "cover_last"), toggle("left_handed", "left_handed")), h("p", { class: "quiet" }, words("covered_why")), h("p", {}, memory.meta.get("persisted") ? words("persisted") : words("not_persisted")), h("p", {}, words(memory.meta.get("page_kept") ? "page_kept" : "page_not_kept")), h("p", {}, words("kept_here")), DATA.sealed && h("p", {}, words("sealed_page")), button(words("forget"), "forget", forget, { class: "clay" })];
  },
};

// To the first foot that has no measure yet; once all have, on to the next horse.
const forward = (draft) => {
  const foot = AROUND.find((one) => !measured(draft, one));
  return button(foot ? words("foot_next", { foot: DATA.feet[foot] }) : words("next_horse"), "first-foot", () => (foot ? go("foot", draft.id, foot) : go("")), { class: "go wide" });
};
const row = (name, sub, end, key, work) => h("button", { type: "button", class: "row", "data-key": key, onclick: pressed(key, work) }, h("span", {}, h("b", { dir: "auto" }, name), h("small", {}, sub)), h("span", { class: "end" }, end));
const horseRow = (horse, first) => {
  const draft = openDraft(horse.id);
  const call = horse.cautions.filter((one) => one.level.startsWith("call")).length;
  const told = [first.includes(horse.id) && words("on_round"), horse.last ? words("last_visit", { day: spokenDay(horse.last) }) : words("first_visit"), horse.due && dueWords(horse.due), call && counted(call, "caution")].filter(Boolean).join(" · ");
  return row(horse.name, told, draft ? progress(draft) : "", `horse-${horse.id}`, async () => { const made = draft || beginDraft(horse.id); if (!draft) await saved(made); go("horse", made.id); });
};
const dueWords = (due) => {
  if (today() > due.latest) return counted(daysBetween(due.latest, today()), "overdue");
  return today() > due.best ? words("due_until", { day: spokenDay(due.latest) }) : words("due", { day: spokenDay(due.best) });
};
const byDue = (first) => (one, other) => Number(first.includes(other.id)) - Number(first.includes(one.id)) || String(one.due?.best || "9").localeCompare(String(other.due?.best || "9")) || one.name.localeCompare(other.name);
const firstPlace = (stable, first) => stable.horses.filter((horse) => first.includes(horse.id)).length;
const progress = (draft) => (draft.received ? words("received") : draft.handed && draft.handed.rev === draft.rev ? words("handed") : counted(AROUND.filter((foot) => measured(draft, foot)).length, "foot"));
const stale = () => (daysBetween(DATA.made, today()) > 10 ? h("p", { class: "warn" }, words("stale", { days: daysBetween(DATA.made, today()) })) : today() < DATA.made ? h("p", { class: "warn" }, words("clock_wrong", { day: spokenDay(today()) })) : null);
const notices = () => [notKept.size > 0 && h("p", { class: "warn", role: "alert" }, words("full_now")), memoryOnly && h("p", { class: "warn", role: "alert" }, words("memory_only")), memory.meta.get("full") && h("p", { class: "warn", role: "alert" }, words("full"))];
const lost = () => { bar(button(words("horses"), "back", () => go(""))); return [title(words("gone"))]; };
const keptLine = (draft) => h("p", { class: "kept", id: "kept" }, memoryOnly || notKept.has(draft.id) ? words("not_kept") : words("kept_at", { time: clock(draft.changed) }));
const showKept = (kept) => { const line = document.getElementById("kept"); if (line) line.textContent = kept ? words("kept_at", { time: clock(Date.now()) }) : words("not_kept"); if (!kept) toast(words("full")); };

const newHorseForm = () => h("form", { class: "more", onsubmit: async (event) => { event.preventDefault(); const form = event.target.elements; const name = form.name.value.trim(); if (!name) return; const draft = beginDraft(`${form.stable.value}/?`, { newHorse: name }); await saved(draft); go("horse", draft.id); } },
  h("select", { name: "stable", "aria-label": words("stable") }, DATA.stables.map((stable) => h("option", { value: stable.id }, stable.name))),
  h("input", { name: "name", "aria-label": words("name"), placeholder: words("name"), dir: "auto" }), h("button", {}, words("begin")));

const cautionList = (cautions) => cautions.length > 0 && h("section", { class: "cautions" }, h("h2", {}, words("look_first")), cautions.map((one) => h("div", { class: one.level.startsWith("call") ? "call" : "" }, h("b", {}, `${one.told}${one.where ? `, ${one.where}` : ""}`), h("p", {}, one.seen), h("p", {}, [one.meanwhile, one.not].filter(Boolean).join(" ")))));

const footTile = (draft, foot) => {
  const record = at(draft.record, ["feet", foot]);
  const lines = mainMeasures(foot, draft, []).map(([entry, path, label]) => { const value = at(record || {}, ["after", ...path]) ?? at(record || {}, ["before", ...path]); const last = lastOf(draft, foot, ["after", ...path]) || lastOf(draft, foot, ["before", ...path]); return [label, sized(entry, value), memory.meta.get("covered") ? "" : sized(entry, last?.[0]) ?? ""]; });
  const found = foundWords(record);
  return h("button", { type: "button", class: measured(draft, foot) ? "tile done" : "tile", "data-key": `tile-${foot}`, onclick: pressed(foot, () => go("foot", draft.id, foot)) },
    h("h3", {}, capital(DATA.feet[foot])),
    h("span", { class: "values" }, lines.map(([label, value, last]) => [h("i", {}, label), h("b", {}, value ?? "–"), h("i", {}, last)])),
    found && h("span", { class: "found" }, found));
};
const foundWords = (record) => {
  if (!record) return "";
  const walls = Object.entries(record.wall || {}).map(([zone, found]) => `${Object.keys(found).map((key) => named(key)).join(", ")}: ${named(zone)}`);
  const others = Object.keys(record).filter((key) => !["before", "after", "wall", "done", "note", "tracings"].includes(key)).map((key) => named(key));
  const traced = [...new Set((record.tracings || []).map((one) => named(`view_${one.view}`)))];
  return [...walls, ...others, ...(traced.length ? [words("traced_views", { views: traced.join(", ") })] : []), ...(record.done || [])].join("; ");
};
// The measures that are shown at once: those this horse had before, else length and heels; the others a tap away.
const measureEntries = () => DATA.foot.find((entry) => entry.key === "after").fields;
const flatMeasures = () => measureEntries().flatMap((entry) => (entry.kind === "group" ? entry.fields.map((inner) => [{ ...inner, key: `${entry.key}_${inner.key}` }, [entry.key, inner.key], capital(named(`${entry.key}_${inner.key}`))]) : [[entry, [entry.key], capital(named(entry.key))]]));
const FIRST_MEASURES = ["toe_length", "heel_height.medial", "heel_height.lateral"];
const mainMeasures = (foot, draft, moments = ["before", "after"]) => {
  const had = (path) => moments.some((moment) => lastOf(draft, foot, [moment, ...path]));
  const set = (path) => (moments.length ? moments : ["before", "after"]).some((moment) => at(draft.record, ["feet", foot, moment, ...path]) !== undefined);
  return flatMeasures().filter(([, path]) => had(path) || set(path) || FIRST_MEASURES.includes(path.join(".")));
};
const measureFields = (draft, foot, moment) => {
  const shown = memory.more === `${draft.id}${foot}` ? flatMeasures() : mainMeasures(foot, draft, [moment]);
  return shown.map(([entry, path]) => field(draft, foot, entry, [moment, ...path], render));
};
const moreMeasures = (draft, foot) => button(words("more_measures"), "more-measures", () => { memory.more = `${draft.id}${foot}`; render(); window.scrollTo(0, 0); });
const IN_MAP = ["wall", "frog", "sole"];
const otherEntries = () => DATA.foot.filter((entry) => !["before", "after", "done", "note", ...IN_MAP].includes(entry.key));
const visitEntries = () => DATA.visit.filter((entry) => !["care", "care_ends", "next", "note", "private_note", "resolved"].includes(entry.key));
const entryChip = (draft, foot, entry) => {
  const value = at(draft.record, foot ? ["feet", foot, entry.key] : [entry.key]);
  const open = () => groupSheet(draft, foot, entry, [entry.key], foot ? placeTitle(foot, entry.key) : capital(named(entry.key)));
  return choice(isEmpty(value) ? capital(named(entry.key)) : `${capital(named(entry.key))}: ${valueWords(value, entry)}`, !isEmpty(value), `chip-${foot || ""}-${entry.key}`, open);
};

// A longer word stands in smaller letters, so that it stays inside its zone.
const LONG_WORD = 6;
const soleMap = (draft, foot) => {
  const map = DATA.soles[foot.endsWith("fore") ? "fore" : "hind"];
  const left = foot.startsWith("left");
  const x = (place) => (left ? place : map.width - place);
  const zone = (form) => {
    const path = IN_MAP.includes(form.place) ? [form.place] : ["wall", form.place];
    const value = at(draft.record, ["feet", foot, ...path]);
    const told = isEmpty(value) ? "" : typeof value === "object" ? Object.entries(value).map(([key, one]) => `${named(key)} ${valueWords(one, { key })}`).join(", ") : String(value);
    const open = pressed(form.place, () => zoneSheet(draft, foot, form.place));
    return h("g", { role: "button", tabindex: 0, class: told ? "on" : "", "data-key": `zone-${form.place}`, "aria-label": `${named(form.place)}${told ? `: ${told}` : ""}`, onclick: open, onkeydown: (event) => { if (event.key === "Enter" || event.key === " ") { event.preventDefault(); open(); } } },
      h("path", { d: form.path, transform: left ? undefined : `matrix(-1 0 0 1 ${map.width} 0)` }),
      h("text", { x: x(form.at[0]), y: form.at[1], class: !told && named(`short_${form.place}`).length > LONG_WORD ? "long" : undefined }, told ? "●" : named(`short_${form.place}`)));
  };
  return h("svg", { class: "sole", viewBox: `-4 -6 ${map.width + 8} ${map.height}`, role: "group", "aria-label": words("sole_map", { foot: DATA.feet[foot] }) },
    map.forms.map(zone),
    h("text", { class: "side", x: x(map.width - 2), y: 4, "text-anchor": left ? "end" : "start" }, words("outer")),
    h("text", { class: "side", x: x(2), y: 4, "text-anchor": left ? "start" : "end" }, words("inner")));
};

const SHOWN_DONE = 5;
const doneField = (draft, foot) => {
  const before = horseOf(draft)?.feet[foot]?.done || [];
  const value = at(draft.record, ["feet", foot, "done"]) || [];
  const entry = DATA.foot.find((one) => one.key === "done");
  return choicesField({ ...entry, untitled: true }, [...new Set([...value, ...before, ...DATA.done])].slice(0, Math.max(SHOWN_DONE, value.length)), value, `${foot}.done`, (what, how) => enter(draft, ["feet", foot, "done"], what, how, entry).then(render), true);
};
// What was done alike on all feet that were looked at, or on all four while none was: one tap instead of four.
const doneOnAll = (draft) => {
  const seen = AROUND.filter((foot) => at(draft.record, ["feet", foot]) !== undefined);
  const feet = seen.length ? seen : AROUND;
  const has = (word) => feet.every((foot) => (at(draft.record, ["feet", foot, "done"]) || []).includes(word));
  const without = (foot, word) => (at(draft.record, ["feet", foot, "done"]) || []).filter((one) => one !== word);
  const set = (word) => {
    const on = has(word);
    const all = feet.reduce((record, foot) => withAt(record, ["feet", foot, "done"], on ? without(foot, word) : [...without(foot, word), word]), draft.record);
    return enter(draft, ["feet"], all.feet, "keys", { kind: "list", key: "done", word: `${named(word)}${on ? ` (${words("cleared")})` : ""}` }).then(render);
  };
  return h("div", { class: "chips", role: "group", "aria-label": words("done_all") }, DATA.done.slice(0, SHOWN_DONE).map((word) => choice(capital(named(word)), has(word), `all-done-${word}`, () => set(word))));
};
const weeksField = (draft, horse) => {
  const value = at(draft.record, ["next", "weeks"]);
  const entry = DATA.visit.find((one) => one.key === "next").fields.find((one) => one.key === "weeks");
  const set = (what, how) => enter(draft, ["next"], what === undefined ? undefined : { ...(draft.record.next?.reason ? { reason: draft.record.next.reason } : {}), weeks: what }, how, entry).then(render);
  const usual = [4, 5, 6, 7, 8, 10];
  const shown = [...new Set([...usual, ...(typeof value === "number" ? [value] : [])])].sort((one, other) => one - other);
  return [h("div", { class: "chips", role: "group", "aria-label": words("back_in") }, shown.map((weeks) => choice(counted(weeks, "week"), value === weeks, `weeks-${weeks}`, () => set(value === weeks ? undefined : weeks, "row"), { class: horse?.weeks === weeks ? "was" : "" })), button(words("keys"), "weeks-keys", () => keypad(entry, value, undefined, set))), nextMore(draft)];
};
// A day in place of the weeks, and why then.
const nextMore = (draft) => {
  const next = draft.record.next || {};
  const { fields } = DATA.visit.find((one) => one.key === "next");
  const [day, reason] = ["date", "reason"].map((key) => fields.find((one) => one.key === key));
  const setDay = (event) => { const { weeks: _, ...rest } = next; return enter(draft, ["next"], event.target.value ? { ...rest, date: event.target.value } : undefined, "keys", day).then(render); };
  return h("details", { open: Boolean(next.date || next.reason) }, h("summary", {}, words("next_more")),
    h("label", { class: "field" }, words("next_day"), h("input", { type: "date", value: next.date || "", min: draft.date, "data-key": "next.date", onchange: setDay })),
    textField({ ...reason, key: "next_reason" }, next.reason, "next.reason", (what) => enter(draft, ["next", "reason"], what, "keys", { kind: "text" })));
};
// A visit that is written down later has the day it was on; once it left, the computer knows it by that day.
const dayField = (draft) => {
  const setDay = (event) => { if (event.target.value && event.target.validity.valid) draft.date = event.target.value; return saved(draft).then(showKept).then(render); };
  return h("details", {}, h("summary", {}, words("another_day")), h("label", { class: "field" }, words("day_of_visit"), h("input", { type: "date", value: draft.date, max: today(), "data-key": "date", onchange: setDay })));
};
// Care notes replace the earlier ones: so the first tap begins with those that are in force.
const careField = (draft, horse) => {
  const inForce = (horse?.care || []).map((one) => one.name);
  const value = draft.record.care || (draft.record.care_ends ? [] : null);
  const now = value || inForce;
  const set = (names) => change(draft, ["care"], names.length ? names : undefined, "keys").then(() => change(draft, ["care_ends"], names.length ? undefined : true, "keys")).then((kept) => { toast(names.length ? names.map((name) => DATA.care[name] || name).join("; ") : words("care_ended"), () => takeBack(draft).then(() => undo(draft))); showKept(kept); render(); });
  const all = [...new Set([...inForce, ...Object.keys(DATA.care)])];
  const chip = (name) => choice(DATA.care[name] || name, now.includes(name), `care-${name}`, () => set(now.includes(name) ? now.filter((one) => one !== name) : [...now, name]));
  return [h("p", { class: "quiet" }, value ? words("care_new") : inForce.length ? words("care_in_force") : words("care_none")), h("div", { class: "chips" }, now.map(chip)), h("details", {}, h("summary", {}, words("care_all")), h("div", { class: "chips" }, all.filter((name) => !now.includes(name)).map(chip)))];
};
const endsField = (draft, horse) => {
  const open = horse?.cautions || [];
  if (open.length === 0) return null;
  const ended = draft.record.resolved || [];
  const is = (one) => (end) => end.caution === one.rule && (end.foot || null) === (one.foot || null);
  const toggle = (one) => enter(draft, ["resolved"], ended.some(is(one)) ? ended.filter((end) => !is(one)(end)) : [...ended, { caution: one.rule, ...(one.foot ? { foot: one.foot } : {}), date: draft.date, by: DATA.trimmer }], "keys", { kind: "list" }).then(render);
  return h("details", {}, h("summary", {}, words("caution_over")), h("p", { class: "quiet" }, words("caution_over_why")), h("div", { class: "chips" }, open.map((one) => choice(`${one.seen}`, ended.some(is(one)), `end-${one.rule}-${one.foot}`, () => toggle(one)))));
};

const throwAway = async (draft) => {
  if (!window.confirm(words("throw_away_sure", { name: nameOf(draft) }))) return;
  for (const photo of draft.photos) await dropPhoto(photo);
  await drop("drafts", draft.id);
  go("");
};
const forget = async () => {
  const waiting = waitingDrafts().length;
  if (!window.confirm(waiting ? words("forget_sure_waiting", { count: counted(waiting, "visit") }) : words("forget_sure"))) return;
  await forgetDevice();
  location.hash = "";
  location.reload();
};
