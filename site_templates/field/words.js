// Words for people come from the table; numbers and days as people write them.
const words = (key, facts = {}) => {
  const text = DATA.words[key];
  if (text === undefined) throw new Error(`no words for ${key}`);
  return text.replace(/\{(\w+)\}/g, (_, name) => (facts[name] === undefined ? "" : facts[name]));
};
const named = (key) => DATA.words[`name_${key.replaceAll(" ", "_")}`] || key.replaceAll("_", " ");
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const today = () => isoDay(new Date());
const isoDay = (day) => [day.getFullYear(), day.getMonth() + 1, day.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
const spokenDay = (iso) => new Date(`${iso}T12:00`).toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric" });
const clock = (moment) => new Date(moment).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
const daysBetween = (from, to) => Math.round((Date.parse(to) - Date.parse(from)) / 864e5);
const counted = (number, one, several) => words(number === 1 ? one : several, { count: number });
