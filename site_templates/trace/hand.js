// Fingers, mouse and keys on the picture. One finger sets or moves a point, two zoom and end a tap that had begun.
const traceHand = (canvas, view, draft, tell) => {
  const NEAR = 24, SLOW = 1 / 3, SETTLED_MS = 400, MOVED = 3;
  const fingers = new Map();
  const hand = { touched: null, chosen: null, cursor: null };
  let tap = null, pinch = null;
  const spotOf = (event) => { const box = canvas.getBoundingClientRect(); return [event.clientX - box.left, event.clientY - box.top]; };
  const away = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const put = (step, index, point) => { draft.now.points[step.key][index] = point; };

  // Which point of this step a touch means: one near by, else a new one, else of a full step the nearest.
  const meant = (step, at) => {
    const near = draft.pointsOf(step.key).map((point, i) => [away(view.toScreen(point), at), i]).sort((a, b) => a[0] - b[0]);
    const full = step.exactly && near.length >= step.least;
    return near.length && (near[0][0] <= NEAR || full) ? { index: near[0][1], close: near[0][0] <= NEAR } : { index: near.length, close: false };
  };
  const begin = (event, at) => {
    const step = draft.here(), spot = view.toPicture(...at);
    if (step.key === "review") return;
    if (!view.holds(spot)) return tell.say("beside");
    const { index, close } = meant(step, at), before = JSON.stringify(draft.now.points);
    const start = close ? draft.pointsOf(step.key)[index] : spot;
    (draft.now.points[step.key] ||= [])[index] = start;
    tap = { id: event.pointerId, step, index, start, from: at, before, began: performance.now(), slow: event.pointerType === "mouse" ? 1 : SLOW, touch: event.pointerType !== "mouse", moved: false };
    [hand.touched, hand.chosen, hand.cursor] = [start, index, null];
  };
  const undone = () => {
    if (tap) draft.now.points = JSON.parse(tap.before);
    [tap, hand.touched, hand.chosen] = [null, null, null];
  };
  // A tap that nobody will end: the picture moved under it, or the finger was lost on its way.
  const letGo = () => {
    undone();
    fingers.clear();
    pinch = null;
  };
  const slide = (at) => {
    const way = [0, 1].map((k) => ((at[k] - tap.from[k]) * tap.slow) / view.unit);
    tap.moved ||= away(at, tap.from) > MOVED;
    hand.touched = view.clamped([tap.start[0] + way[0], tap.start[1] + way[1]]);
    put(tap.step, tap.index, hand.touched);
  };
  const end = () => {
    const { step, index, before, touch, moved, began } = tap, point = hand.touched;
    const how = touch && !moved && performance.now() - began < SETTLED_MS ? "touched" : "settled";
    draft.now.points = JSON.parse(before);
    draft.change((now) => {
      (now.points[step.key] ||= [])[index] = point.map((side) => Math.round(side * 10) / 10);
      (now.hand[step.key] ||= [])[index] = draft.handOf(how, view.unit);
    });
    [tap, hand.touched, hand.chosen] = [null, null, index];
    tell.set(step, how);
  };

  const down = (event) => {
    // The first finger of a touch: one that is still held to be down was lost.
    if (event.isPrimary) letGo();
    fingers.set(event.pointerId, spotOf(event));
    canvas.setPointerCapture?.(event.pointerId);
    if (event.pointerType === "mouse" && event.button !== 0) return;
    if (fingers.size === 1) begin(event, spotOf(event));
    else if (fingers.size === 2) {
      undone();
      pinch = [...fingers.values()];
    }
    tell.drawn();
  };
  const move = (event) => {
    if (!fingers.has(event.pointerId)) return;
    fingers.set(event.pointerId, spotOf(event));
    if (pinch && fingers.size >= 2) {
      const [was, is] = [pinch, [...fingers.values()].slice(0, 2)], middle = (pair) => [(pair[0][0] + pair[1][0]) / 2, (pair[0][1] + pair[1][1]) / 2];
      view.shift(middle(is)[0] - middle(was)[0], middle(is)[1] - middle(was)[1]);
      view.zoom(away(...is) / Math.max(away(...was), 1), ...middle(is));
      pinch = is;
    } else if (tap && tap.id === event.pointerId) slide(spotOf(event));
    else if (!tap && event.pointerType === "mouse") view.shift(event.movementX, event.movementY);
    tell.drawn();
  };
  const up = (event) => {
    fingers.delete(event.pointerId);
    if (tap && tap.id === event.pointerId) {
      if (event.type === "pointercancel") undone();
      else end();
    }
    // Who zoomed lifts both fingers before the next point.
    if (!fingers.size) pinch = null;
    tell.drawn();
  };
  for (const [name, act] of [["pointerdown", down], ["pointermove", move], ["pointerup", up], ["pointercancel", up]]) canvas.addEventListener(name, act);
  // Else the touch would go on as a click on whatever comes up below it.
  canvas.addEventListener("touchend", (event) => event.cancelable && event.preventDefault());
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("wheel", (event) => {
    event.preventDefault();
    view.zoom(Math.exp(-event.deltaY / 400), ...spotOf(event));
    tell.drawn();
  }, { passive: false });

  const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  const nudge = (way, far) => {
    const step = draft.here(), point = draft.pointsOf(step.key)[hand.chosen];
    if (!point) {
      const from = hand.cursor || view.toPicture(view.width / 2, view.height / 2);
      hand.cursor = view.clamped([0, 1].map((k) => from[k] + (way[k] * far) / Math.min(view.unit, 1)));
      return;
    }
    draft.change((now) => { now.points[step.key][hand.chosen] = view.clamped([0, 1].map((k) => Math.round((point[k] + way[k] * far) * 10) / 10)); });
    tell.set(step, "settled", true);
  };
  const enter = () => {
    const step = draft.here(), points = draft.pointsOf(step.key);
    if (step.key === "review") return;
    const spot = hand.cursor || view.toPicture(view.width / 2, view.height / 2), index = step.exactly && points.length >= step.least ? points.length - 1 : points.length;
    draft.change((now) => {
      (now.points[step.key] ||= [])[index] = view.clamped(spot.map((side) => Math.round(side * 10) / 10));
      (now.hand[step.key] ||= [])[index] = draft.handOf("settled", view.unit);
    });
    [hand.chosen, hand.cursor] = [index, null];
    tell.set(step, "settled", true);
  };
  const remove = () => {
    const step = draft.here();
    if (!draft.pointsOf(step.key)[hand.chosen]) return;
    draft.change((now) => { now.points[step.key].splice(hand.chosen, 1); (now.hand[step.key] || []).splice(hand.chosen, 1); });
    hand.chosen = null;
    tell.set(step, "settled", true);
  };
  const keys = (event) => {
    if (event.ctrlKey || event.metaKey) {
      if (event.key !== "z") return;
      tell.takeBack();
    } else if (ARROWS[event.key]) nudge(ARROWS[event.key], event.shiftKey ? 10 : 1);
    else if (event.key === "Enter" || event.key === " ") enter();
    else if (event.key === "Delete" || event.key === "Backspace") remove();
    else if (event.key === "+" || event.key === "=") view.zoom(1.25, view.width / 2, view.height / 2);
    else if (event.key === "-") view.zoom(0.8, view.width / 2, view.height / 2);
    else if (event.key === "0") view.fit();
    else if (event.key === "Escape") [hand.chosen, hand.cursor] = [null, null];
    else return;
    event.preventDefault();
    tell.drawn();
  };
  canvas.addEventListener("keydown", keys);
  hand.forget = () => { undone(); hand.cursor = null; };
  hand.letGo = letGo;
  return hand;
};
