// Folded parts are opened for printing and closed again afterwards.
(() => {
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll("details:not([open])")];
    for (const part of opened) part.open = true;
  });
  addEventListener("afterprint", () => {
    for (const part of opened) part.open = false;
  });
  // A link to a visit opens the year it is folded into.
  const show = () => {
    const goal = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const fold = goal && goal.closest("details");
    if (fold && !fold.open) {
      fold.open = true;
      goal.scrollIntoView();
    }
  };
  addEventListener("hashchange", show);
  show();
})();
