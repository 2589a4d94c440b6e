// Numbers and their units: what is typed keeps its unit, what is shown is converted.

const bare = (text) => /^[+\-−]?\s*(\d+[.,]?\d*|[.,]\d+)$/.test(text);
const plainNumber = (text) => text.replace(/,(?!\d{3}$)/, ".").replace("−", "-").replace(/\s/g, "");
const isQuantity = (field) => !!form.quantities[field.kind];
const unitsOf = (field) => form.quantities[field.kind][system()];
const scaleOf = (kind, symbol) => form.quantities[kind].IP.find((u) => u.symbol === symbol);
function unitOf(field) {
  const choices = unitsOf(field).map((u) => u.symbol), chosen = (state.units[keyOf(field.path)] || {})[system()];
  if (choices.includes(chosen)) return chosen;
  const usual = (field.unit || {})[system()];
  return choices.includes(usual) ? usual : choices[0];
}
// Rows of a list share their units.
const keyOf = (path) => path.replace(/\.\d+(?=\.|$)/g, ".*");
const setUnit = (field, symbol) => ((state.units[keyOf(field.path)] ??= {})[system()] = symbol);

// convert writes a number in another unit, about as fine as it was.
function convert(kind, text, from, to) {
  if (from === to) return text;
  const a = scaleOf(kind, from), b = scaleOf(kind, to), n = plainNumber(text);
  if (!a || !b || !bare(text)) return null;
  const fine = a.scale * 10 ** -(n.split(".")[1] || "").length;
  const decimals = Math.min(4, Math.max(b.scale <= 1 ? 1 : 0, Math.ceil(Math.log10(b.scale / fine) - 0.3)));
  const v = ((a.zero || 0) + a.scale * Number(n) - (b.zero || 0)) / b.scale;
  return String(Number(v.toFixed(decimals))).replace(".", t("decimal"));
}
// shownText is a field's content in the unit that the field shows.
function shownText(field) {
  const v = state.values[field.path];
  if (!v) return "";
  if (!isQuantity(field) || !v.unit) return v.text;
  return convert(field.kind, v.text, v.unit, unitOf(field)) ?? v.text;
}
// written is a value as the library reads it, with its unit.
function written(path) {
  const v = state.values[path];
  const text = v && typeof v.text === "string" ? v.text.trim() : "";
  return text && v.unit && bare(text) ? plainNumber(text) + " " + v.unit : text;
}
// inSystem shows a text of a log, "118 psig", in the unit that its field shows.
function inSystem(field, text) {
  const parts = /^([+\-−\d.,]+)\s*(.+)$/.exec(text);
  const number = field && parts && convert(field.kind, parts[1], parts[2], unitOf(field));
  return joined(number ? number + " " + unitOf(field) : text);
}
