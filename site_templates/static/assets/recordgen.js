(() => {
  // The column beside a horse's page stays in view where all of it fits.
  const side = document.querySelector(".rg-side");
  const fit = () => side && side.classList.toggle("stays", side.offsetHeight < innerHeight - 80);
  addEventListener("resize", fit);
  fit();

  // What a reader opens is printed, what stays folded is not.
  addEventListener("click", (event) => {
    const summary = event.target.closest && event.target.closest("summary");
    if (summary) summary.parentElement.classList.toggle("opened", !summary.parentElement.open);
  });

  // A link to a visit opens what it is folded into.
  const show = () => {
    const goal = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!goal) return;
    for (let fold = goal; fold; fold = fold.parentElement) if (fold.tagName === "DETAILS") {
      fold.open = true;
      fold.classList.add("opened");
    }
    goal.scrollIntoView();
  };
  addEventListener("hashchange", show);
  show();
})();
