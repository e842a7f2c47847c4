// Jobs that are ticked off, kept on this device alone, by the days on which they were done.
//
// <input type="checkbox" data-tick="KEY"> stands for today; with data-weekday="0" to "6", Monday first, for that day of
// this week. A job of a horse has one key on every page, so a tick on one shows on all. What is marked data-ticks-kept
// is shown where ticks can be kept.
(() => {
  const KEPT = "rg-ticks", DAYS_KEPT = 35;
  const boxes = document.querySelectorAll("input[data-tick]");
  if (!boxes.length) return;

  const twoDigits = (number) => String(number).padStart(2, "0");
  const dayInDays = (days) => {
    const now = new Date(), day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + days);
    return `${day.getFullYear()}-${twoDigits(day.getMonth() + 1)}-${twoDigits(day.getDate())}`;
  };
  const weekdayToday = () => (new Date().getDay() + 6) % 7;
  const dayOf = (box) => dayInDays(box.dataset.weekday ? box.dataset.weekday - weekdayToday() : 0);

  const read = () => {
    try {
      const kept = JSON.parse(localStorage.getItem(KEPT));
      return kept && typeof kept === "object" ? kept : {};
    } catch {
      return {};
    }
  };
  const daysOf = (kept, key) => (Array.isArray(kept[key]) ? kept[key] : []);

  const keep = (box) => {
    const kept = read(), day = dayOf(box), first = dayInDays(-DAYS_KEPT);
    const others = daysOf(kept, box.dataset.tick).filter((one) => one !== day);
    kept[box.dataset.tick] = box.checked ? [...others, day] : others;
    for (const key of Object.keys(kept)) {
      kept[key] = daysOf(kept, key).filter((one) => one >= first);
      if (!kept[key].length) delete kept[key];
    }
    try {
      localStorage.setItem(KEPT, JSON.stringify(kept));
    } catch {
      // Without room or leave the box still takes its tick; it is gone with the page.
    }
  };

  const show = () => {
    const kept = read();
    for (const box of boxes) box.checked = daysOf(kept, box.dataset.tick).includes(dayOf(box));
    for (const one of document.querySelectorAll("[data-weekday]"))
      one.toggleAttribute("data-today", Number(one.dataset.weekday) === weekdayToday());
  };
  const canKeep = () => {
    try {
      localStorage.setItem(`${KEPT}?`, "");
      localStorage.removeItem(`${KEPT}?`);
      return true;
    } catch {
      return false;
    }
  };

  for (const box of boxes) box.addEventListener("change", () => {
    keep(box);
    if (canKeep()) show();
  });
  if (!canKeep()) return;
  for (const told of document.querySelectorAll("[data-ticks-kept]")) told.hidden = false;
  addEventListener("storage", show);
  addEventListener("pageshow", show);
  document.addEventListener("visibilitychange", show);
  show();
})();
