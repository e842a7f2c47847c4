// The page that asks for the words.
const HOURS = 3600000, MEMORY = 12 * HOURS, OWN_DEVICE = 30 * 24 * HOURS;
const page = document.documentElement;
const form = document.getElementById("words-form"), field = document.getElementById("words");
const own = document.getElementById("own"), told = document.getElementById("told"), button = document.getElementById("open");

const tell = (name) => {
  told.className = name === "opening" || name === "locked" ? "" : "act";
  told.textContent = given.words[name] || "";
};
const refuse = (name) => { page.dataset.state = "refused"; tell(name); };

// The colours that a reader chose on the pages.
tab(() => {
  const chosen = localStorage.getItem("rg-scheme");
  if (chosen) page.dataset.scheme = chosen;
});

const obstacle = async () => {
  if (location.protocol === "file:") return "file";
  if (!isSecureContext || !crypto.subtle) return "insecure";
  if (!container || !("DecompressionStream" in self)) return "no_worker";
  try {
    await kept("session");
  } catch {
    return "no_storage";
  }
  return null;
};

const register = () => container.register(`${base.href}sw.js`, { scope: base.pathname, updateViaCache: "none" });

// A hard reload goes past the worker; loading once more comes to it, and nobody need type anything.
const healing = async () => {
  if (taken(again)) return false;
  const known = await container.getRegistration(base.href);
  const worked = known && known.scope === base.href && known.active;
  if (!worked && !alive(await kept("session"))) return false;
  if (!worked) await register().then(() => container.ready);
  if (!tab((notes) => { notes.setItem(again, "1"); return true; })) return false;
  location.reload();
  return true;
};

const ringFile = async () => {
  const answer = await fetch(`${base.href}keys.json`, { cache: "no-cache" });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.text();
};

const openedBy = async (text, kind, typed) => {
  try {
    const ring = JSON.parse(text);
    const key = await keyFrom(ring, kind, typed);
    return key ? { key, site: ring.site, kid: ring.kid } : null;
  } catch {
    throw new Error("broken");
  }
};

const handOver = async (found) => {
  const keeping = Boolean(own && own.checked);
  session = { ...found, exp: Date.now() + (keeping ? OWN_DEVICE : MEMORY) };
  await register();
  const { active } = await container.ready;
  if (!(await ask(active, { say: "open", session, keeping }, 10000))) throw new Error("worker");
};

const open = async (kind, typed, otherwise) => {
  const text = await ringFile().catch(() => null);
  if (text === null) return "unreachable";
  const found = await openedBy(text, kind, typed).catch(() => undefined);
  if (found === undefined) return "broken";
  if (found === null) return otherwise;
  return handOver(found).then(() => null, () => "no_worker");
};

const attempt = async (kind, typed, otherwise) => {
  button.disabled = true;
  tell("opening");
  const trouble = await open(kind, typed, otherwise);
  if (!trouble) return go(address.goal || new URL(location.href));
  button.disabled = false;
  tell(trouble);
  field.focus();
  field.select();
};

const submit = () => {
  if (normal(field.value)) return attempt("pass", field.value, "wrong");
  tell("empty");
  field.focus();
};
const address = readAddress();

const begin = async () => {
  const reason = page.dataset.reason;
  const trouble = await obstacle();
  if (trouble) return refuse(trouble);
  if (reason) taken(again);
  if (!reason && address.secret === undefined && await healing()) return;
  page.dataset.state = "asking";
  tell(reason === "changed" ? "changed" : taken(locked) ? "locked" : "");
  field.focus();
  if (address.secret !== undefined) attempt("link", address.secret, "link");
};

form.addEventListener("submit", (event) => { event.preventDefault(); submit(); });
document.getElementById("show").addEventListener("change", (event) => { field.type = event.target.checked ? "text" : "password"; });
// Another link typed over this one changes only the part after #.
addEventListener("hashchange", () => location.reload());
begin();
