// The visit as the library reads it, made of the state.

function put(doc, path, value) {
  const names = path.split(".");
  const last = names.pop();
  let at = doc;
  for (const n of names) at = at[n] ??= {};
  at[last] = value;
}
function readings() {
  const out = {};
  document.querySelectorAll('[data-path^="readings."]').forEach((e) => {
    const text = written(e.dataset.path);
    if (text) out[e.dataset.path.slice(9)] = text;
  });
  return out;
}
const elapsed = () => (state.start ? Math.max(0, Math.round((Date.now() - state.start) / 1000)) : 0);
const lastAt = () => Math.max(-1, ...state.log.map((e) => e.at), ...state.moves.map((m) => m.at));

function visit() {
  const doc = { ...structuredClone(state.extra), units: state.system };
  doc.equipment ??= {};
  document.querySelectorAll("[data-path][data-kind]").forEach((e) => {
    const path = e.dataset.path;
    if (path === MOVE) return;
    const text = written(path);
    if (text) put(doc, path, text);
  });
  if (state.metering) doc.equipment.metering = state.metering;
  for (const [name, on] of Object.entries(state.conditions)) if (on) put(doc, "conditions." + name, true);
  if (state.checks.length) doc.checks = state.checks;
  if (state.log.length) {
    doc.log = state.log.map((e) => ({ at: e.at + "s", ...e.readings }));
    // What was changed since the last entry is a later reading.
    const now = readings();
    if (JSON.stringify(now) !== JSON.stringify(state.log.at(-1).readings)) doc.log.push({ at: Math.max(elapsed(), lastAt() + 1) + "s", ...now });
  }
  if (state.moves.length) doc.moves = state.moves.map((m) => ({ at: m.at + "s", [m.way]: m.mass }));
  return doc;
}
