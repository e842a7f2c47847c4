// The figures of a foot from the side and from the front by the rules of recordgen/hoof/tracing (side, front, upright).
// Points are [x, y] with y up.
const traceUpright = (() => {
  const THIRD = 10, degrees = (turn) => (turn * 180) / Math.PI;
  const minus = (a, b) => [a[0] - b[0], a[1] - b[1]], dot = (a, b) => a[0] * b[0] + a[1] * b[1], last = (line) => line[line.length - 1];
  const each = (points, change) => Object.fromEntries(Object.entries(points).map(([name, line]) => [name, line.map(change)]));
  const mean = (values) => values.reduce((sum, one) => sum + one, 0) / values.length;

  const level = (points) => {
    if (!points.ground) return null;
    const [start, end] = points.ground, length = Math.hypot(...minus(end, start)), along = minus(end, start).map((one) => one / length);
    const up = [-along[1], along[0]], found = each(points, (point) => [dot(minus(point, start), along), dot(minus(point, start), up)]);
    const others = Object.entries(found).flatMap(([name, line]) => (name === "ground" ? [] : line.map((point) => point[1])));
    return others.length && mean(others) < 0 ? each(found, ([x, y]) => [-x, -y]) : found;
  };
  const mirrored = (points, flip) => (flip ? each(points, ([x, y]) => [-x, y]) : points);
  const rise = (way) => degrees(Math.atan2(way[1], way[0]));

  const direction = (line) => {
    const at = [0, 1].map((k) => mean(line.map((point) => point[k]))), away = line.map((point) => minus(point, at));
    const sum = (value) => away.reduce((total, point) => total + value(point), 0);
    const turn = 0.5 * Math.atan2(2 * sum(([x, y]) => x * y), sum(([x]) => x * x) - sum(([, y]) => y * y));
    const found = [Math.cos(turn), Math.sin(turn)];
    return dot(minus(last(line), line[0]), found) < 0 ? found.map((one) => -one) : found;
  };
  const atShares = (line) => {
    const runs = line.slice(1).map((point, i) => minus(point, line[i])), lengths = runs.map((run) => Math.hypot(...run));
    const way = lengths.reduce((done, one) => [...done, (done[done.length - 1] || 0) + one], []);
    return Array.from({ length: 3 * THIRD + 1 }, (_, step) => {
      const goal = (step / (3 * THIRD)) * last(way), at = way.slice(0, -1).filter((one) => one <= goal).length;
      const beyond = 1 - (way[at] - goal) / (lengths[at] || 1);
      return [0, 1].map((k) => line[at][k] + beyond * runs[at][k]);
    });
  };
  const flare = (wall) => {
    const taken = atShares(wall), [one, other] = [direction(taken.slice(0, THIRD + 1)), direction(taken.slice(THIRD))];
    return degrees(Math.atan2(one[0] * other[1] - one[1] * other[0], dot(one, other)));
  };
  const gap = (wall, outward) => {
    const chord = minus(last(wall), wall[0]), length = Math.hypot(...chord), across = [-chord[1] / length, chord[0] / length];
    const side = Math.sign(dot(across, outward)), out = wall.map((point) => side * dot(minus(point, wall[0]), across));
    const [hollow, bulge] = [-Math.min(...out), Math.max(...out)];
    return hollow >= bulge ? hollow : -bulge;
  };

  const slope = (line) => {
    const found = direction(line);
    return 180 - rise(found[1] < 0 ? found.map((one) => -one) : found);
  };
  const sideFigures = (points) => {
    const upright = level(points);
    if (!upright || !upright.dorsal_wall) return {};
    const foot = mirrored(upright, last(upright.dorsal_wall)[0] < upright.dorsal_wall[0][0]), wall = foot.dorsal_wall;
    const toe = slope(wall), top = foot.coronet_toe ? foot.coronet_toe[0] : wall[0], tip = foot.toe_tip ? foot.toe_tip[0] : last(wall);
    const found = { toe_angle_deg: toe, dorsal_gap_mm: gap(wall, [1, 1]), dorsal_flare_deg: flare(wall), toe_length_mm: Math.hypot(...minus(tip, top)) };
    if (foot.heel_wall) {
      const heel = slope(foot.heel_wall);
      Object.assign(found, { heel_angle_deg: heel, toe_heel_difference_deg: toe - heel, heel_length_mm: Math.hypot(...minus(last(foot.heel_wall), foot.heel_wall[0])) });
    }
    if (foot.pastern) Object.assign(found, { pastern_angle_deg: slope(foot.pastern), hoof_pastern_axis_deg: toe - slope(foot.pastern) });
    if (foot.coronet_toe && foot.coronet_heel) found.coronet_angle_deg = rise(minus(foot.coronet_toe[0], foot.coronet_heel[0]));
    if (foot.coronet_heel) found.heel_height_mm = foot.coronet_heel[0][1];
    if (foot.toe_tip && foot.heel_contact) found.support_length_mm = foot.toe_tip[0][0] - foot.heel_contact[0][0];
    if (foot.toe_tip && foot.breakover) found.side_breakover_mm = foot.toe_tip[0][0] - foot.breakover[0][0];
    return found;
  };

  const frontWall = (side, foot) => {
    const wall = foot[`${side}_wall`], found = { [`${side}_wall_angle_deg`]: 180 - rise(direction(wall).map((one) => -one)), [`${side}_gap_mm`]: gap(wall, [1, 0.5]), [`${side}_flare_deg`]: flare(wall) };
    if (foot[`coronet_${side}`]) found[`${side}_wall_height_mm`] = foot[`coronet_${side}`][0][1];
    return found;
  };
  const frontFigures = (points) => {
    const upright = level(points);
    if (!upright || !upright.medial_wall || !upright.lateral_wall) return {};
    const [medial, lateral] = ["medial", "lateral"].map((side) => mean(upright[`${side}_wall`].map((point) => point[0])));
    const foot = mirrored(upright, lateral < medial), found = { ...frontWall("medial", mirrored(foot, true)), ...frontWall("lateral", foot) };
    found.wall_angle_difference_deg = found.lateral_wall_angle_deg - found.medial_wall_angle_deg;
    if (!foot.coronet_medial || !foot.coronet_lateral) return found;
    found.wall_height_difference_mm = found.lateral_wall_height_mm - found.medial_wall_height_mm;
    found.coronet_tilt_deg = rise(minus(foot.coronet_lateral[0], foot.coronet_medial[0]));
    return found;
  };
  return { side: sideFigures, front: frontFigures };
})();

// The figures of a tracing by name: {view, scale, drawn, landmarks, usual}. Lengths only where a scale lay on the foot.
const traceFigures = (tracing) => {
  const { view, scale } = tracing, mm = scale ? scale.length / Math.hypot(scale.to[0] - scale.from[0], scale.to[1] - scale.from[1]) : 1;
  const points = Object.fromEntries(Object.entries(traceLines.drawn(tracing)).map(([name, line]) => [name, line.map(([x, y]) => [x * mm, -y * mm])]));
  const found = view === "sole" ? traceSole.figures(points) : traceUpright[view](points);
  const tellsLengths = scale && scale.lay === "on foot";
  return Object.fromEntries(Object.entries(found).filter(([name, value]) => Number.isFinite(value) && (tellsLengths || !/_mm2?$/.test(name))));
};
