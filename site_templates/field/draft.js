// A visit being written: its record holds what the file will hold, under the same names. Every change can be taken back.
const MOST_STEPS_BACK = 400;
const UNLIKELY_STEP = 15;
const newId = () => [...crypto.getRandomValues(new Uint8Array(9))].map((byte) => "abcdefghijkmnpqrstuvwxyz23456789"[byte % 32]).join("");

const drafts = () => [...memory.drafts.values()].sort((one, other) => one.began - other.began);
const draftOf = (id) => memory.drafts.get(id);
const horses = () => DATA.stables.flatMap((stable) => stable.horses.map((horse) => ({ ...horse, stable })));
const horseOf = (draft) => horses().find((horse) => horse.id === draft.horse) || null;
const nameOf = (draft) => (horseOf(draft) || {}).name || draft.newHorse || draft.horse;
// A horse that was only opened is no visit; one that left the phone and was emptied since is.
const hasEntry = (draft) => Boolean(draft.newHorse || draft.handed || draft.photos.length || !isEmpty(draft.record));
const waitingDrafts = () => drafts().filter((draft) => !draft.received && hasEntry(draft));
const ofOtherDays = () => waitingDrafts().filter((draft) => horseOf(draft) && draft.date !== today());
const openDraft = (horse) => drafts().find((draft) => draft.horse === horse && draft.date === today());

const beginDraft = (horse, more = {}) => {
  const now = Date.now();
  return { id: newId(), rev: 1, horse, date: today(), began: now, changed: now, record: {}, how: {}, back: [], photos: [], ...more };
};

const at = (record, path) => path.reduce((value, step) => (value === undefined || value === null ? undefined : value[step]), record);
const isEmpty = (value) => value === undefined || value === null || value === "" || (typeof value === "object" && Object.keys(value).length === 0);

// A copy of `value` with `what` at `path`; groups and lists that end up empty are taken out.
const withAt = (value, path, what) => {
  if (path.length === 0) return what;
  const [step, ...rest] = path;
  const list = typeof step === "number";
  const copy = list ? [...(value || [])] : { ...(value || {}) };
  const inner = withAt(copy[step], rest, what);
  if (!isEmpty(inner)) copy[step] = inner;
  else if (list) copy.splice(step, 1);
  else delete copy[step];
  return copy;
};

const change = async (draft, path, what, how) => {
  const before = at(draft.record, path);
  draft.back.push({ path, before: before === undefined ? null : before, how: draft.how[path.join(".")] || null });
  draft.back = draft.back.slice(-MOST_STEPS_BACK);
  draft.record = withAt(draft.record, path, what);
  note(draft, path, how);
  return saved(draft);
};
const note = (draft, path, how) => {
  if (how) draft.how[path.join(".")] = how;
  else delete draft.how[path.join(".")];
};
const takeBack = async (draft) => {
  const step = draft.back.pop();
  if (!step) return null;
  draft.record = withAt(draft.record, step.path, step.before);
  note(draft, step.path, step.how);
  await saved(draft);
  return step;
};
// What the device had no room for: it is on the page, and can be handed over from there.
const notKept = new Set();
const saved = async (draft) => {
  draft.changed = Date.now();
  // What left the phone and is changed afterwards leaves it again, under a higher number, whatever the computer has by then.
  if (draft.handed && draft.handed.rev === draft.rev) {
    draft.rev += 1;
    delete draft.received;
  }
  const kept = await keep("drafts", draft.id, draft);
  if (kept) keepSpare();
  notKept[kept ? "delete" : "add"](draft.id);
  return kept;
};

const lastOf = (draft, foot, path) => {
  const horse = horseOf(draft);
  return horse && horse.feet[foot] ? horse.feet[foot].last[path.join(".")] : undefined;
};
const unlikely = (entry, value, last) => {
  if (entry.likely && (value < entry.likely[0] || value > entry.likely[1])) return words("unlikely_range", { low: sized(entry, entry.likely[0]), high: sized(entry, entry.likely[1]) });
  if (last && Math.abs(value - last[0]) > UNLIKELY_STEP) return words("unlikely_step", { difference: sized(entry, Math.round(Math.abs(value - last[0]) * 10) / 10) });
  return "";
};
const impossible = (entry, value) => (entry.possible && (value < entry.possible[0] || value > entry.possible[1]) ? words("impossible", { low: sized(entry, entry.possible[0]), high: sized(entry, entry.possible[1]), unit: named(entry.unit || "") }) : "");

// Once around the horse, as one walks: left fore, left hind, right hind, right fore.
const AROUND = ["left_fore", "left_hind", "right_hind", "right_fore"];
const measured = (draft, foot) => ["before", "after", "tracings"].some((moment) => !isEmpty(at(draft.record, ["feet", foot, moment])));
