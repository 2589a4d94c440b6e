// Explain and keep: why, evidence, pictures, the log, the record.

const li = (text, ...why) => make("li", {}, make("b", {}, sentence(text)), ...why.filter(Boolean).map((w) => make("span", { class: "why" }, sentence(w))));
const plain = (text) => make("li", {}, sentence(text));
const percent = (p) => (100 * p > 99 ? "> 99 %" : 100 * p < 1 ? "< 1 %" : Math.round(100 * p) + " %").replaceAll(" ", "\u00a0");
function card(id, title, list, items, ...more) {
  if (!items || items.length === 0) return "";
  return make("section", { class: "card" + (id === "dangers" ? " danger" : ""), id: "keep-" + id, tabindex: "-1" }, make("h2", {}, title), make(list, {}, ...items), ...more);
}
const unfolded = new Set();

function renderKeep() {
  if (all.settings.tab !== "keep" || !form) return;
  const a = shown, focused = document.activeElement.dataset && document.activeElement.dataset.fold;
  const cards = [];
  if (a) {
    const c = a.charge;
    const chances = c.outcome === "not-judged" ? "" : make("p", { class: "hint" }, t("chances", { low: percent(c.low), band: percent(c.inBand), high: percent(c.high) }));
    cards.push(
      make("section", { class: "card" }, make("h2", {}, whole.loop.said ? joined(a.headline.text) : t("outcome." + c.outcome)), !whole.loop.said && make("p", {}, joined(a.headline.text)), chances),
      card("dangers", t("danger.title"), "ul", (a.dangers || []).map((d) => li(d.says.text, d.why.text))),
      card("plan", t("keep.plan"), "ol", (a.plan || []).map(planned)),
      card("looked", t("keep.looked"), "ul", form.looks.length ? state.checks.map(looked) : [], state.checks.some((x) => x.found) ? make("p", { class: "hint" }, t("keep.looked.hint")) : ""),
      card("findings", t("keep.findings"), "ul", (a.findings || []).map(finding)),
      card("values", t("keep.values"), "dl", (whole.values || []).flatMap((v) => [make("dt", {}, v.name), make("dd", {}, joined(v.text))])),
      card("doubts", t("keep.doubts"), "ul", (a.doubts || []).map((d) => li(d.says.text, d.mend.text)), judged(a)),
      card("air", t("keep.air"), "ul", [...(a.air ? [a.air.says] : []), ...(a.freeze ? [a.freeze.says, ...(a.freeze.would || []), ...(a.freeze.causes || []), ...(a.freeze.controls || [])] : [])].map((f) => plain(f.text))),
      card("reasons", t("keep.reasons"), "ul", [...(c.reading ? [c.reading.says] : []), ...(c.why || [])].map((f) => plain(f.text))),
    );
    if (!(a.doubts || []).length) cards.push(make("section", { class: "card" }, make("h2", {}, t("keep.doubts")), judged(a)));
  }
  const pictures = a && whole.charts && (whole.charts.cycle || whole.charts.air);
  if (pictures) cards.push(make("section", { class: "card" }, make("h2", {}, t("keep.pictures")), make("figure", { id: "cycle", class: "chart" }), make("figure", { id: "airchart", class: "chart" })));
  cards.push(logCard(), card("cautions", t("keep.cautions"), "ul", a && a.cautions.map((x) => plain(x.text))));
  $("explain").replaceChildren(...cards.filter(Boolean));
  if (pictures) {
    cycleChart(whole.charts.cycle && structuredClone(whole.charts.cycle));
    airChart(whole.charts.air && structuredClone(whole.charts.air));
  }
  const again = focused && document.querySelector(`[data-fold="${CSS.escape(focused)}"]`);
  if (again) again.focus({ preventScroll: true });
}
function planned(s) {
  const item = li(s.do.text, s.why && s.why.text), look = form.looks.find((x) => x.code === s.look);
  if (look) item.append(make("div", { class: "answers" }, answerButton(look, true), answerButton(look, false)));
  return item;
}
function looked(check, i) {
  const look = form.looks.find((x) => x.code === check.look), name = look ? look.name.text : String(check.look || "?");
  let found = look && (check.found ? look.found.text : look.notFound.text);
  if (!look || typeof check.found !== "boolean") found = t("keep.unknown");
  else if (state.checks.findIndex((c) => c.look === check.look) < i) found = t("keep.twice");
  return make("li", {}, make("b", {}, sentence(name)), make("span", { class: "why" }, sentence(found)), make("button", { type: "button", "data-unlook": i, "aria-label": `${t("keep.remove")}: ${name}` }, t("keep.remove")));
}
function finding(f) {
  const bar = svg("svg", { class: "meter", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" }, svg("rect", { x: 0, y: 0, width: Math.max(1, 100 * f.chance).toFixed(1), height: 10, class: "full" }));
  const evidence = [...(f.for || []).map((s) => t("keep.for", { text: s.text })), ...(f.against || []).map((s) => t("keep.against", { text: s.text }))];
  const item = make("li", {}, make("b", {}, joined(f.says.text)), bar);
  if (evidence.length) {
    const folded = make("details", {}, make("summary", { "data-fold": f.cause }, t("keep.why", { for: (f.for || []).length, against: (f.against || []).length })), ...evidence.map((s) => make("span", { class: "why" }, joined(s))));
    folded.open = unfolded.has(f.cause);
    folded.addEventListener("toggle", () => unfolded[folded.open ? "add" : "delete"](f.cause));
    item.append(folded);
  }
  return item;
}
function judged(a) {
  return make("table", {}, make("tbody", {}, ...a.readings.map((r) => make("tr", {}, make("th", { scope: "row" }, whole.readings[r.field].name), make("td", {}, joined(whole.readings[r.field].text)), make("td", { class: "belief", "data-belief": r.belief }, t("belief." + r.belief))))));
}
function logCard() {
  const short = (n) => (form.words["short." + n] || (fieldOf("readings." + n) || { label: n }).label).toLowerCase();
  const entry = (e, before) => {
    const news = Object.entries(e.readings).filter(([n, v]) => !before || before.readings[n] !== v);
    return news.length ? news.map(([n, v]) => `${short(n)} ${inSystem(fieldOf("readings." + n), v)}`).join(", ") : t("log.none");
  };
  const rows = [...state.log.map((e, i) => [e.at, entry(e, state.log[i - 1])]), ...state.moves.map((m) => [m.at, `${t("loop." + m.way)} ${inSystem(form.move, m.mass)}`])].sort((p, q) => p[0] - q[0]);
  if (!rows.length) return "";
  return make("section", { class: "card", id: "log" }, make("h2", {}, t("log.title")), make("table", {}, make("thead", {}, make("tr", {}, make("th", { scope: "col" }, t("log.after")), make("th", { scope: "col" }, t("log.entry")))), make("tbody", {}, ...rows.map(([at, text]) => make("tr", {}, make("td", {}, clock(at)), make("td", {}, text))))));
}

// The record, as the library sets it: to save, to share, to print on one sheet.
const fileName = () => ((state.values.title && state.values.title.text) || "visit").replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
async function recordPage() {
  const r = await thorough.call("record", visit(), taskInputs());
  if (r.problem) say(r.problem);
  return r.page;
}
function download(text, type, end) {
  const link = make("a", { href: URL.createObjectURL(new Blob([text], { type })), download: fileName() + end });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  say(t("said.saved"));
}
async function saveRecord() {
  const page = await recordPage();
  if (page) download(page, "text/html", ".html");
}
async function shareRecord() {
  const page = await recordPage();
  if (!page) return;
  const file = new File([page], fileName() + ".html", { type: "text/html" });
  if (!navigator.canShare || !navigator.canShare({ files: [file] })) return download(page, "text/html", ".html");
  try {
    await navigator.share({ files: [file], title: fileName() });
  } catch {
    // Not shared after all.
  }
}
async function printRecord() {
  const page = await recordPage();
  if (!page) return;
  const doc = new DOMParser().parseFromString(page, "text/html"), sheet = new CSSStyleSheet();
  sheet.replaceSync(doc.querySelector("style").textContent.replace(/\bbody \{/g, ":host {"));
  const root = $("paper").shadowRoot || $("paper").attachShadow({ mode: "open" });
  root.adoptedStyleSheets = [sheet];
  root.replaceChildren(...doc.body.childNodes);
  document.documentElement.dataset.printed = "ready";
  print();
}
async function saveJSON() {
  const a = await thorough.call("assess", visit());
  download(JSON.stringify({ visit: JSON.parse(visit()), assessment: a.assessment }, null, 2), "application/json", ".json");
}

// openVisit shows the visit of a file and returns what of it has no field here; on error
// what is entered stays as it was.
const seconds = (text) => [...String(text).matchAll(/([\d.]+)\s*(h|min|ms|m|s)/g)].reduce((sum, [, n, u]) => sum + n * { h: 3600, m: 60, min: 60, s: 1, ms: 0.001 }[u], 0);
function openVisit(doc) {
  const v = doc.visit || doc, next = empty(), kept = [];
  if (!v.equipment && !v.readings) throw new Error("no visit");
  const walk = (at, prefix) => {
    for (const [name, value] of Object.entries(at || {})) {
      const p = prefix ? prefix + "." + name : name, field = fieldOf(p) || fieldOf(keyOf(p));
      if (["units", "language", "scope", "checks", "log", "moves"].includes(p)) continue;
      if (Array.isArray(value) && !value.every((x) => typeof x === "string" || (x && typeof x === "object"))) throw new Error("no visit");
      if (value && typeof value === "object") walk(value, p);
      else if (field && field.kind === "either" && typeof value === "boolean") next.values[p] = { text: String(value), either: true };
      else if (field && value === true) next.values[p] = { text: true };
      else if (field && typeof value === "number" && field.kind === "number") next.values[p] = { text: String(value), number: true };
      else if (field && typeof value === "string") next.values[p] = typedValue(field, value);
      else if (value !== false) {
        // What has no field here is kept as it came.
        put(next.extra, p, value);
        kept.push(p);
      }
    }
  };
  walk(v, "");
  next.checks = (v.checks || []).map((c) => ({ ...c }));
  next.log = (v.log || []).map(({ at, ...r }) => ({ at: Math.round(seconds(at)), readings: r }));
  next.moves = (v.moves || []).map((m) => ({ at: Math.round(seconds(m.at)), way: m.added ? "added" : "recovered", mass: m.added || m.recovered || "" }));
  state = all.machines[all.current] = next;
  if (lastAt() >= 0) state.start = Date.now() - 1000 * lastAt();
  all.settings.system = v.units === "SI" ? "SI" : "IP";
  if (form.languages.some((l) => l.value === v.language)) all.settings.language = v.language;
  shown = null;
  save();
  describe();
  return kept;
}
// typedValue parts a text of a file into its number and a unit that is offered here.
function typedValue(field, text) {
  if (!isQuantity(field)) return { text };
  const parts = /^([+\-−]?[\d.,]+)\s*(.+)$/.exec(text.replace(/^(\d+)m$/, "$1 min").replace(/^(\d+)m0s$/, "$1 min"));
  return parts && scaleOf(field.kind, parts[2]) ? { text: parts[1], unit: parts[2] } : { text };
}
