// The white line moved to the ridge of the picture beside it: a streak brighter, darker or of another colour than both
// its sides. The taps stay; kept is how far the ridge lies from the line, px, outwards above 0, at even places. Python
// draws the same in recordgen/records/models/lines/ridge.py.
const traceRidge = (() => {
  // In shares of how far the line runs from its middle: how far a ridge is looked for, some 2 mm of a usual foot, and
  // the width of its Gauss. EACH: places looked at for one that is kept. LONG: how far places are averaged along the line.
  // The numbers were tried on 48 traces of rendered soles: 26 had a clear ridge, and all of these came nearer to the true
  // line, 0.41 to 0.22 mm from it in the mean where a careful hand tapped. Lines laid elsewhere on the sole had none.
  const FURTHEST = 0.038, WIDTH = 0.013, PLACES = 25, EACH = 8, STEPS = 16, LONG = 4;
  // What a step of brightness takes off, what every picture has of noise, in shades of 256; how much height counts
  // against nearness and even running; the most that one place weighs, and what weighs against it.
  const EDGE = 0.5, NOISE = 0.3, TRUST = 2, STIFF = 0.25, MOST_TURN = 3, MOST_HEIGHT = 6, DOUBT = 0.15;
  // A ridge is clear that stands above the usual of the picture there, and is the highest across the line or beside it.
  const CLEAR = 1, BESIDE = 2, MOST_PLACES = 2 / 3;

  const both = (tell) => [0, 1].map(tell);
  const total = (values) => values.reduce((sum, one) => sum + one, 0);
  const median = (values) => values.sort((a, b) => a - b)[values.length >> 1];
  const held = (value, low, high) => Math.min(Math.max(value, low), high);
  const along = (values, place) => {
    const below = Math.min(Math.floor(place), values.length - 2);
    return values[below] + (place - below) * (values[below + 1] - values[below]);
  };
  // So many even places of a line, each with its way outwards.
  const placed = (line, count) => {
    const sides = both((k) => line.map((point) => point[k])), last = line.length - 1;
    const spots = Array.from({ length: count }, (_, i) => both((k) => along(sides[k], (i / (count - 1)) * last)));
    const turn = Math.sign(total(line.map(([x, y], i) => { const [a, b] = line[(i + 1) % line.length]; return x * b - a * y; })));
    return spots.map((spot, i) => {
      const [a, b] = [spots[Math.max(i - 1, 0)], spots[Math.min(i + 1, count - 1)]], long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      return { spot, out: [(turn * (b[1] - a[1])) / long, (turn * (a[0] - b[0])) / long] };
    });
  };
  const sizeOf = (line) => {
    const middle = both((k) => total(line.map((point) => point[k])) / line.length);
    return total(line.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]))) / line.length;
  };
  const moved = (line, ridge) => placed(line, line.length).map(({ spot, out }, i) => {
    const off = along(ridge, (i / (line.length - 1)) * (ridge.length - 1));
    return both((k) => spot[k] + off * out[k]);
  });

  // First and second slope of a Gauss, in units of its width, so that a step has as much of one as of the other.
  const kernels = (sd) => {
    const half = Math.ceil(2.6 * sd), at = Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) / sd);
    const bell = at.map((one) => Math.exp(-0.5 * one * one) / (sd * Math.sqrt(2 * Math.PI)));
    const second = at.map((one, i) => (one * one - 1) * bell[i]), rest = total(second) / second.length;
    return { half, first: at.map((one, i) => one * bell[i]), second: second.map((one) => one - rest) };
  };
  // How high a ridge stands at each step across each place, as many times the usual. pixel(x, y): red, green and blue.
  const heights = (pixel, places, step) => {
    const { half, first, second } = kernels((WIDTH * STEPS) / FURTHEST), reach = STEPS + half, COLOURS = [0, 1, 2];
    const across = places.map(({ spot, out }) => Array.from({ length: 2 * reach + 1 }, (_, j) => pixel(...both((k) => spot[k] + (j - reach) * step * out[k]))));
    const bell = Array.from({ length: 2 * LONG + 1 }, (_, d) => Math.exp(-2 * ((d - LONG) / LONG) ** 2)), weight = total(bell);
    const even = across.map((row, i) => row.map((_, j) => COLOURS.map((k) => total(bell.map((one, d) => one * across[held(i + d - LONG, 0, places.length - 1)][j][k])) / weight)));
    const told = (row, j, kernel) => Math.hypot(...COLOURS.map((k) => total(kernel.map((one, d) => one * row[j + d][k]))));
    const found = even.map((row) => Array.from({ length: 2 * STEPS + 1 }, (_, j) => [told(row, j, second), told(row, j, first)]));
    const usual = median(found.flat().map(([bend]) => bend)) + NOISE;
    return found.map((row) => row.map(([bend, slope]) => Math.max(0, bend - EDGE * slope) / usual));
  };
  // The steps along the ridge that lose least: high, near the line, without sharp turns.
  const followed = (heights) => {
    const cost = heights.map((row) => row.map((one, j) => 2 * ((j - STEPS) / STEPS) ** 2 - TRUST * Math.min(one, MOST_HEIGHT)));
    const from = [];
    let best = cost[0];
    for (const own of cost.slice(1)) {
      const came = own.map((_, j) => {
        let least = j;
        for (let k = Math.max(0, j - MOST_TURN); k <= Math.min(2 * STEPS, j + MOST_TURN); k++) if (best[k] + STIFF * (j - k) ** 2 < best[least] + STIFF * (j - least) ** 2) least = k;
        return least;
      });
      best = own.map((one, j) => one + best[came[j]] + STIFF * (j - came[j]) ** 2);
      from.push(came);
    }
    const way = [best.indexOf(Math.min(...best))];
    for (const came of from.reverse()) way.unshift(came[way[0]]);
    return way;
  };
  // Between the steps, by the parabola through three.
  const between = (row, j) => {
    const [a, b, c] = [row[j - 1], row[j], row[j + 1]], bend = a - 2 * b + c;
    return bend < 0 ? j + held((a - c) / (2 * bend), -0.5, 0.5) : j;
  };

  // How far the ridge lies from a line, px, and the share of places where it is clear.
  const looked = (pixel, line) => {
    const count = (PLACES - 1) * EACH + 1, step = (FURTHEST * sizeOf(line)) / STEPS, rows = heights(pixel, placed(line, count), step);
    const way = followed(rows), off = way.map((j, i) => (between(rows[i], j) - STEPS) * step), sure = way.map((j, i) => Math.min(rows[i][j], MOST_HEIGHT));
    const clear = sure.filter((one, i) => one >= CLEAR && Math.abs(rows[i].indexOf(Math.max(...rows[i])) - way[i]) <= BESIDE).length / count;
    const ridge = Array.from({ length: PLACES }, (_, n) => {
      let [sum, weights] = [0, 0];
      for (let i = Math.max(0, n * EACH - EACH); i <= Math.min(count - 1, n * EACH + EACH); i++) {
        const weight = 1 - Math.abs(i - n * EACH) / (EACH + 1);
        sum += weight * sure[i] * off[i];
        weights += weight * (sure[i] + DOUBT);
      }
      return Math.round((10 * sum) / weights) / 10;
    });
    return { ridge, clear };
  };
  // The same where most places have a clear one, else null.
  const found = (pixel, line) => { const { ridge, clear } = looked(pixel, line); return clear >= MOST_PLACES ? ridge : null; };

  // The colours of a picture around a line, between its px as well.
  const pixelsOf = (picture, line) => {
    const room = Math.ceil(2 * FURTHEST * sizeOf(line)) + 2;
    const [x, y] = both((k) => Math.floor(Math.min(...line.map((point) => point[k]))) - room), [width, height] = both((k) => Math.ceil(Math.max(...line.map((point) => point[k]))) + room - [x, y][k]);
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    const ink = canvas.getContext("2d", { willReadFrequently: true });
    ink.drawImage(picture, -x, -y);
    const { data } = ink.getImageData(0, 0, width, height);
    // A phone has few bytes for canvases and frees them late.
    canvas.width = canvas.height = 1;
    return (px, py) => {
      const [u, v] = [held(px - x, 0, width - 1.001), held(py - y, 0, height - 1.001)], [i, j] = [Math.floor(u), Math.floor(v)];
      const at = (a, b, k) => data[4 * (b * width + a) + k];
      return [0, 1, 2].map((k) => (1 - v + j) * ((1 - u + i) * at(i, j, k) + (u - i) * at(i + 1, j, k)) + (v - j) * ((1 - u + i) * at(i, j + 1, k) + (u - i) * at(i + 1, j + 1, k)));
    };
  };
  return { looked, found, moved, pixelsOf };
})();
