// The file that leaves the phone, and the word by which the computer says that it has it.
// What stands in the file for a visit: the record as the visit's own file will hold it, and how each value came in.
const visitPart = (draft) => ({ kind: "visit", id: draft.id, rev: draft.rev, horse: draft.horse, name: nameOf(draft), date: draft.date, began: new Date(draft.began).toISOString(), changed: new Date(draft.changed).toISOString(), record: clean(draft.record), how: draft.how, photos: draft.photos.map(photoNamed) });
// Named with the visit too, so that a file that was cut short tells which of them are missing.
const photoNamed = (id) => { const { foot, view, moment } = memory.photos.get(id) || {}; return { id, foot, view, moment }; };
const clean = (value) => {
  if (Array.isArray(value)) return value.map(clean);
  if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).filter(([key]) => key !== "begun").map(([key, inner]) => [key, clean(inner)]));
  return value;
};
const photoPartOf = async (photo) => ({ kind: "photo", id: photo.id, visit: photo.draft, foot: photo.foot, view: photo.view, moment: photo.moment, taken: new Date(photo.taken).toISOString(), width: photo.width, height: photo.height, sha256: await sumOf(photo.bytes), jpeg: toBase64(photo.bytes) });

const buildFile = async (visits) => {
  const id = newId();
  const photos = [];
  for (const photo of visits.flatMap((draft) => draft.photos).map((one) => memory.photos.get(one)).filter(Boolean)) photos.push(await photoPartOf(photo));
  const head = { kind: "head", practice: DATA.practice, page: DATA.made, made: new Date().toISOString(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, visits: visits.length, photos: photos.length };
  const content = await fileOf(id, [head, ...visits.map(visitPart), ...photos, { kind: "end", visits: visits.length, photos: photos.length }]);
  return { id, name: `field-notes-${today()}-${id.slice(0, 4)}.txt`, content, visits, receipt: await receiptOf(id, visits) };
};

let ready = null;
screens.hand = () => {
  const waiting = waitingDrafts();
  const begun = begunTracings(waiting).length;
  const gone = drafts().filter((draft) => draft.received);
  if (!ready || ready.told !== tellOf(waiting)) prepare(waiting);
  const can = ready?.file && navigator.canShare?.({ files: [ready.file] });
  bar(button(words("horses"), "back", () => go("")), can && button(words("share"), "share", shareFile, { class: "go wide" }), ready?.file && button(words("save"), "save", saveFile, { class: can ? "" : "go wide" }));
  return [
    title(words("handing_over"), DATA.key ? words("sealed") : words("unsealed")),
    waiting.length === 0 && h("p", {}, words("nothing_waiting")),
    waiting.map((draft) => row(nameOf(draft), `${spokenDay(draft.date)} · ${counted(draft.photos.length, "photo")}`, progress(draft), `hand-${draft.id}`, () => go("horse", draft.id))),
    begun > 0 && h("p", { class: "note" }, counted(begun, "begun")),
    h("h2", {}, words("receipt")), h("p", { class: "quiet" }, words("receipt_why")),
    h("form", { class: "more", onsubmit: takeReceipt }, h("input", { name: "word", autocapitalize: "none", autocomplete: "off", "aria-label": words("receipt"), "data-key": "receipt" }), h("button", {}, words("enter"))),
    gone.length > 0 && [h("h2", {}, words("at_the_computer")), gone.map((draft) => row(nameOf(draft), spokenDay(draft.date), words("received"), `gone-${draft.id}`, () => go("horse", draft.id))), button(words("clear_received"), "clear", clearReceived, { class: "plain" })],
  ];
};
const tellOf = (visits) => visits.map((draft) => `${draft.id}.${draft.rev}.${draft.changed}`).join(" ");
// Built before the tap that shares: the permission that a tap gives does not last.
const prepare = async (visits) => {
  const told = tellOf(visits);
  ready = { told };
  if (visits.length === 0) return;
  const made = await buildFile(visits);
  // Something was entered while it was built, and a newer file is on its way.
  if (ready?.told !== told) return;
  ready = { ...made, told, file: new File([made.content], made.name, { type: "text/plain" }) };
  render();
};
const left = async () => {
  const files = memory.meta.get("files") || [];
  await keep("meta", "files", [...files, { id: ready.id, receipt: ready.receipt, at: Date.now(), visits: ready.visits.map((draft) => [draft.id, draft.rev]) }].slice(-20));
  for (const draft of ready.visits) {
    draft.handed = { file: ready.id, rev: draft.rev, at: Date.now() };
    await keep("drafts", draft.id, draft);
  }
  ready = { ...ready, told: tellOf(waitingDrafts()) };
  toast(words("left_phone"));
  render();
};
const shareFile = async () => {
  try {
    await navigator.share({ files: [ready.file], title: ready.name });
    await left();
  } catch (trouble) {
    if (trouble.name !== "AbortError") toast(words("share_failed"));
  }
};
const saveFile = async () => {
  const link = h("a", { href: URL.createObjectURL(ready.file), download: ready.name });
  document.body.append(link);
  link.click();
  link.remove();
  await left();
};
const takeReceipt = async (event) => {
  event.preventDefault();
  const typed = event.target.elements.word.value.trim().toLowerCase();
  const file = (memory.meta.get("files") || []).find((one) => one.receipt && one.receipt === typed);
  if (!file) return toast(words("receipt_wrong"));
  for (const [id, rev] of file.visits) {
    const draft = draftOf(id);
    if (!draft) continue;
    if (draft.rev === rev) draft.received = Date.now();
    await keep("drafts", id, draft);
  }
  ready = null;
  // While the box has the keyboard nothing on the page is drawn anew.
  event.target.elements.word.blur();
  toast(words("receipt_right"));
  return render();
};
const clearReceived = async () => {
  for (const draft of drafts().filter((one) => one.received)) {
    for (const photo of draft.photos) await dropPhoto(photo);
    await drop("drafts", draft.id);
  }
  render();
};
