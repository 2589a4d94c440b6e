// The visit as the library reads it, made of the state.

function put(doc, path, value) {
  const names = path.split("."), last = names.pop();
  let at = doc;
  names.forEach((n, i) => (at = at[n] ??= /^\d+$/.test(names[i + 1] ?? last) ? [] : {}));
  at[last] = value;
}
function readings() {
  const out = {};
  for (const path of Object.keys(state.values)) if (path.startsWith("readings.") && written(path)) out[path.slice(9)] = written(path);
  return out;
}
const inVisit = (path) => path !== form.move.path && !path.startsWith("task.");
const secondsFrom = (start, now = Date.now()) => Math.max(0, Math.round((now - start) / 1000));
const elapsed = (now) => (state.start ? secondsFrom(state.start, now) : 0);
const lastAt = () => Math.max(-1, ...state.log.map((e) => e.at), ...state.moves.map((m) => m.at));

function visit(scope = "whole") {
  const doc = { ...structuredClone(state.extra), units: system(), language: all.settings.language, scope };
  doc.equipment ??= {};
  for (const [path, v] of Object.entries(state.values)) {
    if (!inVisit(path)) continue;
    if (v.text === true) put(doc, path, true);
    else if (v.either) put(doc, path, v.text === "true");
    else if (v.number) put(doc, path, Number(v.text) || v.text);
    else if (written(path)) put(doc, path, written(path));
  }
  if (state.running && !written("conditions.running")) put(doc, "conditions.running", secondsFrom(state.running, instant()) + "s");
  if (state.checks.length) doc.checks = state.checks;
  if (state.log.length) {
    doc.log = state.log.map((e) => ({ at: e.at + "s", ...e.readings }));
    // What was changed since the last entry is a later reading.
    const now = readings();
    if (JSON.stringify(now) !== JSON.stringify(state.log.at(-1).readings)) doc.log.push({ at: Math.max(elapsed(instant()), lastAt() + 1) + "s", ...now });
  }
  if (state.moves.length) doc.moves = state.moves.map((m) => ({ at: m.at + "s", [m.way]: m.mass }));
  return compact(doc);
}
// compact leaves out the rows of a list that are empty.
const compact = (doc) => JSON.stringify(doc, (_, v) => (Array.isArray(v) ? v.filter((x) => x !== undefined && x !== null) : v));
// taskInputs is what was entered for all tasks, by their codes.
function taskInputs() {
  const doc = {};
  for (const [path, v] of Object.entries(state.values)) {
    if (!path.startsWith("task.")) continue;
    const value = v.text === true ? true : v.either ? v.text === "true" : written(path);
    if (value !== "") put(doc, path.slice(5), value);
  }
  return compact(doc);
}
