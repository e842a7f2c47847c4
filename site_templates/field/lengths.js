// Lengths as the practice measures them: millimetres as numbers, or inches, which stand in the record as somebody writes
// them, such as "3 3/16 in", so that no number can be taken for the other unit.
const INCH_MM = 25.4, PARTS = 16, UNIT_IN = " in";
const byInches = (entry) => DATA.inches && (entry.unit === "mm" || entry.unit === "cm");
const perInch = (entry) => (entry.unit === "cm" ? INCH_MM / 10 : INCH_MM);
const isSize = (value) => typeof value === "number" || (typeof value === "string" && value.endsWith(UNIT_IN));
const divisor = (one, other) => (other ? divisor(other, one % other) : one);
// Sixteenths of an inch as a rule reads.
const onRule = (parts) => {
  const size = Math.abs(parts), whole = Math.floor(size / PARTS), rest = size % PARTS, by = divisor(rest, PARTS);
  const text = [whole || !rest ? whole : "", rest ? `${rest / by}/${PARTS / by}` : ""].filter((part) => part !== "").join(" ");
  return parts < 0 ? `−${text}` : text;
};
// What was entered or kept as a number in the unit of its field.
const inUnit = (entry, value) => {
  const found = typeof value === "string" && /^([\d.]+(?![\d/]))? ?(?:(\d+)\/(\d+))? in$/.exec(value);
  return found ? (Number(found[1] || 0) + (found[2] ? found[2] / found[3] : 0)) * perInch(entry) : value;
};
const partsOf = (entry, value) => Math.round((inUnit(entry, value) / perInch(entry)) * PARTS);
// A size as it is shown, without its unit; what is less than half a sixteenth is a decimal, and never nothing.
const sized = (entry, value) => {
  if (!byInches(entry) || !isSize(value)) return figure(value);
  if (typeof value === "string") return value.slice(0, -UNIT_IN.length).replace(".", DATA.tracing.decimal);
  return value && !partsOf(entry, value) ? figure(Number((value / perInch(entry)).toFixed(2))) : onRule(partsOf(entry, value));
};
// From one tap in a row of numbers to the next: a millimetre, a sixteenth of an inch, a quarter around a body.
const partsInStep = (entry) => (entry.unit === "cm" ? PARTS / 4 : 1);
const stepsOf = (entry, value) => (byInches(entry) ? Math.round(partsOf(entry, value) / partsInStep(entry)) : Math.round(value));
const atStep = (entry, count) => (byInches(entry) ? `${onRule(count * partsInStep(entry))}${UNIT_IN}` : count);
const stepSize = (entry) => (byInches(entry) ? (perInch(entry) / PARTS) * partsInStep(entry) : 1);
// How far a value lies from the last one, with its sign.
const apart = (entry, value, last) => {
  const parts = byInches(entry) ? partsOf(entry, value) - partsOf(entry, last) : Math.round((value - last) * 10) / 10;
  return `${parts > 0 ? "+" : ""}${byInches(entry) ? onRule(parts) : figure(parts)}`;
};
