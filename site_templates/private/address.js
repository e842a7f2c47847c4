// What the address asks for: `#k=` is a key and is taken out of the address bar at once; `#p=` is a page to go to, if it
// is one of these pages.
const inside = (text) => {
  try {
    const url = new URL(decodeURIComponent(text), base);
    const ours = url.origin === base.origin && url.pathname.startsWith(base.pathname) && !url.username && !url.password;
    return ours ? url : base;
  } catch {
    return base;
  }
};

const readAddress = () => {
  const parts = location.hash.slice(1).split("&");
  const key = parts.find((part) => part.startsWith("k="));
  const rest = parts.filter((part) => !part.startsWith("k=")).join("&");
  const clean = location.pathname + location.search + (rest && `#${rest}`);
  if (key !== undefined) history.replaceState(history.state, "", clean);
  return { secret: key && key.slice(2), goal: rest.startsWith("p=") ? inside(rest.slice(2)) : null };
};

// Changing nothing but the part after # would not load anything.
const go = (goal) => {
  const same = goal.pathname === location.pathname && goal.search === location.search;
  if (!same) return location.replace(goal.href);
  history.replaceState(null, "", goal.href);
  location.reload();
};
