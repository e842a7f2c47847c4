// Words for people come from the table; numbers and days as people write them.
const words = (key, facts = {}) => {
  const text = DATA.words[key];
  if (text === undefined) throw new Error(`no words for ${key}`);
  return text.replace(/\{(\w+)\}/g, (_, name) => (facts[name] === undefined ? "" : facts[name]));
};
// field: in which a choice stands, where that matters.
const named = (key, field) => DATA.names[`${field}_${key.replaceAll(" ", "_")}`] || DATA.names[key.replaceAll(" ", "_")] || key.replaceAll("_", " ");
const figure = (value) => (typeof value === "number" ? String(value).replace(".", DATA.tracing.decimal) : value);
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const today = () => isoDay(new Date());
const isoDay = (day) => [day.getFullYear(), day.getMonth() + 1, day.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
const spokenDay = (iso) => new Date(`${iso}T12:00`).toLocaleDateString(DATA.locale, { day: "numeric", month: "short", year: "numeric" });
const clock = (moment) => new Date(moment).toLocaleTimeString(DATA.locale, { hour: "2-digit", minute: "2-digit" });
const daysBetween = (from, to) => Math.round((Date.parse(to) - Date.parse(from)) / 864e5);
const plural = new Intl.PluralRules(DATA.locale);
const counted = (number, what) => {
  const key = `${what}_${plural.select(number)}`;
  return words(DATA.words[key] ? key : `${what}_several`, { count: figure(number) });
};
