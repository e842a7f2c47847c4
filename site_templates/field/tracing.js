// A photograph of a foot measured by a few taps: how far each one is, and the screen on which it is done. The points lie
// beside the photograph on the device; the tracing stands in the visit's record, and names the photograph by its id.
const TRACED_VIEWS = Object.keys(DATA.tracing.takes);
const tracingsOf = (draft, foot) => at(draft.record, ["feet", foot, "tracings"]) || [];
const setTracings = (draft, foot, tracings) => change(draft, ["feet", foot, "tracings"], tracings);

// begun: points that do not stand in the record, or stand there otherwise.
const tracingState = (draft, photo) => {
  const found = memory.tracings.get(photo.id), points = found?.draft.points || {};
  const tapped = Object.values(points).some((line) => line.length);
  const stands = tracingsOf(draft, photo.foot).some((one) => one.file === photo.id);
  if (stands && (!tapped || found.told === JSON.stringify(points))) return "traced";
  return tapped ? "begun" : "none";
};
const begunTracings = (visits) => visits.flatMap((draft) => draft.photos.map((id) => memory.photos.get(id)).filter((photo) => photo && tracingState(draft, photo) === "begun"));

const traceButton = (draft, photo) => TRACED_VIEWS.includes(photo.view) && button(words(`tracing_${tracingState(draft, photo)}`), `trace-${photo.id}`, () => go("trace", draft.id, photo.id), { class: "trace" });
// Tracings whose photograph was taken out, or is lost.
const tracedWithoutPicture = (draft, foot) => tracingsOf(draft, foot).filter((one) => !memory.photos.has(one.file)).map((one) => h("div", { class: "note" },
  words("traced_no_picture", { view: named(`view_${one.view}`), moment: words(`${one.moment}_trim`) }), " ",
  button(words("take_out"), `gone-${one.file}`, () => setTracings(draft, foot, tracingsOf(draft, foot).filter((other) => other !== one)).then(render), { class: "plain" })));

const holdSheet = (view) => {
  const { steps, words: told } = DATA.tracing;
  const drawing = h("svg", { class: "drawing", viewBox: "0 0 200 120", "aria-hidden": "true" }, steps.camera[view].map(([kind, path]) => h("path", { class: kind, d: path })));
  sheet(told.camera, () => [h("div", { class: "hold" }, drawing), h("p", {}, told.camera_how[view]), h("p", {}, told.camera_safe)]);
};

screens.trace = (id, photoId) => {
  const draft = draftOf(id), photo = memory.photos.get(photoId);
  if (!draft || !photo || !TRACED_VIEWS.includes(photo.view)) return lost();
  bar();
  // What is said of the last one would cover buttons of this.
  document.getElementById("toast")?.remove();
  const root = h("div", { id: "trace" });
  openTracing(draft, photo, root);
  return root;
};
const openTracing = async (draft, photo, root) => {
  const picture = new Image();
  picture.src = pictureOf(photo);
  const [seen, sum] = await Promise.all([picture.decode().then(() => true, () => false), sumOf(photo.bytes)]);
  if (!seen) { toast(words("picture_lost")); return leaveTracing(draft, photo); }
  const { view, foot, moment, width, height } = photo;
  const data = { ...DATA.tracing, view, foot, moment, named: DATA.feet[foot], size: [width, height], earlier: [], changed: sum !== (memory.tracings.get(photo.id)?.sum ?? photo.sha256) };
  globalThis.tracing = traceScreen(root, data, picture, tracingStore(photo, sum), (told) => putTracing(draft, photo, sum, told), () => leaveTracing(draft, photo));
  root.dataset.ready = "yes";
};
const leaveTracing = (draft, photo) => {
  addEventListener("hashchange", () => document.querySelector(`[data-key="trace-${photo.id}"]`)?.scrollIntoView({ block: "center" }), { once: true });
  location.replace(`#/foot/${draft.id}/${photo.foot}`);
};
const tracingStore = (photo, sum) => ({
  read: () => memory.tracings.get(photo.id)?.draft || null,
  write: (draft) => {
    if (draft.length !== memory.meta.get("rule_length")) keep("meta", "rule_length", draft.length);
    return keep("tracings", photo.id, { ...memory.tracings.get(photo.id), sum, draft });
  },
  length: () => memory.meta.get("rule_length") || 0,
  clear: () => {},
});
const putTracing = async (draft, photo, sum, told) => {
  const made = tracingEntry(photo, sum, told), before = tracingsOf(draft, photo.foot);
  const others = before.filter((one) => one.file !== photo.id);
  const kept = await setTracings(draft, photo.foot, others.length < before.length ? before.map((one) => (one.file === photo.id ? made : one)) : [...before, made]);
  const points = memory.tracings.get(photo.id);
  await keep("tracings", photo.id, { ...points, told: JSON.stringify(points.draft.points) });
  toast(words(kept ? "traced_kept" : "full"));
  return { written: true, problems: [], figures: {} };
};
// As it is typed in a visit's file.
const tracingEntry = (photo, sum, { scale, drawn, model, ridge, hand_error: hand, hand_errors: hands, landmarks }) => {
  const single = (name, points) => (DATA.tracing.takes[photo.view][name][1] && points.length === 1 ? points[0] : points);
  const told = { sha256: sum, scale, drawn: drawn === "smooth" && drawn, model, ridge, hand_error: hand, hand_errors: hands };
  return {
    view: photo.view, moment: photo.moment, file: photo.id, image: [photo.width, photo.height],
    ...Object.fromEntries(Object.entries(told).filter(([, value]) => value)),
    ...Object.fromEntries(Object.entries(landmarks).map(([name, points]) => [name, single(name, points)])),
  };
};
