// The screen alone on a page, for one photograph; what was tapped is kept in this browser under the picture's checksum.
const traceStore = () => {
  const own = `tracing ${TRACE.sum} ${TRACE.moment}`, LENGTH = "tracing length";
  const tried = (what, otherwise) => { try { return what(); } catch { return otherwise; } };
  return {
    read: () => tried(() => JSON.parse(localStorage.getItem(own)), null),
    write: (draft) => {
      return tried(() => { localStorage.setItem(own, JSON.stringify(draft)); localStorage.setItem(LENGTH, draft.length); return true; }, false);
    },
    length: () => Number(tried(() => localStorage.getItem(LENGTH), 0)),
    clear: () => tried(() => localStorage.removeItem(own)),
  };
};
const traceStart = async () => {
  const picture = new Image();
  picture.src = TRACE.picture;
  await picture.decode();
  document.title = `${TRACE.named}, ${TRACE.words.view[TRACE.view]}, ${TRACE.words.moment[TRACE.moment]}`;
  const done = async (tracing) => {
    const answer = await fetch("done", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(tracing) });
    if (!answer.ok) throw new Error("not taken");
    return answer.json();
  };
  window.tracing = traceScreen(document.getElementById("trace"), TRACE, picture, traceStore(), done);
  document.body.dataset.ready = "yes";
};
traceStart();
