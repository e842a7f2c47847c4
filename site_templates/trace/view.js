// Where the picture lies on the screen: px of the picture to px of the screen and back.
const traceView = (size) => {
  const MOST = 12;
  const view = { unit: 1, x: 0, y: 0, width: 1, height: 1, fitted: true };
  const least = () => Math.min(view.width / size[0], view.height / size[1]);
  const held = () => {
    view.unit = Math.min(Math.max(view.unit, least()), MOST * least());
    for (const [axis, room, length] of [["x", view.width, size[0]], ["y", view.height, size[1]]]) {
      const seen = room / view.unit;
      view[axis] = seen >= length ? (length - seen) / 2 : Math.min(Math.max(view[axis], 0), length - seen);
    }
    view.fitted = view.unit <= least() * 1.001;
  };
  const fit = () => { view.unit = least(); held(); };
  const toPicture = (x, y) => [view.x + x / view.unit, view.y + y / view.unit];
  const toScreen = ([x, y]) => [(x - view.x) * view.unit, (y - view.y) * view.unit];
  // The same spot of the picture stays under the same spot of the screen.
  const zoom = (times, x, y) => {
    const spot = toPicture(x, y);
    view.unit *= times;
    view.unit = Math.min(Math.max(view.unit, least()), MOST * least());
    [view.x, view.y] = [spot[0] - x / view.unit, spot[1] - y / view.unit];
    held();
  };
  const shift = (x, y) => { view.x -= x / view.unit; view.y -= y / view.unit; held(); };
  // A turned phone keeps what is in the middle, and how large it is.
  const resize = (width, height) => {
    const [middle, fitted] = [toPicture(view.width / 2, view.height / 2), view.fitted];
    [view.width, view.height] = [width, height];
    if (fitted) return fit();
    [view.x, view.y] = [middle[0] - width / 2 / view.unit, middle[1] - height / 2 / view.unit];
    return held();
  };
  const show = (points, room) => {
    const [xs, ys] = [0, 1].map((k) => points.map((point) => point[k])), [left, right, top, low] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    view.unit = Math.min(view.width / (right - left + 2 * room), view.height / (low - top + 2 * room));
    view.unit = Math.min(Math.max(view.unit, least()), MOST * least());
    [view.x, view.y] = [(left + right) / 2 - view.width / 2 / view.unit, (top + low) / 2 - view.height / 2 / view.unit];
    held();
  };
  const holds = ([x, y]) => x >= 0 && y >= 0 && x <= size[0] && y <= size[1];
  const clamped = ([x, y]) => [Math.min(Math.max(x, 0), size[0]), Math.min(Math.max(y, 0), size[1])];
  return Object.assign(view, { fit, toPicture, toScreen, zoom, shift, resize, show, holds, clamped });
};
