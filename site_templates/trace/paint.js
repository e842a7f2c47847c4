// Draws the picture, the lines and points on it, and the loupe.
const tracePaint = (canvas, picture, view, draft) => {
  const LOUPE = 150, CLOSER = 2.6, COLOURS = { scale: "#8fd3ff", wall: "#ffe08a", white_line: "#9ff0c0" }, OTHER = "#ffb3a0", RIDGE = "#ffffff";
  const ink = canvas.getContext("2d");
  const colour = (key) => COLOURS[key] || OTHER;

  const stroke = (line, tone, thin, dash = []) => {
    if (line.length < 2) return;
    for (const [style, width] of [["rgba(0,0,0,.75)", thin ? 3.5 : 5], [tone, thin ? 1.5 : 2.5]]) {
      ink.beginPath();
      line.forEach(([x, y], i) => (i ? ink.lineTo(x, y) : ink.moveTo(x, y)));
      [ink.strokeStyle, ink.lineWidth, ink.lineJoin] = [style, width, "round"];
      ink.setLineDash(dash);
      ink.stroke();
      ink.setLineDash([]);
    }
  };
  const dot = ([x, y], tone, large) => {
    for (const [style, width] of [["rgba(0,0,0,.85)", 5], [tone, 2.5]]) {
      ink.beginPath();
      ink.arc(x, y, large ? 9 : 6, 0, 2 * Math.PI);
      [ink.strokeStyle, ink.lineWidth] = [style, width];
      ink.stroke();
    }
    ink.beginPath();
    ink.arc(x, y, 1.4, 0, 2 * Math.PI);
    ink.fillStyle = tone;
    ink.fill();
  };
  let lines = {}, ridge = [];
  const lineOf = (key) => {
    const points = draft.ordered(key, draft.pointsOf(key));
    return lines[key] || (key in traceLines.OUTLINES ? traceLines.smooth(points) : points);
  };

  // at: turns points of the picture into those of the drawing. chosen: the point that the keys move.
  const marks = (at, chosen) => {
    const frog = ["frog_medial", "frog_apex", "frog_lateral"].map((key) => draft.pointsOf(key)[0]);
    if (frog.every(Boolean)) stroke(frog.map(at), OTHER, true);
    for (const step of draft.steps()) {
      const points = draft.pointsOf(step.key), mine = step.key === draft.here().key;
      if (points.length > 1) stroke(lineOf(step.key).map(at), colour(step.key), !mine && !step.line);
      if (step.key === "white_line") stroke(ridge.map(at), RIDGE, false, [7, 5]);
      points.forEach((point, i) => dot(at(point), colour(step.key), mine && chosen === i));
    }
  };
  const cross = ([x, y], half) => {
    for (const [style, width] of [["rgba(0,0,0,.7)", 3], ["#fff", 1]]) {
      ink.beginPath();
      ink.moveTo(x - half, y); ink.lineTo(x + half, y); ink.moveTo(x, y - half); ink.lineTo(x, y + half);
      [ink.strokeStyle, ink.lineWidth] = [style, width];
      ink.stroke();
    }
  };
  const loupe = (spot, chosen) => {
    const [x] = view.toScreen(spot), unit = view.unit * CLOSER, size = Math.min(LOUPE, view.width / 2.4, view.height - 8);
    const left = x > view.width / 2 ? 8 : view.width - size - 8, middle = [left + size / 2, 8 + size / 2];
    ink.save();
    ink.beginPath();
    ink.arc(...middle, size / 2, 0, 2 * Math.PI);
    ink.fillStyle = "#000";
    ink.fill();
    ink.clip();
    const at = (point) => [middle[0] + (point[0] - spot[0]) * unit, middle[1] + (point[1] - spot[1]) * unit];
    ink.drawImage(picture, ...at([0, 0]), picture.naturalWidth * unit, picture.naturalHeight * unit);
    marks(at, chosen);
    cross(middle, size / 2);
    ink.restore();
    ink.beginPath();
    ink.arc(...middle, size / 2, 0, 2 * Math.PI);
    [ink.strokeStyle, ink.lineWidth] = ["#fff", 2];
    ink.stroke();
    canvas.dataset.loupe = left < view.width / 2 ? "left" : "right";
  };

  // touched: the spot under the finger, or null. cursor: where Enter would set a point.
  return ({ touched, chosen, cursor }) => {
    const times = window.devicePixelRatio || 1, tracing = draft.tracing(), shown = draft.ridge();
    lines = traceLines.drawn({ ...tracing, ridge: null });
    ridge = shown ? traceRidge.moved(lines.white_line, shown.told) : [];
    ink.setTransform(times, 0, 0, times, 0, 0);
    ink.fillStyle = "#0d100e";
    ink.fillRect(0, 0, view.width, view.height);
    ink.imageSmoothingEnabled = view.unit < 4;
    ink.drawImage(picture, ...view.toScreen([0, 0]), picture.naturalWidth * view.unit, picture.naturalHeight * view.unit);
    marks(view.toScreen, chosen);
    if (cursor) cross(view.toScreen(cursor), 14);
    delete canvas.dataset.loupe;
    if (touched) loupe(touched, chosen);
  };
};
