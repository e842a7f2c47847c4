// Points are [x, y]. The lines of a tracing run as in recordgen/records/models/lines/smooth.py; shared cases hold both.
const traceLines = (() => {
  const OUTLINES = { wall: 7, white_line: 5 };
  const FEWEST = 4, STRETCHES = 96, LEAST_STEP = 1e-3;
  const stretchesEach = (count) => Math.max(2, Math.ceil(STRETCHES / (count - 1)));

  const stepsBetween = (points) => {
    const roots = points.slice(1).map(([x, y], i) => Math.sqrt(Math.hypot(x - points[i][0], y - points[i][1])));
    const mean = roots.reduce((sum, one) => sum + one, 0) / roots.length;
    return roots.map((one) => Math.max(one, LEAST_STEP * mean));
  };

  // Gauss with pivots; a few unknowns.
  const solved = (matrix, right) => {
    const rows = matrix.map((row, i) => [...row, ...right[i]]), count = rows.length;
    for (let at = 0; at < count; at++) {
      let best = at;
      for (let i = at + 1; i < count; i++) if (Math.abs(rows[i][at]) > Math.abs(rows[best][at])) best = i;
      [rows[at], rows[best]] = [rows[best], rows[at]];
      for (let i = 0; i < count; i++) {
        if (i === at) continue;
        const times = rows[i][at] / rows[at][at];
        for (let j = at; j < rows[i].length; j++) rows[i][j] -= times * rows[at][j];
      }
    }
    return rows.map((row, i) => row.slice(count).map((value) => value / row[i]));
  };

  const equations = (step, rise) => {
    const count = step.length + 1, matrix = [], right = [];
    const end = (own, inner, first, second) => first.map((one, k) => ((own + 2 * (own + inner)) * inner * one + own ** 2 * second[k]) / (own + inner));
    for (let i = 0; i < count; i++) {
      const row = new Array(count).fill(0);
      if (i === 0) {
        [row[0], row[1]] = [step[1], step[0] + step[1]];
        right.push(end(step[0], step[1], rise[0], rise[1]));
      } else if (i === count - 1) {
        [row[i], row[i - 1]] = [step[i - 2], step[i - 1] + step[i - 2]];
        right.push(end(step[i - 1], step[i - 2], rise[i - 1], rise[i - 2]));
      } else {
        [row[i - 1], row[i], row[i + 1]] = [step[i], 2 * (step[i - 1] + step[i]), step[i - 1]];
        right.push([0, 1].map((k) => 3 * (step[i] * rise[i - 1][k] + step[i - 1] * rise[i][k])));
      }
      matrix.push(row);
    }
    return [matrix, right];
  };

  // The smooth line through some points in order, as many close ones.
  const smooth = (points) => {
    if (points.length < FEWEST) return points;
    const step = stepsBetween(points), each = stretchesEach(points.length), line = [];
    const rise = step.map((one, i) => [0, 1].map((k) => (points[i + 1][k] - points[i][k]) / one));
    const slope = solved(...equations(step, rise));
    step.forEach((one, i) => {
      for (let j = 0; j < each; j++) {
        const s = j / each, start = points[i], end = points[i + 1];
        line.push([0, 1].map((k) => (1 + 2 * s) * (1 - s) ** 2 * start[k] + s * (1 - s) ** 2 * slope[i][k] * one + s ** 2 * (3 - 2 * s) * end[k] + s ** 2 * (s - 1) * slope[i + 1][k] * one));
      }
    });
    return [...line, points[points.length - 1]];
  };

  // The landmarks of a tracing, lists of points by name, with its lines drawn. usual: {sd, table} where the lines follow
  // the usual outlines. ridge: how far the white line is moved, where it is drawn to the picture's ridge.
  const drawn = ({ landmarks: points, drawn: how, usual, ridge }) => {
    const plain = Object.fromEntries(Object.entries(points).map(([name, found]) => [name, how === "smooth" && name in OUTLINES ? smooth(found) : found]));
    const lines = how === "smooth" && usual ? { ...plain, ...traceUsual.lines(points, usual.sd, usual.table) } : plain;
    return ridge && lines.white_line ? { ...lines, white_line: traceRidge.moved(lines.white_line, ridge) } : lines;
  };

  return { OUTLINES, smooth, solved, drawn };
})();
