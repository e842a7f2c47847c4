// Photographs of a foot, made small on the device.
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
    const photo = { id: newId(), draft: draft.id, foot, sha256: await sumOf(made.bytes), view: memory.meta.get("view") || "sole", moment: memory.meta.get("moment") || "after", taken: file.lastModified || Date.now(), ...made };
    const kept = await keep("photos", photo.id, photo);
    draft.photos.push(photo.id);
    await saved(draft);
    if (!kept) toast(words("full"));
  } catch {
    toast(words("no_picture", { name: file.name }));
  }
  render();
};
// Empty where the browser can tell none.
const sumOf = async (bytes) => (self.crypto?.subtle ? hex(await sha256(bytes)) : "");
const removePhoto = async (draft, id) => {
  const state = tracingState(draft, memory.photos.get(id));
  if (state !== "none" && !window.confirm(words(state === "begun" ? "take_out_begun" : "take_out_traced"))) return;
  draft.photos = draft.photos.filter((one) => one !== id);
  await saved(draft);
  await dropPhoto(id);
  render();
};
const dropPhoto = async (id) => {
  await drop("photos", id);
  await drop("tracings", id);
};
const photoPart = (draft, foot) => {
  const view = memory.meta.get("view") || "sole";
  const own = draft.photos.map((id) => memory.photos.get(id)).filter((photo) => photo && photo.foot === foot);
  return [
    h("div", { class: "chips", role: "group", "aria-label": words("view") }, ["sole", "side", "front", "heel", "whole"].map((one) => choice(capital(named(`view_${one}`)), view === one, `view-${one}`, () => { memory.meta.set("view", one); keep("meta", "view", one); render(); }))),
    h("div", { class: "two" }, pictureInput(draft, foot, "camera", words("photograph", { view: named(`view_${view}`) }), { capture: "environment" }), pictureInput(draft, foot, "album", words("album"))),
    TRACED_VIEWS.includes(view) && button(words("how_to_hold"), "hold", () => holdSheet(view), { class: "plain" }),
    own.length > 0 && h("div", { class: "pictures" }, own.map((photo) => h("figure", {}, h("img", { alt: `${named(`view_${photo.view}`)}, ${words(`${photo.moment}_trim`)}`, src: pictureOf(photo) }), h("figcaption", {}, named(`view_${photo.view}`), button(words("take_out"), `photo-${photo.id}`, () => removePhoto(draft, photo.id))), traceButton(draft, photo)))),
    tracedWithoutPicture(draft, foot),
    h("p", { class: "quiet" }, words("original_stays")),
  ];
};
const pictureInput = (draft, foot, key, label, props = {}) => h("label", { class: "camera" }, label,
  h("input", { type: "file", accept: "image/*", multiple: true, "data-key": key, ...props, onchange: async (event) => { for (const file of [...event.target.files]) await addPhoto(draft, foot, file); } }));
const shownPictures = new Map();
const pictureOf = (photo) => {
  if (!shownPictures.has(photo.id)) shownPictures.set(photo.id, URL.createObjectURL(new Blob([photo.bytes], { type: "image/jpeg" })));
  return shownPictures.get(photo.id);
};
