// What was tapped so far of one photograph, kept at every change, and the way back.
const traceDraft = (data, store) => {
  const MOST_BACK = 60;
  // SD of a tap in px of the screen: a finger that only touched, and one that settled under the loupe. Judgement, from
  // simulated hands.
  const USUAL_HAND = 1.5;
  const HAND = { touched: 5.7, settled: 1.5 };
  const table = data.steps[data.view], takes = data.takes[data.view];
  const step = ({ mark, good }) => {
    const [least, exactly] = takes[mark], smooth = data.view === "sole" && data.outlines[mark];
    return { key: mark, least: smooth || least, exactly, good, line: !exactly };
  };
  const SCALE = { key: "scale", least: 2, exactly: true }, REVIEW = { key: "review", least: 0 };

  // Of a rule, mm: a round length in the unit that is shown.
  const USUAL = data.units.mm ? 4 * data.units.mm.per : 100;
  const fresh = () => ({ at: 0, points: {}, hand: {}, length: store.length() || USUAL, lay: "", noScale: false, more: false, from: null, ridge: null, back: [] });
  // A tap of an earlier tracing is as sure as its landmark was.
  const handOfRecord = (one) => (one.hand_error ? Object.fromEntries(Object.entries({ ...one.landmarks, scale: [1, 1] }).map(([key, points]) => [key, points.map(() => one.hand_errors?.[key] ?? one.hand_error)])) : {});
  // What the white line hangs on: its points, those of the wall and the frog, and the table of outlines that it follows.
  const lined = (points, version = data.model.version) => JSON.stringify([version, ...["frog_apex", "frog_medial", "frog_lateral", "wall", "white_line"].map((key) => points[key] || [])]);
  const recorded = (one) => {
    const scale = one.scale, points = { ...one.landmarks, ...(scale ? { scale: [scale.from, scale.to] } : {}) };
    const ridge = one.ridge ? { told: one.ridge, kept: true, at: lined(points, one.model ?? null) } : null;
    return { ...fresh(), points, ridge, noScale: !scale, length: scale ? scale.length : USUAL, lay: scale ? scale.lay || "on foot" : "", from: one.number, more: table.later.some(({ mark }) => one.landmarks[mark]), hand: handOfRecord(one) };
  };
  const earlier = data.earlier[data.earlier.length - 1];
  const kept = store.read();
  let now = kept || (earlier ? recorded(earlier) : fresh());
  // The ridge that was found, as long as the line stands by which it was looked for.
  const ridge = () => (now.ridge?.at === lined(now.points) ? now.ridge : null);
  const source = data.changed ? "changed" : now.ridge?.kept && !ridge() ? "ridge_gone" : kept ? "again" : earlier ? (earlier.same ? "from_visit" : "changed") : "";
  let unkept = false;
  const save = async () => { unkept = !(await store.write(now)); };

  const steps = () => [SCALE, ...table.steps.map(step), ...(now.more ? table.later.map(step) : []), REVIEW];
  const here = () => steps()[Math.min(now.at, steps().length - 1)];
  const pointsOf = (key) => now.points[key] || [];
  const change = (alter) => {
    const { back, ...rest } = now;
    back.push(JSON.stringify(rest));
    if (back.length > MOST_BACK) back.shift();
    alter(now);
    save();
  };
  const takeBack = () => {
    if (!now.back.length) return false;
    const before = JSON.parse(now.back.pop());
    now = { ...before, back: now.back };
    save();
    return true;
  };
  const go = (at) => { now.at = Math.max(0, Math.min(at, steps().length - 1)); save(); };
  const anew = () => { now = fresh(); save(); };

  // Lines in their order, whatever the order of the taps: round a sole from the inner heel, walls from the hairline down.
  const ordered = (key, points) => {
    if (key in traceLines.OUTLINES) return round(points);
    const ground = now.points.ground;
    if (!ground || ground.length < 2 || !takes[key] || takes[key][1]) return points;
    const [along, start] = [[ground[1][0] - ground[0][0], ground[1][1] - ground[0][1]], ground[0]];
    const height = ([x, y]) => Math.abs(along[0] * (y - start[1]) - along[1] * (x - start[0]));
    return [...points].sort((a, b) => height(b) - height(a));
  };
  const BEHIND_APEX = 0.13;
  const round = (points) => {
    const [apex, medial, lateral] = ["frog_apex", "frog_medial", "frog_lateral"].map((key) => pointsOf(key)[0]);
    const frame = apex && medial && lateral && traceSole.soleFrame({ frog_apex: [apex], frog_medial: [medial], frog_lateral: [lateral] });
    if (!frame) return points;
    const middle = (1 - BEHIND_APEX) * frame([apex])[0][1];
    const turn = (point) => { const [x, y] = frame([point])[0]; return Math.atan2(x, y - middle); };
    return [...points].sort((a, b) => turn(a) - turn(b));
  };

  // Whole landmarks alone; a line with too few points waits.
  const tracing = () => {
    const landmarks = {};
    for (const one of steps()) {
      const points = pointsOf(one.key);
      if (one.key !== "scale" && one.least && points.length >= one.least) landmarks[one.key] = ordered(one.key, points);
    }
    const ends = pointsOf("scale"), scale = !now.noScale && ends.length === 2 && now.lay ? { from: ends[0], to: ends[1], length: now.length, lay: now.lay } : null;
    const drawn = data.view === "sole" && (landmarks.wall || landmarks.white_line) ? "smooth" : "straight";
    const usual = landmarks.wall ? { sd: sd(), table: data.model } : null;
    return { view: data.view, scale, drawn, landmarks, usual, ridge: landmarks.white_line && ridge()?.kept ? ridge().told : null };
  };
  const setRidge = (told, kept) => change(() => { now.ridge = told && { told, kept, at: lined(now.points) }; });
  // SD of a tap in px of this picture.
  const sd = () => ((handError() || USUAL_HAND) * data.size[0]) / 1000;
  const meanError = (all) => {
    const mean = Math.sqrt(all.reduce((sum, one) => sum + one * one, 0) / all.length);
    return Math.round(Math.min(Math.max(mean, 0.3), 30) * 10) / 10;
  };
  const tapsOf = (key) => (now.hand[key] || []).filter(Boolean);
  // Of the taps that lines are drawn by where there are such, else of all.
  const handError = () => {
    const keys = Object.keys(now.hand), onLines = keys.filter((key) => key in data.outlines).flatMap(tapsOf);
    const all = onLines.length ? onLines : keys.flatMap(tapsOf);
    return all.length ? meanError(all) : null;
  };
  // Of landmarks that were tapped otherwise: at another zoom, or with a finger that only touched.
  const handErrors = () => {
    const usual = handError(), OTHERWISE = 0.15;
    const found = Object.keys(now.hand).filter((key) => tapsOf(key).length && pointsOf(key).length).map((key) => [key, meanError(tapsOf(key))]);
    const apart = found.filter(([key, error]) => !(key in data.outlines) && Math.abs(error - usual) > OTHERWISE * usual);
    return apart.length ? Object.fromEntries(apart) : null;
  };
  // How far a tap may be off, in px of a picture 1000 px wide. unit: px of the screen in one px of the picture.
  const handOf = (how, unit) => (HAND[how] / unit) * (1000 / data.size[0]);

  return { get now() { return now; }, get unkept() { return unkept; }, source, steps, here, pointsOf, change, takeBack, go, anew, ordered, tracing, ridge, setRidge, handError, handErrors, handOf, save };
};
