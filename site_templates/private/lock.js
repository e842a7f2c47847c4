// On every private page: locks, saves for reading without a connection, and keeps keys out of the address bar.
const words = given.words;
const link = readAddress();
if (link.goal) go(link.goal);
addEventListener("hashchange", () => {
  const { goal } = readAddress();
  if (goal) go(goal);
});
// A browser fetches what is to be taken along past the worker, so the host would see its name and have nothing to give.
addEventListener("click", async (event) => {
  const asked = event.target.closest && event.target.closest("a[download]");
  if (!asked || !asked.href.startsWith(base.href)) return;
  event.preventDefault();
  const answer = await fetch(asked.href);
  if (!answer.ok) return;
  const content = URL.createObjectURL(await answer.blob());
  const name = asked.download || asked.pathname.split("/").pop();
  Object.assign(document.createElement("a"), { href: content, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(content), 60000);
});
taken(again);
taken(locked);

const lock = async () => {
  session = null;
  if (channel) channel.postMessage({ forget: true, leave: true });
  tab((notes) => notes.setItem(locked, "1"));
  await ask(await worker(), { say: "lock" }, 3000);
  setTimeout(leave, 600);
};

const element = (name, text, act) => {
  const made = document.createElement(name);
  made.textContent = text;
  if (act) { made.type = "button"; made.addEventListener("click", act); }
  return made;
};

const head = document.querySelector(".rg-head-in");
if (head) {
  const button = element("button", "", lock);
  button.className = "rg-icon private-lock";
  button.title = words.lock;
  button.setAttribute("aria-label", words.lock);
  button.innerHTML = given.icon;
  head.append(button);
}

const state = element("span", "");
const save = async () => {
  const { port1, port2 } = new MessageChannel();
  keepCopy.hidden = true;
  if (navigator.storage && navigator.storage.persist) navigator.storage.persist();
  port1.onmessage = ({ data }) => {
    if (data && data.done) state.textContent = words.saving.replace("{done}", data.done).replace("{all}", data.all);
    else showSaved(data && data.saved, words.not_saved);
  };
  (await worker()).postMessage({ say: "save" }, [port2]);
};
const showSaved = (saved, otherwise) => {
  keepCopy.hidden = Boolean(saved);
  state.textContent = saved ? words.saved : otherwise;
};
const keepCopy = element("button", words.save, save);
state.setAttribute("role", "status");

const title = element("span", words.private);
const showAbout = (about) => {
  if (!about) return;
  showSaved(about.saved, "");
  const day = new Date(about.day || "");
  if (isNaN(day)) return;
  const told = day.toLocaleDateString(words.locale, { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });
  title.textContent = words.published.replace("{day}", told);
};

const foot = element("p", "");
foot.className = "private-foot";
foot.append(title, element("button", words.lock, lock), keepCopy, state);
const style = element("style", given.style);
document.head.append(style);
(document.querySelector(".rg") || document.querySelector("article") || document.body).append(foot);

if (container) {
  worker().then((found) => ask(found, { say: "about" }, 3000)).then(showAbout);
}
