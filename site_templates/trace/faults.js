// Mistakes that the screen tells at once; `recordgen check` looks for the same. Points in px with y down.
const traceFaults = (() => {
  const SHORTEST_SCALE = 0.02;
  const PAIRS = [["buttress_medial", "buttress_lateral"], ["frog_medial", "frog_lateral"], ["bar_medial", "bar_lateral"], ["coronet_medial", "coronet_lateral"], ["medial_wall", "lateral_wall"]];
  const middle = (line) => [0, 1].map((k) => line.reduce((sum, point) => sum + point[k], 0) / line.length);
  const way = (a, b) => [b[0] - a[0], b[1] - a[1]], dot = (a, b) => a[0] * b[0] + a[1] * b[1], cross = (a, b) => a[0] * b[1] - a[1] * b[0];

  const meet = ([a, b], [c, d]) => {
    const side = (p, q, r) => Math.sign(cross(way(p, q), way(p, r)));
    return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
  };
  const crosses = (line) => {
    const runs = line.map((point, i) => [point, line[(i + 1) % line.length]]);
    return runs.some((one, i) => runs.some((other, j) => j > i + 1 && !(i === 0 && j === runs.length - 1) && meet(one, other)));
  };
  const inside = ([x, y], line) => line.reduce((found, [ax, ay], i) => {
    const [bx, by] = line[(i + 1) % line.length];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !found : found;
  }, false);

  // Towards the toe of a sole, or up from the ground; null where nothing tells.
  const upward = (view, marks) => {
    if (view === "sole") return marks.frog_apex && marks.frog_medial && marks.frog_lateral ? way(middle([...marks.frog_medial, ...marks.frog_lateral]), marks.frog_apex[0]) : null;
    const others = Object.entries(marks).flatMap(([name, line]) => (name === "ground" ? [] : line));
    if (!marks.ground || !others.length) return null;
    const [along, away] = [way(...marks.ground), way(marks.ground[0], middle(others))], across = [-along[1], along[0]];
    return dot(across, away) > 0 ? across : [along[1], -along[0]];
  };
  const sides = (view, foot, marks) => {
    const pairs = PAIRS.filter((pair) => pair.every((name) => marks[name])).map((pair) => way(middle(marks[pair[0]]), middle(marks[pair[1]])));
    if (pairs.slice(1).some((pair) => dot(pair, pairs[0]) < 0)) return [["sides_disagree"]];
    const up = upward(view, marks), turn = up && pairs.length && view !== "side" ? cross(up, pairs[0]) : 0;
    return turn && turn > 0 !== foot.startsWith("left") ? [["other_side"]] : [];
  };
  const scaled = (scale, size) => {
    if (!scale) return [];
    const length = Math.hypot(...way(scale.from, scale.to));
    return length === 0 ? [["scale_same"]] : length < SHORTEST_SCALE * size[0] ? [["scale_short"]] : [];
  };

  // tracing: {view, scale, drawn, landmarks}; each fault as its name and, of a line, which.
  const found = (tracing, foot, size) => {
    const { view, scale, landmarks } = tracing, lines = traceLines.drawn(tracing), faults = [...scaled(scale, size), ...sides(view, foot, landmarks)];
    for (const name of Object.keys(traceLines.OUTLINES)) if (lines[name] && crosses(lines[name])) faults.push(["crosses", name]);
    if (lines.wall && landmarks.white_line && !landmarks.white_line.every((point) => inside(point, lines.wall))) faults.push(["outside"]);
    const off = ([x, y]) => x < 0 || y < 0 || x > size[0] || y > size[1];
    if ([...Object.values(landmarks).flat(), ...(scale ? [scale.from, scale.to] : [])].some(off)) faults.unshift(["off_picture"]);
    const up = view === "sole" ? null : upward(view, landmarks);
    return up && up[1] > 0 ? [...faults, ["upside_down"]] : faults;
  };
  return { found };
})();
