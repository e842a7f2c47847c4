// The outlines of a sole through a few taps as outlines usually run, by recordgen/records/models/lines/usual_shape.py.
// table: {first, step, wall, ring}, degrees and rows of mean and modes. Points in px; sd: of one tap, px.
const traceUsual = (() => {
  const BEHIND = 0.13, ROUNDS = 3, STRETCHES = 96, FURTHEST_OFF = 3.5, REST = { wall: [0.011, 16], ring: [0.007, 14] };
  const radians = (degrees) => (degrees * Math.PI) / 180, dot = (a, b) => a.reduce((sum, one, i) => sum + one * b[i], 0);
  const clamp = (value, low, high) => Math.min(Math.max(value, low), high);

  const polarOf = ({ frog_apex: apex, frog_medial: medial, frog_lateral: lateral }) => {
    if (!apex || !medial || !lateral) return null;
    const axis = [0, 1].map((k) => apex[0][k] - (medial[0][k] + lateral[0][k]) / 2), length = Math.hypot(...axis);
    if (!length) return null;
    const toe = axis.map((one) => one / length), side = Math.sign(toe[1] * (lateral[0][0] - medial[0][0]) - toe[0] * (lateral[0][1] - medial[0][1]));
    const middle = [0, 1].map((k) => apex[0][k] - BEHIND * axis[k]), across = [toe[1] * side, -toe[0] * side];
    if (!side) return null;
    return {
      told: (line) => line.map(([x, y]) => [x - middle[0], y - middle[1]]).map((away) => [Math.atan2(dot(away, across), dot(away, toe)), Math.hypot(...away)]).sort((a, b) => a[0] - b[0]),
      drawn: (places) => places.map(([turn, far]) => [0, 1].map((k) => middle[k] + far * (Math.sin(turn) * across[k] + Math.cos(turn) * toe[k]))),
    };
  };

  const along = (values, place) => {
    const at = clamp(place, 0, values.length - 1), below = Math.min(Math.floor(at), values.length - 2);
    return values[below] + (at - below) * (values[below + 1] - values[below]);
  };
  // A family of outlines: its mean and the spread between angles.
  const family = (table, name) => {
    const [mean, ...modes] = table[name], [sd, reach] = REST[name], place = (turn) => ((turn * 180) / Math.PI - table.first) / table.step;
    const told = (turns) => turns.map((turn) => [turn, modes.map((mode) => along(mode, place(turn)))]);
    const spread = (one, other) => {
      const columns = told(other);
      return told(one).map(([a, held]) => columns.map(([b, others]) => dot(held, others) + sd ** 2 * Math.exp(-0.5 * ((a - b) / radians(reach)) ** 2)));
    };
    const noisy = (turns, noise) => spread(turns, turns).map((row, i) => row.map((value, j) => (i === j ? value + noise ** 2 : value)));
    return { mean: (turns) => turns.map((turn) => along(mean, place(turn))), spread, noisy };
  };
  const bent = (kind, turns, taps, noise, places) => {
    const mean = kind.mean(turns), weights = traceLines.solved(kind.noisy(turns, noise), taps.map((one, i) => [one - mean[i]])).map(([one]) => one);
    const spread = kind.spread(places, turns);
    return kind.mean(places).map((one, i) => one + dot(spread[i], weights));
  };
  const even = (first, last) => Array.from({ length: STRETCHES + 1 }, (_, i) => first + (i / STRETCHES) * (last - first));
  // Straight on beyond the ends of the line.
  const reachAt = (line, turn) => {
    const place = ((turn - line[0][0]) / (line[STRETCHES][0] - line[0][0])) * STRETCHES, below = clamp(Math.trunc(place), 0, STRETCHES - 1);
    return line[below][1] + (place - below) * (line[below + 1][1] - line[below][1]);
  };

  const wallOf = (kind, taps, sd) => {
    const turns = taps.map(([turn]) => turn), fars = taps.map(([, far]) => far), mean = kind.mean(turns);
    let size = dot(mean, fars) / dot(mean, mean);
    for (let round = 0; round < ROUNDS; round++) {
      const weighed = traceLines.solved(kind.noisy(turns, sd / size), fars.map((far, i) => [far, mean[i]]));
      size = dot(mean, weighed.map(([one]) => one)) / dot(mean, weighed.map(([, one]) => one));
    }
    const places = even(turns[0], turns[turns.length - 1]), found = bent(kind, turns, fars.map((far) => far / size), sd / size, places);
    return { size, line: places.map((turn, i) => [turn, size * found[i]]) };
  };
  const whiteOf = (kind, taps, { size, line: wall }, sd) => {
    const turns = taps.map(([turn]) => turn);
    const rings = taps.map(([turn, far]) => (reachAt(wall, turn) - far) / size);
    const places = even(turns[0], turns[turns.length - 1]), found = bent(kind, turns, rings, sd / size, places);
    return places.map((turn, i) => [turn, reachAt(wall, turn) - size * found[i]]);
  };

  // Wall and white line; null without wall or frog, and where a tap lies off the usual outlines.
  const lines = (points, sd, table) => {
    const polar = points.wall && polarOf(points);
    if (!polar) return null;
    const taps = { wall: polar.told(points.wall) }, outer = wallOf(family(table, "wall"), taps.wall, sd), told = { wall: outer.line };
    if (points.white_line) {
      taps.white_line = polar.told(points.white_line);
      told.white_line = whiteOf(family(table, "ring"), taps.white_line, outer, sd);
    }
    const off = Object.entries(taps).some(([name, found]) => found.some(([turn, far]) => Math.abs(far - reachAt(told[name], turn)) > FURTHEST_OFF * sd));
    return off ? null : Object.fromEntries(Object.entries(told).map(([name, line]) => [name, polar.drawn(line)]));
  };
  return { lines };
})();
