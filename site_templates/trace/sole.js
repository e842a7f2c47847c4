// The figures of a sole by the rules of recordgen/hoof/tracing (sole, polygons, mirror, wall_thickness, concentric); the hand's error
// is reckoned there alone. Points are [x, y] with y up.
const traceSole = (() => {
  const NEARLY_WIDEST = 0.98, LEVELS = 400, STEP = 3, FEWEST_PLACES = 3, FAR_ENOUGH = 90;
  const ZONES = [["medial heel", -180, -115], ["medial quarter", -115, -70], ["medial toe quarter", -70, -25], ["toe", -25, 25], ["lateral toe quarter", 25, 70], ["lateral quarter", 70, 115], ["lateral heel", 115, 180]];
  const minus = (a, b) => [a[0] - b[0], a[1] - b[1]], dot = (a, b) => a[0] * b[0] + a[1] * b[1];
  const middleOf = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], cross = (a, b) => a[0] * b[1] - a[1] * b[0];
  const edges = (line, closed) => line.slice(0, closed ? undefined : -1).map((point, i) => [point, line[(i + 1) % line.length]]);
  const mean = (values) => values.reduce((sum, one) => sum + one, 0) / values.length;

  const framed = (origin, apex, toLateral) => {
    const axis = minus(apex, origin), length = Math.hypot(...axis);
    if (!length) return null;
    const toe = axis.map((one) => one / length), side = Math.sign(dot([toe[1], -toe[0]], toLateral));
    if (!side) return null;
    const lateral = [toe[1] * side, -toe[0] * side];
    return (line) => line.map((point) => [dot(minus(point, origin), lateral), dot(minus(point, origin), toe)]);
  };
  const frameOf = ({ frog_apex: apex, frog_medial: medial, frog_lateral: lateral }) =>
    apex && medial && lateral ? framed(middleOf(medial[0], lateral[0]), apex[0], minus(lateral[0], medial[0])) : null;
  const soleFrame = (points) => {
    const found = frameOf(points), wall = points.wall;
    return found || !wall ? found : framed(middleOf(wall[0], wall[wall.length - 1]), centroid(wall), minus(wall[wall.length - 1], wall[0]));
  };

  const area = (line) => Math.abs(edges(line, true).reduce((sum, [a, b]) => sum + cross(a, b), 0)) / 2;
  const lateralArea = (line) => area(edges(line, true).flatMap(([a, b]) => {
    const run = b[0] - a[0], cut = [0, a[1] - (run ? (a[0] / run) * (b[1] - a[1]) : 0)];
    return [a[0] < 0 ? cut : a, b[0] < 0 ? cut : b];
  }));
  const centroid = (line) => {
    const at = [mean(line.map((p) => p[0])), mean(line.map((p) => p[1]))];
    let doubled = 0, sum = [0, 0];
    for (const [a, b] of edges(line.map((point) => minus(point, at)), true)) {
      const one = cross(a, b);
      doubled += one;
      sum = [sum[0] + (a[0] + b[0]) * one, sum[1] + (a[1] + b[1]) * one];
    }
    return doubled ? [at[0] + sum[0] / (3 * doubled), at[1] + sum[1] / (3 * doubled)] : at;
  };

  const widest = (line) => {
    const levels = line.map((point) => point[1]).sort((a, b) => a - b), runs = edges(line, true);
    const widths = levels.map((level) => {
      let [most, least] = [-Infinity, Infinity];
      for (const [a, b] of runs) {
        const rise = b[1] - a[1], share = (level - a[1]) / (rise || 1);
        if (share < 0 || share > 1 || (!rise && share !== 0)) continue;
        const x = a[0] + share * (b[0] - a[0]);
        [most, least] = [Math.max(most, x), Math.min(least, x)];
      }
      return most - least;
    });
    const ends = [[levels, widths], [[...levels].reverse(), [...widths].reverse()]].map(([ys, wide]) => endOfStretch(ys, wide));
    return { width: Math.max(...widths), place: (ends[0] + ends[1]) / 2 };
  };
  const endOfStretch = (levels, widths) => {
    const most = Math.max(...widths), enough = NEARLY_WIDEST * most, peak = widths.indexOf(most);
    const after = widths.findIndex((wide, i) => i > peak && wide < enough);
    if (after < 0) return levels[levels.length - 1];
    const drop = widths[after - 1] - widths[after], share = Math.min(Math.max((widths[after - 1] - enough) / (drop > 0 ? drop : 1), 0), 1);
    return levels[after - 1] + share * (levels[after] - levels[after - 1]);
  };

  // How far an outline covers its mirror image about the axis, 0 to 1: by levels across the axis.
  const mirrorMatch = (line) => {
    const ys = line.map((point) => point[1]), low = Math.min(...ys), high = Math.max(...ys), runs = edges(line, true);
    let shared = 0, either = 0;
    for (let i = 0; i < LEVELS; i++) {
      const level = low + ((i + 0.5) / LEVELS) * (high - low);
      const met = runs.filter(([a, b]) => a[1] > level !== b[1] > level).map(([a, b]) => a[0] + ((level - a[1]) / (b[1] - a[1])) * (b[0] - a[0])).sort((a, b) => a - b);
      const own = [], length = (spans) => spans.reduce((sum, [a, b]) => sum + b - a, 0);
      for (let k = 0; k + 1 < met.length; k += 2) own.push([met[k], met[k + 1]]);
      const other = own.map(([a, b]) => [-b, -a]);
      const both = own.reduce((sum, [a, b]) => sum + other.reduce((part, [c, d]) => part + Math.max(0, Math.min(b, d) - Math.max(a, c)), 0), 0);
      shared += both;
      either += 2 * length(own) - both;
    }
    return shared / either;
  };

  // How far the runs of a line stand from a middle at an angle; null where none of them does.
  const reach = (runs, middle, degrees) => {
    const ray = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)], across = [ray[1], -ray[0]];
    let far = -Infinity;
    for (const [a, b] of runs) {
      const p = minus(a, middle), q = minus(b, middle), by = dot(p, across), next = dot(q, across);
      if (by > 0 !== next > 0) far = Math.max(far, (dot(p, ray) * next - dot(q, ray) * by) / (next - by));
    }
    return far >= 0 ? { far, ray } : null;
  };
  const nearest = (spot, runs) => Math.min(...runs.map(([a, b]) => {
    const run = minus(b, a), away = minus(spot, a), length = dot(run, run);
    const share = Math.min(Math.max(dot(away, run) / (length || 1), 0), 1);
    return Math.hypot(away[0] - share * run[0], away[1] - share * run[1]);
  }));
  const inZone = (degrees, [name, low, high]) => {
    if (name === "toe") return Math.abs(degrees) <= high;
    const side = low < 0 ? -1 : 1, [near, far] = [Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high))];
    return side * degrees > near && side * degrees <= far;
  };
  const ring = (points) => {
    const frame = points.wall && points.white_line ? soleFrame(points) : null;
    if (!frame) return {};
    const line = frame(points.white_line), middle = centroid(line), places = [];
    const wall = edges(frame(points.wall), false), white = edges(line, false);
    for (let degrees = -180 + STEP; degrees <= 180; degrees += STEP) {
      const outer = reach(wall, middle, degrees);
      if (!outer || !reach(white, middle, degrees)) continue;
      places.push([degrees, nearest([middle[0] + outer.far * outer.ray[0], middle[1] + outer.far * outer.ray[1]], white)]);
    }
    return { ...ringZones(places), ...ringSides(places), ...concentric(places) };
  };
  const ringZones = (places) => Object.fromEntries(ZONES.flatMap((zone) => {
    const found = places.filter(([degrees]) => inZone(degrees, zone)).map(([, mm]) => mm);
    return found.length < FEWEST_PLACES ? [] : [[`ring_${zone[0].replaceAll(" ", "_")}_mm`, mean(found)]];
  }));
  const ringSides = (places) => {
    const angles = new Set(places.map(([degrees]) => degrees));
    const both = places.filter(([degrees]) => angles.has(-degrees) && !inZone(degrees, ZONES[3]));
    if (!both.length) return {};
    const [medial, lateral] = [-1, 1].map((side) => mean(both.filter(([degrees]) => side * degrees > 0).map(([, mm]) => mm)));
    return { ring_medial_mm: medial, ring_lateral_mm: lateral, ring_difference_mm: lateral - medial };
  };

  // How far the wall stands outside the line that runs everywhere equally far from the white line, by zone and over all.
  const concentric = (places) => {
    const angles = places.map(([degrees]) => degrees), both = places.filter(([degrees]) => angles.includes(-degrees));
    if (!angles.some((one) => one >= FAR_ENOUGH) || !angles.some((one) => -one >= FAR_ENOUGH)) return {};
    const even = mean(both.map(([, mm]) => mm));
    const held = ZONES.map((zone) => [zone[0], places.filter(([degrees]) => inZone(degrees, zone)).map(([, mm]) => mm - even)]).filter(([, off]) => off.length >= FEWEST_PLACES);
    const zones = Object.fromEntries(held.map(([name, off]) => [`concentric_${name.replaceAll(" ", "_")}_mm`, mean(off)]));
    const squares = held.reduce((sum, [, off]) => sum + off.length * mean(off) ** 2, 0), count = held.reduce((sum, [, off]) => sum + off.length, 0);
    return { ...zones, concentric_mm: Math.sqrt(squares / count) };
  };

  const outline = (foot) => {
    const wide = widest(foot.wall), medial = lateralArea(foot.wall.map(([x, y]) => [-x, y])), lateral = lateralArea(foot.wall);
    const toe = Math.max(...foot.wall.map((point) => point[1])), match = 100 * mirrorMatch(foot.wall);
    const found = { sole_width_mm: wide.width, sole_area_mm2: area(foot.wall), medial_area_percent: (100 * medial) / (medial + lateral), lateral_area_percent: (100 * lateral) / (medial + lateral), mirror_match_percent: match };
    if (foot.breakover) found.sole_breakover_mm = toe - foot.breakover[0][1];
    if (!foot.buttress_medial || !foot.buttress_lateral) return found;
    const heel = (foot.buttress_medial[0][1] + foot.buttress_lateral[0][1]) / 2, [before, behind] = [toe - wide.place, wide.place - heel];
    Object.assign(found, { sole_length_mm: toe - heel, width_to_length: wide.width / (toe - heel), widest_from_toe_percent: (100 * before) / (toe - heel) });
    if (behind > 0) found.toe_to_heel_part = before / behind;
    return found;
  };
  const converging = (bar, inward) => (Math.atan2(inward * (bar[1][0] - bar[0][0]), bar[1][1] - bar[0][1]) * 180) / Math.PI;
  const inside = (foot) => {
    const base = minus(foot.frog_lateral[0], foot.frog_medial[0]), apex = foot.frog_apex[0][1];
    const found = { frog_length_mm: apex, frog_width_mm: Math.hypot(...base), frog_width_to_length: Math.hypot(...base) / apex };
    for (const [side, inward] of [["medial", 1], ["lateral", -1]]) {
      if (foot[`buttress_${side}`]) found[`heel_buttress_${side}_mm`] = apex - foot[`buttress_${side}`][0][1];
      if (foot[`bar_${side}`]) found[`bar_${side}_deg`] = converging(foot[`bar_${side}`], inward);
    }
    if (foot.buttress_medial && foot.buttress_lateral) found.buttress_difference_mm = foot.buttress_medial[0][1] - foot.buttress_lateral[0][1];
    if (foot.bar_medial && foot.bar_lateral) found.bar_difference_deg = found.bar_lateral_deg - found.bar_medial_deg;
    return found;
  };

  // points: landmarks with their lines drawn.
  const figures = (points) => {
    const frame = frameOf(points);
    const foot = frame && Object.fromEntries(Object.entries(points).map(([name, line]) => [name, frame(line)]));
    return { ...(foot ? { ...(foot.wall ? outline(foot) : {}), ...inside(foot) } : {}), ...ring(points) };
  };
  return { figures, soleFrame };
})();
