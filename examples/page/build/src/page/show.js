// What the library answers, shown.

const OUTCOMES = {
  "in-band": ["good", "✓", "Charge right"],
  "low": ["low", "▼", "Charge low"],
  "high": ["high", "▲", "Charge high"],
  "open": ["wait", "?", "Not decided"],
  "not-judged": ["wait", "!", "Not judged"],
};

function texts(id, items, fill) {
  const section = $(id);
  section.hidden = !items || items.length === 0;
  const list = section.querySelector("ul,ol,dl");
  if (!section.hidden) list.replaceChildren(...items.flatMap(fill));
  else list.replaceChildren();
}
const li = (text, ...why) => make("li", {}, make("b", {}, joined(sentence(text))), ...why.filter(Boolean).map((w) => make("span", { class: "why" }, joined(sentence(w)))));
const plain = (text) => make("li", {}, joined(sentence(text)));
// A number is not parted from its unit at the end of a line.
const joined = (text) => text.replace(/(\d) (?=[°%A-Za-z]{1,5}\b|°|%)/g, "$1\u00a0").replace(/± (?=\d)/g, "±\u00a0");

function render(answer, whole) {
  const a = answer.assessment;
  errors(answer.errors, a && a.doubts);
  let [tone, mark, word] = ["none", "…", "No verdict yet"];
  let line = answer.problem || "";
  if (a) {
    [tone, mark, word] = OUTCOMES[a.charge.outcome] || ["wait", "?", a.charge.outcome];
    line = a.headline.text;
  } else if (!state.texts["equipment.refrigerant"]) {
    line = "Start with refrigerant and metering device.";
  } else if (!state.metering) {
    line = "Choose the metering device: the charging method depends on it.";
  }
  for (const id of ["bar", "verdict-card"]) $(id).dataset.outcome = tone;
  for (const id of ["bar-mark", "mark"]) $(id).textContent = mark;
  for (const id of ["bar-outcome", "outcome"]) $(id).textContent = word;
  line = joined(line);
  $("headline").textContent = line;
  $("bar-line").textContent = line;
  // A charge in band says nothing of this, so it stands in the bar by itself.
  $("bar-danger").hidden = !(a && (a.dangers || []).some((d) => d.grave));
  announce([word + ". " + $("bar-line").textContent, ...($("bar-danger").hidden ? [] : [$("bar-danger").textContent + "."]), ...wrong].join(" "));
  $("chances").textContent = a && a.charge.outcome !== "not-judged" ? ["low " + percent(a.charge.low), "in band " + percent(a.charge.inBand), "high " + percent(a.charge.high)].map(unbroken).join(" · ") : "";
  bandChart(answer);
  texts("values", answer.values, (v) => [make("dt", {}, v.name), make("dd", {}, unbroken(v.text))]);
  texts("risks", a && a.dangers, (d) => [li(d.says.text, d.why.text)]);
  texts("air", a && [...(a.air ? [a.air.says] : []), ...(a.freeze ? [a.freeze.says, ...(a.freeze.would || []), ...(a.freeze.causes || []), ...(a.freeze.controls || [])] : [])], (f) => [plain(f.text)]);
  texts("reasons", a && [...(a.charge.reading ? [a.charge.reading.says] : []), ...(a.charge.why || [])], (f) => [plain(f.text)]);
  texts("cautions", a && a.cautions, (c) => [plain(c.text)]);
  judged(answer);
  if (whole || !a) pictures(answer.charts);
  trendChart(answer.charts && answer.charts.trend);
  $("record-notes").hidden = !state.texts.notes;
  $("record-notes").querySelector("p").textContent = state.texts.notes || "";
  $("record-head").replaceChildren(make("b", {}, state.texts.title || "Air conditioner"), a ? `${a.refrigerant.designation} (${a.refrigerant.safetyGroup}); atmosphere: ${a.atmosphere.source}. ${new Date().toLocaleString()}` : "");
  if (!whole && a && shown) return;
  shown = a;
  texts("next", a && a.plan, (s) => [li(s.do.text, s.why && s.why.text)]);
  const focused = document.activeElement.closest(".evidence");
  texts("findings", a && a.findings, (f) => [finding(f)]);
  if (focused) for (const e of document.querySelectorAll(".evidence")) if (e.dataset.cause === focused.dataset.cause) e.firstChild.focus({ preventScroll: true });
  settling(a && a.ask);
}
// A value stays together, and may only part before its uncertainty.
const unbroken = (text) => text.replace(/ (?!±)/g, "\u00a0");
const percent = (p) => unbroken(100 * p > 99 ? "> 99 %" : 100 * p < 1 ? "< 1 %" : Math.round(100 * p) + " %");
const sentence = (s) => s.charAt(0).toUpperCase() + s.slice(1);

function finding(f) {
  const bar = svg("svg", { class: "meter", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" }, svg("rect", { x: 0, y: 0, width: Math.max(1, 100 * f.chance).toFixed(1), height: 10, fill: "#005a7d" }));
  const evidence = [...(f.for || []).map((s) => "For: " + s.text), ...(f.against || []).map((s) => "Against: " + s.text)];
  const item = make("li", {}, make("span", { class: "finding" }, joined(f.says.text)), bar);
  if (evidence.length) {
    const folded = make("details", { class: "evidence", "data-cause": f.cause }, make("summary", {}, make("span", {}, `Why: ${(f.for || []).length} for, ${(f.against || []).length} against`)), ...evidence.map((s) => make("span", { class: "why" }, joined(s))));
    folded.open = unfolded.has(f.cause);
    folded.addEventListener("toggle", () => unfolded[folded.open ? "add" : "delete"](f.cause));
    item.append(folded);
  }
  return item;
}
const unfolded = new Set();
function judged(answer) {
  const a = answer.assessment;
  $("judged").hidden = !a || a.readings.length === 0;
  if ($("judged").hidden) return;
  $("judged").querySelector("ul").replaceChildren(...(a.doubts || []).map((d) => li(sentence(d.says.text), d.mend.text)));
  const rows = a.readings.map((r) => make("tr", {}, make("th", { scope: "row" }, answer.readings[r.field].name), make("td", { class: "num" }, unbroken(answer.readings[r.field].text)), make("td", { class: "belief", "data-belief": r.belief }, r.belief + (r.settled ? ", settled" : ""))));
  $("judged").querySelector(".scroll").replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["reading", "± standard uncertainty", "judged"].map((h) => make("th", { scope: "col" }, h)))), make("tbody", {}, ...rows)));
}
// errors says at each field what has to be mended there, and at the first field
// of a reading that cannot be so, why it is not believed.
function errors(found, doubts) {
  const doubted = {};
  for (const d of doubts || []) if (d.belief === "impossible" || d.belief === "doubted") doubted["readings." + d.fields[0]] ??= d.says.text + "?";
  wrong = [];
  document.querySelectorAll("[data-path][data-kind]").forEach((e) => {
    const path = e.dataset.path, empty = path === MOVE || !e.value.trim();
    const problem = empty ? "" : found[path] || "", doubt = empty || problem ? "" : doubted[path] || "";
    const place = $((e.getAttribute("aria-describedby") || "").trim());
    // While a value is being typed it may be half of one.
    const typing = document.activeElement === e && /^[+\-−]?[\d.,]*$/.test(e.value);
    if (problem && !typing) e.setAttribute("aria-invalid", "true");
    else e.removeAttribute("aria-invalid");
    if (!place) return;
    // The field itself shows what was typed.
    const text = typing ? "" : joined(sentence(problem.replace(/^[^"]*"[^"]*": /, "") || doubt));
    if (place.textContent !== text) place.textContent = text;
    place.classList.toggle("doubt", !problem && !!doubt);
    if (text) wrong.push(document.querySelector(`label[for="${e.id}"]`).textContent + ": " + text);
  });
  leftOut(found);
}
// leftOut says what is not used of the log, and of a file what has no field.
function leftOut(found) {
  const log = {}, file = [];
  for (const [path, problem] of Object.entries(found)) {
    const [, list, index, name] = /^(log|moves)\[(\d+)\]\.?(.*)$/.exec(path) || [];
    const entry = list && state[list][index];
    // The list of the looks says so of a whole one.
    if (/^checks\[\d+\]\.(look|found)$/.test(path)) continue;
    const field = document.querySelector(`[data-path="${CSS.escape(path)}"]`);
    // The last that is said of an entry names what in it is wrong.
    if (entry) log[list + index] = joined(`Not used of the log, after ${clock(entry.at)}: ${name ? short(name) + ": " : ""}${problem}.`);
    else if (!list && !(field && field.value)) file.push(joined(`Not used: ${path ? path + ": " : ""}${problem}.`));
  }
  for (const [id, lines] of [["e-log", Object.values(log)], ["e-file", file]]) {
    if ($(id).textContent !== lines.join(" ")) $(id).textContent = lines.join(" ");
    wrong.push(...lines);
  }
}
let sayTimer = 0, said = "", wrong = [];
// announce tells a screen reader what is new, once the typing pauses.
function announce(text) {
  clearTimeout(sayTimer);
  sayTimer = setTimeout(() => {
    if (text !== said) $("announce").textContent = said = text;
  }, 1200);
}
