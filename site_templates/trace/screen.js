// The tracing screen. data: as recordgen/site/trace/page.py makes it. picture: an image that is loaded. store: read(),
// write(draft) tells whether it was kept, length(), clear(). done(tracing): takes the tracing in, and tells {written,
// problems, figures}. leave: goes back to where the screen was opened from; without, it stands alone.
const traceScreen = (root, data, picture, store, done, leave = null) => {
  const table = data.words;
  const words = Object.assign((key, facts = {}) => Object.entries(facts).reduce((text, [name, value]) => text.replaceAll(`{${name}}`, value), table[key]), { table });
  const draft = traceDraft(data, store), view = traceView(data.size), sheets = traceSheets(root, data, draft, words);
  const { h, button } = sheets;
  const drawing = h("div", { className: "which" }), title = h("h1", {}), count = h("span", { className: "count" }), say = h("p", { className: "say", role: "status" }), live = h("dl", { className: "live" });
  const canvas = h("canvas", { tabIndex: 0, role: "application" }), bar = h("nav", { className: "bar" });
  root.replaceChildren(h("header", {}, drawing, h("div", { className: "told" }, title, say), live), canvas, bar);
  const paint = tracePaint(canvas, picture, view, draft);
  let message = draft.source, planned = false, figuresAt = 0;

  const mirrored = data.view !== "side" && data.foot.startsWith("right");
  // Seen from the side a foot may look either way; the drawing follows once a toe and a heel or the ground are there.
  const toeRight = () => {
    const [toe, heel, ground] = [["coronet_toe", "toe_tip"], ["coronet_heel", "heel_contact"], ["ground"]].map((keys) => keys.flatMap((key) => draft.pointsOf(key)).map(([x]) => x));
    const mean = (xs) => xs.reduce((sum, x) => sum + x, 0) / xs.length;
    return toe.length > 0 && mean(toe) > mean(heel.length ? heel : ground);
  };
  const which = (key) => {
    const { drawing: parts, marks } = data.steps[data.view], mark = marks[key];
    const more = typeof mark === "string" ? `<path class="mark" d="${mark}"/>` : (mark || []).map(([x, y]) => `<circle class="mark" cx="${x}" cy="${y}" r="5"/>`).join("");
    const rule = key === "scale" ? '<path class="mark" d="M14 60H86M14 54V66M86 54V66"/>' : "";
    drawing.innerHTML = sheets.svg(parts, "100 100", more + rule);
    drawing.classList.toggle("turned", data.view === "side" ? toeRight() : mirrored);
  };
  const faultsOf = (tracing) => traceFaults.found(tracing, data.foot, data.size).map(([name, line]) => (line ? table.faults[name].replace("{name}", table.lines[line]) : table.faults[name]));
  const showLive = () => {
    const tracing = draft.tracing(), found = traceFigures(tracing);
    const shown = Object.entries(table.headline[data.view]).filter(([name]) => name in found).slice(0, 4);
    live.replaceChildren(...shown.map(([name, short]) => h("div", { "data-figure": name }, h("dt", {}, [short, (data.units[table.figures[name][1]] || {}).unit || table.figures[name][1]].filter(Boolean).join(", ")), h("dd", {}, sheets.told(name, found[name], 0, true)))));
    const faults = faultsOf(tracing), usual = tracing.usual;
    const off = usual && !traceUsual.lines(tracing.landmarks, usual.sd, usual.table);
    if (off ? !message : message === "off_usual") message = off ? "off_usual" : "";
    say.classList.toggle("wrong", faults.length > 0);
    say.textContent = faults[0] || (message ? words(message) : lacking(draft.here())) || (draft.unkept ? words("no_store") : "");
  };
  const counted = (step) => {
    const points = draft.pointsOf(step.key).length;
    if (step.key === "review") return "";
    return step.line ? (points > step.good ? String(points) : words("count", { count: points, good: step.good })) : step.least > 1 ? words("count", { count: points, good: step.least }) : "";
  };
  const shown = `${data.named.charAt(0).toUpperCase()}${data.named.slice(1)}, ${table.view[data.view]}, ${table.moment[data.moment]}.`;
  const lacking = (step) => (step.key === "scale" ? shown : step.line && draft.pointsOf(step.key).length < step.least ? words("needs", { least: step.least }) : "");
  const enough = (step) => draft.pointsOf(step.key).length >= step.least && (step.key !== "scale" || draft.now.lay);
  const optional = (step) => step.key !== "scale" && !/^(frog_|ground)/.test(step.key);

  const show = () => {
    const step = draft.here();
    which(step.key);
    title.replaceChildren(step.key === "review" ? words("review") : step.key === "scale" ? words(draft.pointsOf("scale").length < 2 ? "scale" : "scale_again") : table.marks[step.key], " ", count);
    count.textContent = counted(step);
    canvas.setAttribute("aria-label", title.textContent);
    const offered = step.key === "white_line" && enough(step), proposed = offered && draft.ridge() && !draft.ridge().kept;
    const forward = proposed ? button(words("ridge_keep"), "ridge-keep", ridgeKept, "go")
      : step.key === "scale" ? (draft.pointsOf("scale").length === 2 ? button(words("next"), "next", () => sheets.scale(next), "go") : button(words("no_scale"), "no-scale", noScale))
      : step.key === "review" ? button(words("done"), "done", review, "go")
      : enough(step) ? button(words("next"), "next", next, "go")
      : optional(step) ? button(words("leave_out"), "leave-out", leaveOut) : null;
    const held = document.activeElement?.dataset?.key;
    const first = draft.now.at === 0;
    bar.replaceChildren(first && leave ? button(words("leave_short"), "leave", leave) : button(words("back"), "back", back), button(words("take_back"), "take-back", takeBack), help(), ...(offered ? [draft.ridge() ? button(words("ridge_drop"), "ridge-drop", ridgeDropped) : button(words("ridge"), "ridge", ridgeLooked)] : []), ...(forward ? [forward] : []));
    bar.children[0].disabled = first && !leave;
    bar.children[1].disabled = !draft.now.back.length;
    if (held) bar.querySelector(`[data-key="${held}"]`)?.focus();
    showLive();
    drawn();
  };
  const ridgeLooked = () => {
    const { white_line: line } = traceLines.drawn({ ...draft.tracing(), ridge: null }), told = traceRidge.found(traceRidge.pixelsOf(picture, line), line);
    if (told) draft.setRidge(told, false);
    message = told ? "ridge_found" : "ridge_none";
    show();
  };
  const ridgeKept = () => { draft.setRidge(draft.ridge().told, true); message = "ridge_kept"; show(); };
  const ridgeDropped = () => { draft.setRidge(null); message = ""; show(); };
  const help = () => {
    const made = button("?", "camera", () => sheets.camera(anew, leave));
    made.setAttribute("aria-label", words("camera"));
    return made;
  };
  const drawn = () => {
    if (planned) return;
    planned = true;
    requestAnimationFrame(() => {
      planned = false;
      paint(hand);
      if (hand.touched && performance.now() - figuresAt > 150) { showLive(); figuresAt = performance.now(); }
    });
  };

  const goTo = (at) => {
    hand.forget();
    hand.chosen = null;
    draft.go(at);
    closer();
    show();
    if (draft.here().key === "review") review();
  };
  const next = () => { message = ""; goTo(draft.now.at + 1); };
  const back = () => { message = ""; goTo(draft.now.at - 1); };
  const leaveOut = () => { draft.change((now) => { delete now.points[draft.here().key]; delete now.hand[draft.here().key]; }); next(); };
  const noScale = () => { draft.change((now) => { now.noScale = true; delete now.points.scale; }); next(); };
  const takeBack = () => { sheets.close(); hand.forget(); hand.chosen = null; draft.takeBack(); show(); };
  const anew = () => { draft.anew(); message = ""; goTo(0); };
  const closer = () => {
    const step = draft.here(), points = ["frog_apex", "frog_medial", "frog_lateral"].map((key) => draft.pointsOf(key)[0]);
    if (step.line && data.view === "sole" && points.every(Boolean) && view.fitted) {
      const [apex, medial, lateral] = points, long = Math.hypot(apex[0] - (medial[0] + lateral[0]) / 2, apex[1] - (medial[1] + lateral[1]) / 2);
      view.show(points, long * 0.8);
    }
  };
  const review = () => {
    const tracing = draft.tracing();
    sheets.review({ found: traceFigures(tracing), faults: faultsOf(tracing), noLengths: !tracing.scale || tracing.scale.lay !== "on foot", write, more: draft.now.more || !data.steps[data.view].later.length ? null : () => { sheets.close(); draft.change((now) => { now.more = true; }); show(); goTo(draft.now.at); } });
  };
  const write = async (number) => {
    sheets.open(words("writing"));
    const { usual, ...tracing } = draft.tracing();
    const sent = { ...tracing, model: usual ? data.model.version : null, hand_error: draft.handError(), hand_errors: draft.handErrors(), instead_of: number };
    const answer = await done(sent).catch(() => ({ written: false, problems: [words("not_reached")], figures: {} }));
    if (answer.written) {
      store.clear();
      root.dataset.written = "yes";
      return leave ? leave() : sheets.taken(answer);
    }
    return sheets.open(words("not_written"), answer.problems.map((text) => h("p", { className: "wrong" }, text)), button(words("go_back"), "go-back", sheets.close, "go"));
  };

  const tell = {
    say: (key) => { message = key; showLive(); },
    drawn, takeBack,
    set: (step, how, byKey) => {
      message = how === "touched" && step.least < 3 ? "settle" : "";
      const full = step.exactly && draft.pointsOf(step.key).length >= step.least;
      if (full && !byKey && step.key === "scale") { show(); sheets.scale(next); }
      else if (full && !byKey) { const said = message; goTo(draft.now.at + 1); message = said; showLive(); }
      else show();
    },
  };
  const hand = traceHand(canvas, view, draft, tell);
  const sized = () => {
    const box = canvas.getBoundingClientRect(), times = window.devicePixelRatio || 1;
    if (!box.width || !box.height) return;
    if (box.width !== view.width || box.height !== view.height) hand.letGo();
    [canvas.width, canvas.height] = [Math.round(box.width * times), Math.round(box.height * times)];
    view.resize(box.width, box.height);
    paint(hand);
  };
  new ResizeObserver(sized).observe(canvas);
  sized();
  show();
  return { draft, view, hand };
};
