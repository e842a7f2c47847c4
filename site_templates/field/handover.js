// Photographs, made small on the device; and the file that leaves it.
const LONGEST_SIDE = 1600;
const QUALITY = 0.82;

const smaller = async (file) => {
  const whole = await createImageBitmap(file);
  const share = Math.min(1, LONGEST_SIDE / Math.max(whole.width, whole.height));
  const size = [Math.max(1, Math.round(whole.width * share)), Math.max(1, Math.round(whole.height * share))];
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = size;
  canvas.getContext("2d").drawImage(whole, 0, 0, ...size);
  whole.close();
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  // A phone has few bytes for canvases and frees them late.
  canvas.width = canvas.height = 1;
  if (!blob) throw new Error("no picture");
  return { bytes: new Uint8Array(await blob.arrayBuffer()), width: size[0], height: size[1] };
};

const addPhoto = async (draft, foot, file) => {
  try {
    const made = await smaller(file);
    const photo = { id: newId(), draft: draft.id, foot, view: memory.meta.get("view") || "sole", moment: memory.meta.get("moment") || "after", taken: file.lastModified || Date.now(), ...made };
    const kept = await keep("photos", photo.id, photo);
    draft.photos.push(photo.id);
    await saved(draft);
    if (!kept) toast(words("full"));
  } catch {
    toast(words("no_picture", { name: file.name }));
  }
  render();
};
const removePhoto = async (draft, id) => {
  draft.photos = draft.photos.filter((one) => one !== id);
  await saved(draft);
  await drop("photos", id);
  render();
};
const photoPart = (draft, foot) => {
  const view = memory.meta.get("view") || "sole";
  const own = draft.photos.map((id) => memory.photos.get(id)).filter((photo) => photo && photo.foot === foot);
  return [
    h("div", { class: "chips", role: "group", "aria-label": words("view") }, ["sole", "side", "front", "heel", "whole"].map((one) => choice(capital(named(`view_${one}`)), view === one, `view-${one}`, () => { memory.meta.set("view", one); keep("meta", "view", one); render(); }))),
    h("label", { class: "camera" }, words("photograph", { view: named(`view_${view}`) }), h("input", { type: "file", accept: "image/*", capture: "environment", multiple: true, "data-key": "camera", onchange: async (event) => { for (const file of [...event.target.files]) await addPhoto(draft, foot, file); } })),
    own.length > 0 && h("div", { class: "pictures" }, own.map((photo) => h("figure", {}, h("img", { alt: `${named(`view_${photo.view}`)}, ${words(`${photo.moment}_trim`)}`, src: pictureOf(photo) }), h("figcaption", {}, named(`view_${photo.view}`), button(words("take_out"), `photo-${photo.id}`, () => removePhoto(draft, photo.id)))))),
    h("p", { class: "quiet" }, words("original_stays")),
  ];
};
const shownPictures = new Map();
const pictureOf = (photo) => {
  if (!shownPictures.has(photo.id)) shownPictures.set(photo.id, URL.createObjectURL(new Blob([photo.bytes], { type: "image/jpeg" })));
  return shownPictures.get(photo.id);
};

// What stands in the file for a visit: the record as the visit's own file will hold it, and how each value came in.
const visitPart = (draft) => ({ kind: "visit", id: draft.id, rev: draft.rev, horse: draft.horse, name: nameOf(draft), date: draft.date, began: new Date(draft.began).toISOString(), changed: new Date(draft.changed).toISOString(), record: clean(draft.record), how: draft.how, photos: draft.photos.map(photoNamed) });
// Named with the visit too, so that a file that was cut short tells which of them are missing.
const photoNamed = (id) => { const { foot, view, moment } = memory.photos.get(id) || {}; return { id, foot, view, moment }; };
const clean = (value) => {
  if (Array.isArray(value)) return value.map(clean);
  if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).filter(([key]) => key !== "begun").map(([key, inner]) => [key, clean(inner)]));
  return value;
};
const photoPartOf = async (photo) => ({ kind: "photo", id: photo.id, visit: photo.draft, foot: photo.foot, view: photo.view, moment: photo.moment, taken: new Date(photo.taken).toISOString(), width: photo.width, height: photo.height, sha256: self.crypto?.subtle ? hex(await sha256(photo.bytes)) : "", jpeg: toBase64(photo.bytes) });

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
  const gone = drafts().filter((draft) => draft.received);
  if (!ready || ready.told !== tellOf(waiting)) prepare(waiting);
  const can = ready?.file && navigator.canShare?.({ files: [ready.file] });
  bar(button(words("horses"), "back", () => go("")), can && button(words("share"), "share", shareFile, { class: "go wide" }), ready?.file && button(words("save"), "save", saveFile, { class: can ? "" : "go wide" }));
  return [
    title(words("handing_over"), DATA.key ? words("sealed") : words("unsealed")),
    waiting.length === 0 && h("p", {}, words("nothing_waiting")),
    waiting.map((draft) => row(nameOf(draft), `${spokenDay(draft.date)} · ${counted(draft.photos.length, "photo_one", "photo_several")}`, progress(draft), `hand-${draft.id}`, () => go("horse", draft.id))),
    h("h2", {}, words("receipt")), h("p", { class: "quiet" }, words("receipt_why")),
    h("form", { class: "more", onsubmit: takeReceipt }, h("input", { name: "word", autocapitalize: "none", autocomplete: "off", "aria-label": words("receipt"), "data-key": "receipt" }), h("button", {}, words("enter"))),
    gone.length > 0 && [h("h2", {}, words("at_the_computer")), gone.map((draft) => row(nameOf(draft), spokenDay(draft.date), words("received"), `gone-${draft.id}`, () => go("horse", draft.id))), button(words("clear_received"), "clear", clearReceived, { class: "plain" })],
  ];
};
const tellOf = (visits) => visits.map((draft) => `${draft.id}.${draft.rev}.${draft.changed}`).join(" ");
// Built before the tap that shares: the permission that a tap gives does not last.
const prepare = async (visits) => {
  ready = { told: tellOf(visits) };
  if (visits.length === 0) return;
  const made = await buildFile(visits);
  ready = { ...made, told: ready.told, file: new File([made.content], made.name, { type: "text/plain" }) };
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
  toast(words("receipt_right"));
  return render();
};
const clearReceived = async () => {
  for (const draft of drafts().filter((one) => one.received)) {
    for (const photo of draft.photos) await drop("photos", photo);
    await drop("drafts", draft.id);
  }
  render();
};
