// Keeping: in the browser, as a file, and from a file.

const KEY = "satline.visit/1";

function save() {
  try {
    localStorage.setItem(KEY, JSON.stringify(state));
  } catch {
    $("saved").textContent = "This browser does not keep the visit; save it as JSON.";
  }
}
function restore() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY));
    if (kept && typeof kept === "object") state = { ...empty(), ...kept };
  } catch {
    state = empty();
  }
}
function changed() {
  save();
  paint();
  ask();
}
function download() {
  const doc = { visit: visit(), assessment: shown };
  const name = (state.texts.title || "visit").replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
  const link = make("a", { href: URL.createObjectURL(new Blob([JSON.stringify(doc, null, 2)], { type: "application/json" })), download: name + ".json" });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  say("Saved as a file.");
}
const seconds = (text) => [...String(text).matchAll(/([\d.]+)\s*(h|min|ms|m|s)/g)].reduce((sum, [, n, u]) => sum + n * { h: 3600, m: 60, min: 60, s: 1, ms: 0.001 }[u], 0);
// open shows the visit of a file and returns what of it has no field here; on
// error what is entered stays as it was.
function open(doc) {
  const v = doc.visit || doc, before = state;
  if (!v.equipment && !v.readings) throw new Error("no visit");
  try {
    return replaceBy(v);
  } catch (cause) {
    state = before;
    throw cause;
  }
}
function replaceBy(v) {
  state = empty();
  state.system = v.units === "SI" ? "SI" : "IP";
  state.metering = (v.equipment && v.equipment.metering) || "";
  const kept = [];
  const walk = (at, prefix) => {
    for (const [name, value] of Object.entries(at || {})) {
      const p = prefix ? prefix + "." + name : name;
      if (value && typeof value === "object" && !Array.isArray(value)) walk(value, p);
      else if (typeof value === "string" && document.querySelector(`[data-path="${p}"][data-kind]`)) state.texts[p] = simpler(p, value);
      else if (value === true && document.getElementById("c-" + name) && prefix === "conditions") state.conditions[name] = true;
      else if (!["units", "scope", "checks", "log", "moves", "equipment.metering"].includes(p)) {
        // What has no field here is kept as it came.
        put(state.extra, p, value);
        kept.push(p);
      }
    }
  };
  walk(v, "");
  state.checks = (v.checks || []).map((c) => ({ ...c }));
  state.log = (v.log || []).map(({ at, ...r }) => ({ at: Math.round(seconds(at)), readings: r }));
  state.moves = (v.moves || []).map((m) => ({ at: Math.round(seconds(m.at)), way: m.added ? "added" : "recovered", mass: m.added || m.recovered || "" }));
  if (lastAt() >= 0) state.start = Date.now() - 1000 * lastAt();
  shown = null;
  changed();
  return kept;
}
// simpler writes a value without its unit where that is the unit of the field.
function simpler(p, value) {
  const kind = kindOf(p), unit = kind === "text" ? "" : unitOf(p);
  if (kind === "minutes" && /^\d+m$/.test(value)) return value.slice(0, -1);
  return unit && value.endsWith(" " + unit) && bare(value.slice(0, -unit.length - 1)) ? value.slice(0, -unit.length - 1) : value;
}

const mayReplace = (by) => (Object.values(state.texts).every((text) => !text) && lastAt() < 0) || confirm(`Replace what is entered by ${by}?`);
