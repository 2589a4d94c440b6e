// What is entered of each machine, and how the page is set.

const $ = (id) => document.getElementById(id);
function make(tag, attributes = {}, ...children) {
  const e = document.createElement(tag);
  for (const [k, v] of Object.entries(attributes)) if (v !== undefined && v !== false) e.setAttribute(k, v === true ? "" : v);
  e.append(...children.filter((c) => c !== undefined && c !== null && c !== false && c !== ""));
  return e;
}
// values holds what was typed by path, with the unit it was typed in: {text, unit}.
const empty = () => ({ values: {}, units: {}, checks: [], log: [], moves: [], start: 0, running: 0, clocks: {}, extra: {} });
const browserLanguage = () => ((navigator.language || "en").startsWith("es") ? "es" : "en");
let all = { settings: { language: browserLanguage(), system: "IP", theme: "auto", tab: "setup" }, current: "1", machines: { 1: empty() } };
let state = all.machines[1];
let form = null; // what the library offers, with its words
let shown = null; // the last whole assessment
const system = () => all.settings.system;
const t = (code, values = {}) => Object.entries(values).reduce((s, [k, v]) => s.replaceAll(`{${k}}`, v), (form && form.words[code]) ?? code);

const KEY = "satline.machines/1";
function save() {
  try {
    localStorage.setItem(KEY, JSON.stringify(all));
  } catch {
    say(t("said.unkept"));
  }
}
function restore() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY));
    if (!kept || !kept.machines[kept.current]) return;
    for (const id of Object.keys(kept.machines)) kept.machines[id] = { ...empty(), ...kept.machines[id] };
    all = { ...kept, settings: { ...all.settings, ...kept.settings } };
    state = all.machines[all.current];
  } catch {
    // What cannot be read is begun anew.
  }
}
const isEmpty = () => Object.keys(state.values).length === 0 && lastAt() < 0;
const joined = (s) => s.replace(/(\d) (?=[°%A-Za-z]{1,6}\b|°|%)/g, "$1\u00a0").replace(/± (?=\d)/g, "±\u00a0");
const sentence = (s) => joined(s.charAt(0).toUpperCase() + s.slice(1));
const clock = (seconds) => {
  const s = Math.max(0, Math.round(seconds)), m = Math.floor(s / 60) % 60, two = (n) => String(n).padStart(2, "0");
  return s >= 3600 ? `${Math.floor(s / 3600)}:${two(m)}:${two(s % 60)}` : `${m}:${two(s % 60)}`;
};
let sayTimer = 0, toastTimer = 0, announced = "";
// announce tells a screen reader what is new, once the typing pauses.
function announce(text, soon) {
  clearTimeout(sayTimer);
  sayTimer = setTimeout(() => {
    if (text !== announced) $("announce").textContent = announced = text;
  }, soon ? 50 : 1200);
}
function say(text) {
  announce(text, true);
  $("said").textContent = text;
  clearTimeout(toastTimer);
  toastTimer = setTimeout(() => ($("said").textContent = ""), 2500);
}
