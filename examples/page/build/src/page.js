"use strict";
// The page: what is typed goes to the library as a visit, what it answers is
// shown. It knows no physics and no units but the names to write behind a bare
// number.
(() => {
  const $ = (id) => document.getElementById(id);
  const KEY = "satline.visit/1";

  const UNITS = {
    gauge: { IP: ["psig", "kPag", "barg"], SI: ["kPag", "barg", "psig"] },
    temperature: { IP: ["°F", "°C"], SI: ["°C", "°F"] },
    difference: { IP: ["°F", "K"], SI: ["K", "°F"] },
    flow: { IP: ["CFM", "L/s", "m³/h"], SI: ["L/s", "m³/h", "CFM"] },
    static: { IP: ["in. w.c.", "Pa"], SI: ["Pa", "in. w.c."] },
    power: { IP: ["kW", "W"], SI: ["kW", "W"] },
    capacity: { IP: ["ton", "kBtu/h", "kW"], SI: ["kW", "ton", "kBtu/h"] },
    current: { IP: ["A"], SI: ["A"] },
    mass: { IP: ["oz", "lb", "g", "kg"], SI: ["g", "kg", "oz", "lb"] },
    charge: { IP: ["lb", "oz", "kg", "g"], SI: ["kg", "g", "lb", "oz"] },
    length: { IP: ["ft", "m"], SI: ["m", "ft"] },
    minutes: { IP: ["min", "h"], SI: ["min", "h"] },
  };
  const READINGS = [
    ["Gauges", [["suctionPressure", "Suction pressure", "gauge"], ["liquidPressure", "Liquid line pressure", "gauge"]]],
    ["Clamps", [["suctionLine", "Suction line", "temperature"], ["liquidLine", "Liquid line", "temperature"], ["dischargeLine", "Discharge line", "temperature"]]],
    ["Air", [["outdoorDryBulb", "Outdoor dry bulb", "temperature"], ["returnDryBulb", "Return dry bulb", "temperature"], ["returnWetBulb", "Return wet bulb", "temperature"], ["supplyDryBulb", "Supply dry bulb", "temperature"], ["supplyWetBulb", "Supply wet bulb", "temperature"]]],
  ];
  const MORE = [["dischargePressure", "Discharge pressure", "gauge"], ["condenserLeaving", "Air leaving the condenser", "temperature"], ["airflow", "Indoor airflow", "flow"], ["externalStatic", "External static pressure", "static"], ["power", "Electric power", "power"], ["compressorCurrent", "Compressor current", "current"]];
  const LABEL = [["equipment.label.subcooling", "Label subcooling", "difference"], ["equipment.label.superheat", "Label superheat, today", "difference"], ["equipment.label.charge", "Label charge", "charge"], ["equipment.nominalCapacity", "Nominal capacity", "capacity"], ["equipment.label.ratedAirflow", "Rated airflow", "flow"]];
  const CONDITIONS = [["coilWet", "Outdoor coil wet"], ["panelsOff", "Panels off"], ["coilIced", "Ice on coil or line"], ["filterDirty", "Filter dirty"], ["outdoorCoilDirty", "Outdoor coil dirty"], ["doorsOpen", "Doors open"], ["economizerOpen", "Outdoor air drawn in"], ["condenserFanCycling", "Fan cycling"], ["heating", "Heating"], ["oilStains", "Oil stains"], ["sealedSystemOpened", "Circuit was open"]];
  const OUTCOMES = {
    "in band": ["good", "✓", "Charge in band"],
    "undercharged": ["low", "▼", "Undercharged"],
    "overcharged": ["high", "▲", "Overcharged"],
    "these instruments cannot tell": ["wait", "?", "Cannot tell"],
    "do not charge by this method now": ["wait", "!", "Do not charge now"],
    "not measured": ["none", "…", "Not measured yet"],
  };
  const MOVE = "move";

  const empty = () => ({ texts: {}, units: {}, system: "IP", metering: "", conditions: {}, log: [], moves: [], start: 0, extra: {} });
  let state = empty();
  let shown = null;

  // ---- the form

  function make(tag, attributes = {}, ...children) {
    const e = document.createElement(tag);
    for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
    e.append(...children);
    return e;
  }
  const idOf = (path) => "f-" + path.replaceAll(".", "-");

  function quantityField(path, label, kind) {
    const id = idOf(path);
    const input = make("input", { id, "data-path": path, "data-kind": kind, inputmode: kind === "temperature" ? "text" : "decimal", autocomplete: "off", spellcheck: "false", enterkeyhint: "next", "aria-describedby": "e-" + id });
    const unit = make("button", { type: "button", class: "unit", "data-unit": path });
    return make("div", { class: "field" }, make("label", { for: id }, label), make("div", { class: "pair" }, input, unit), make("p", { class: "error", id: "e-" + id }));
  }

  function build() {
    for (const [name, fields] of READINGS) $("reading-groups").append(group(name, fields));
    const more = make("details", {}, make("summary", {}, "More readings"));
    more.append(make("div", { class: "fields" }, ...MORE.map(([n, l, k]) => quantityField("readings." + n, l, k))));
    $("reading-groups").append(more);
    $("label").append(...LABEL.map((f) => quantityField(...f)));
    $("place").append(quantityField("site.elevation", "Elevation", "length"));
    $("running").append(quantityField("conditions.running", "Running without a stop for", "minutes"));
    $("move").append(quantityField(MOVE, "Refrigerant moved", "mass"));
    for (const [name, label] of CONDITIONS) {
      $("conditions").append(make("label", {}, make("input", { type: "checkbox", "data-condition": name, id: "c-" + name }), make("span", {}, label)));
    }
  }
  function group(name, fields) {
    return make("fieldset", { class: "group" }, make("legend", { class: "group-name" }, name),
      make("div", { class: "fields" }, ...fields.map(([n, l, k]) => quantityField("readings." + n, l, k))));
  }

  const kindOf = (path) => document.querySelector(`[data-path="${path}"]`).dataset.kind;
  const unitsOf = (kind) => UNITS[kind][state.system];
  const unitOf = (path) => {
    const choices = unitsOf(kindOf(path));
    return choices.includes(state.units[path]) ? state.units[path] : choices[0];
  };
  // changeSystem keeps every number that is there in the unit it was typed in.
  function changeSystem(system) {
    document.querySelectorAll("[data-unit]").forEach((b) => {
      const path = b.dataset.unit;
      if (bare((state.texts[path] || "").trim())) state.units[path] = unitOf(path);
      else delete state.units[path];
    });
    state.system = system;
  }
  const bare = (text) => /^[+\-−]?\s*(\d+[.,]?\d*|[.,]\d+)$/.test(text);

  // written is a field as the library reads it: as typed, or with its unit.
  function written(path) {
    const text = (state.texts[path] || "").trim();
    if (text === "" || kindOf(path) === "text") return text;
    if (!bare(text)) return text;
    const unit = unitOf(path);
    return text.replace(",", ".").replace("−", "-").replace(/\s/g, "") + (unit === "min" ? "m" : " " + unit).replace(" h", "h");
  }

  function paint() {
    document.querySelectorAll("[data-path][data-kind]").forEach((e) => {
      if (document.activeElement !== e) e.value = state.texts[e.dataset.path] || "";
    });
    document.querySelectorAll("[name=units]").forEach((e) => (e.checked = e.value === state.system));
    document.querySelectorAll("[name=metering]").forEach((e) => (e.checked = e.value === state.metering));
    document.querySelectorAll("[data-condition]").forEach((e) => (e.checked = !!state.conditions[e.dataset.condition]));
    paintUnits();
    paintLog();
  }
  function paintUnits() {
    document.querySelectorAll("[data-unit]").forEach((b) => {
      const path = b.dataset.unit, text = (state.texts[path] || "").trim();
      const own = text !== "" && !bare(text), unit = unitOf(path);
      const label = document.querySelector(`label[for="${idOf(path)}"]`).textContent;
      b.textContent = own ? "typed" : unit;
      b.disabled = own || unitsOf(kindOf(path)).length === 1;
      b.setAttribute("aria-label", own ? `${label}: unit as typed` : `${label}: unit ${unit}, change`);
    });
  }

  // ---- the visit

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
    if (state.log.length) {
      doc.log = state.log.map((e) => ({ at: e.at + "s", ...e.readings }));
      // What was changed since the last entry is a later reading.
      const now = readings();
      if (JSON.stringify(now) !== JSON.stringify(state.log.at(-1).readings)) doc.log.push({ at: Math.max(elapsed(), lastAt() + 1) + "s", ...now });
    }
    if (state.moves.length) doc.moves = state.moves.map((m) => ({ at: m.at + "s", [m.way]: m.mass }));
    return doc;
  }

  // ---- the library

  // One worker follows the typing; the other has the dose and the diagnosis, one
  // visit at a time, so that a key never waits for them.
  let quick = null, thorough = null, started = false, asked = 0, answered = 0, wholeTimer = 0;
  let typed = 0, busy = false, next = false;
  function engine(first) {
    const worker = new Worker(URL.createObjectURL(new Blob([$("worker").textContent], { type: "text/javascript" })));
    worker.onmessage = (e) => heard(e.data);
    worker.onerror = (e) => fail(e.message);
    worker.postMessage(first);
    return worker;
  }
  function start() {
    const raw = atob($("module").textContent.trim());
    const packed = new Uint8Array(raw.length);
    for (let i = 0; i < raw.length; i++) packed[i] = raw.charCodeAt(i);
    quick = engine({ packed });
    ask();
  }
  function ask(event) {
    if (!quick) return;
    typed = event ? event.timeStamp : performance.now();
    clearTimeout(wholeTimer);
    send(quick, false);
    // The dose and the diagnosis follow once the typing pauses.
    wholeTimer = setTimeout(askWhole, started ? 120 : 0);
  }
  function askWhole() {
    next = busy || !thorough;
    if (next) return;
    busy = true;
    send(thorough, true);
  }
  function send(worker, whole) {
    worker.postMessage({ id: ++asked, whole, visit: JSON.stringify({ ...visit(), scope: whole ? "whole" : "verdict" }) });
  }
  function heard(m) {
    if (m.failed) return fail(m.failed);
    if (m.compiled) {
      thorough = engine({ compiled: m.compiled });
      if (next) askWhole();
      return;
    }
    if (m.ready) {
      if (!$("fluids").hasChildNodes()) $("fluids").append(...m.fluids.map((f) => make("option", { value: f.designation }, f.note)));
      return;
    }
    if (m.whole) {
      busy = false;
      if (next) askWhole();
    }
    if (m.id < answered) return;
    answered = m.id;
    const back = performance.now(), since = typed, root = document.documentElement;
    render(JSON.parse(m.text), m.whole);
    const now = performance.now();
    if (!started) {
      started = true;
      root.dataset.first = now.toFixed(1);
    }
    root.dataset[m.whole ? "whole" : "verdict"] = m.took.toFixed(2);
    if (!m.whole) root.dataset.latency = (now - since).toFixed(2);
    root.dataset.render = (now - back).toFixed(2);
    // Nothing has been asked since.
    if (m.id === asked) root.dataset.answered = m.whole ? "whole" : "verdict";
  }
  function fail(why) {
    $("bar").dataset.outcome = "high";
    $("bar-outcome").textContent = "This browser cannot run the library";
    $("bar-line").textContent = why;
  }

  // ---- showing

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
      // Only the diagnosis can tell that refrigerant waits, and it follows later.
      if (whole || a.charge.outcome !== held.outcome) held = { outcome: a.charge.outcome, why: a.charge.hold };
      if (held.why) [tone, mark, word] = ["wait", "!", `${word}? Wait`];
      line = a.headline;
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
    // The bar has the outcome in large letters already.
    $("bar-line").textContent = a && line.toLowerCase().startsWith(a.charge.outcome + ": ") ? sentence(line.slice(a.charge.outcome.length + 2)) : line;
    // What is missing stands at the end of a long headline.
    if (a && a.charge.outcome === "not measured" && a.charge.instead) $("bar-line").textContent = joined(sentence(a.charge.instead[0])) + ".";
    if (a && held.why) $("bar-line").textContent = `Move no refrigerant yet: ${joined(held.why)}.`;
    announce([word + ". " + $("bar-line").textContent, ...wrong].join(" "));
    $("chances").textContent = a && a.charge.target ? ["low " + percent(a.charge.low), "in band " + percent(a.charge.inBand), "high " + percent(a.charge.high)].map(unbroken).join(" · ") : "";
    bandChart(answer);
    texts("values", answer.values, (v) => [make("dt", {}, v.name), make("dd", {}, unbroken(v.text))]);
    texts("risks", a && a.risks, (r) => [li(r.text, r.why, "Now: " + r.do)]);
    texts("air", a && [...(a.air ? a.air.reasons : []), ...(a.freeze ? a.freeze.reasons : []), ...(a.freeze && a.freeze.would ? a.freeze.would : [])], (r) => [plain(r)]);
    texts("reasons", a && [...a.charge.reasons, ...(a.charge.instead || []).map((s) => "Instead: " + s)], (r) => [plain(r)]);
    texts("cautions", a && a.cautions, (c) => [plain(c)]);
    judged(a);
    if (whole || !a) pictures(answer.charts);
    trendChart(answer.charts && answer.charts.trend);
    $("record-notes").hidden = !state.texts.notes;
    $("record-notes").querySelector("p").textContent = state.texts.notes || "";
    $("record-head").replaceChildren(make("b", {}, state.texts.title || "Air conditioner"), a ? `${a.refrigerant.designation} (${a.refrigerant.safetyGroup}); atmosphere: ${a.atmosphere.source}. ${new Date().toLocaleString()}` : "");
    if (!whole && a && shown) return;
    shown = a;
    texts("next", a && a.next, (s) => [li(s.do, s.why)]);
    const focused = document.activeElement.closest(".evidence");
    texts("findings", a && a.findings, (f) => [finding(f)]);
    if (focused) for (const e of document.querySelectorAll(".evidence")) if (e.dataset.cause === focused.dataset.cause) e.firstChild.focus({ preventScroll: true });
    const settle = a && a.settle;
    $("settle").hidden = !settle;
    $("settle").querySelector("div").replaceChildren(...(settle ? [make("p", {}, make("b", {}, joined(sentence(settle.take)))), make("p", { class: "why" }, joined(sentence(settle.why))), make("ul", {}, ...(settle.outcomes || []).map(plain))] : []));
  }
  let held = {};
  // A value stays together, and may only part before its uncertainty.
  const unbroken = (text) => text.replace(/ (?!±)/g, "\u00a0");
  const percent = (p) => unbroken(100 * p > 99 ? "> 99 %" : 100 * p < 1 ? "< 1 %" : Math.round(100 * p) + " %");
  const sentence = (s) => s.charAt(0).toUpperCase() + s.slice(1);

  function finding(f) {
    const bar = svg("svg", { class: "meter", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" }, svg("rect", { x: 0, y: 0, width: Math.max(1, 100 * f.probability).toFixed(1), height: 10, fill: "#005a7d" }));
    const evidence = [...(f.for || []).map((s) => "For: " + s), ...(f.against || []).map((s) => "Against: " + s)];
    const item = make("li", {}, make("span", { class: "finding" }, `${percent(f.probability)} — ${f.cause}`), bar, ...(f.do ? [make("span", {}, joined("Do: " + f.do))] : []));
    if (evidence.length) {
      const folded = make("details", { class: "evidence", "data-cause": f.cause }, make("summary", {}, make("span", {}, `Why: ${(f.for || []).length} for, ${(f.against || []).length} against`)), ...evidence.map((s) => make("span", { class: "why" }, joined(s))));
      folded.open = unfolded.has(f.cause);
      folded.addEventListener("toggle", () => unfolded[folded.open ? "add" : "delete"](f.cause));
      item.append(folded);
    }
    return item;
  }
  const unfolded = new Set();
  function judged(a) {
    $("judged").hidden = !a || a.readings.length === 0;
    if ($("judged").hidden) return;
    $("judged").querySelector("ul").replaceChildren(...(a.doubts || []).map((d) => li(sentence(d.text), "Look: " + d.mend)));
    const rows = a.readings.map((r) => make("tr", {}, make("th", { scope: "row" }, r.name), make("td", { class: "num" }, unbroken(r.value)), make("td", { class: "belief", "data-belief": r.belief }, r.belief + (r.settled ? ", settled" : ""))));
    $("judged").querySelector(".scroll").replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["reading", "± standard uncertainty", "judged"].map((h) => make("th", { scope: "col" }, h)))), make("tbody", {}, ...rows)));
  }
  // errors says at each field what has to be mended there, and at the first field
  // of a reading that cannot be so, why it is not believed.
  function errors(found, doubts) {
    const doubted = {};
    for (const d of doubts || []) if (d.belief === "impossible" || d.belief === "doubted") doubted["readings." + d.fields[0]] ??= d.text.split(";")[0] + "?";
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

  // ---- drawing

  function svg(tag, attributes, ...children) {
    const e = document.createElementNS("http://www.w3.org/2000/svg", tag);
    for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
    e.append(...children);
    return e;
  }
  function figure(id, caption, label, height, draw) {
    const f = $(id);
    f.hidden = !draw;
    if (!draw) return f.replaceChildren();
    const s = svg("svg", { viewBox: `0 0 360 ${height}`, role: "img", "aria-label": label });
    draw(s);
    f.replaceChildren(...(caption ? [make("figcaption", {}, caption)] : []), s);
  }
  const round = (v) => Math.round(v * 10) / 10;
  const path = (points, x, y) => points.map((p, i) => (i ? "L" : "M") + x(p[0]).toFixed(1) + " " + y(p[1]).toFixed(1)).join("");
  function ticks(low, high, most) {
    const raw = (high - low) / most, power = 10 ** Math.floor(Math.log10(raw));
    const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= raw);
    const out = [];
    for (let v = Math.ceil(low / step) * step; v <= high + 1e-9; v += step) out.push(Math.round(v / step) * step);
    return out;
  }
  const tickText = (v) => String(Math.round(v * 1000) / 1000).replace("-", "−");

  function bandChart(answer) {
    const b = answer.band;
    if (!b) return figure("band");
    const from = Math.min(b.low, b.measured - 2 * b.std), to = Math.max(b.high, b.measured + 2 * b.std), room = 0.12 * (to - from) + 0.5;
    const x = (v) => 14 + (332 * (v - from + room)) / (to - from + 2 * room);
    const label = `${b.of} ${b.text}; target ${round(b.target)}, band from ${round(b.low)} to ${round(b.high)}`;
    figure("band", "", label, 92, (s) => {
      const mx = x(b.measured), anchor = mx < 110 ? "start" : mx > 250 ? "end" : "middle";
      s.append(
        svg("line", { x1: 14, x2: 346, y1: 50, y2: 50, class: "axis" }),
        svg("rect", { x: x(b.low), y: 36, width: x(b.high) - x(b.low), height: 28, class: "band", rx: 3 }),
        svg("line", { x1: x(b.target), x2: x(b.target), y1: 32, y2: 68, class: "target" }),
        svg("line", { x1: x(b.measured - 2 * b.std), x2: x(b.measured + 2 * b.std), y1: 50, y2: 50, stroke: "#10222e", "stroke-width": 6, "stroke-linecap": "round" }),
        svg("circle", { cx: mx, cy: 50, r: 9, class: "dot" }),
        svg("text", { x: anchor === "start" ? 14 : anchor === "end" ? 346 : mx, y: 22, "text-anchor": anchor, class: "big" }, `${b.of} ${b.text}`),
        svg("text", { x: x(b.low), y: 86, "text-anchor": "middle" }, tickText(round(b.low))),
        svg("text", { x: x(b.high), y: 86, "text-anchor": "middle" }, tickText(round(b.high))),
        svg("text", { x: x(b.target), y: 86, "text-anchor": "middle" }, x(b.high) - x(b.low) > 150 ? "target " + tickText(round(b.target)) : tickText(round(b.target))),
      );
    });
  }

  // frame draws the axes of a chart and returns where its values lie.
  function frame(s, h, xs, ys, xName, yName, log) {
    const left = 50, right = 350, top = 24, bottom = h - 40;
    const f = log ? Math.log : (v) => v;
    const x = (v) => left + ((right - left) * (v - xs[0])) / (xs[1] - xs[0]);
    const y = (v) => bottom - ((bottom - top) * (f(v) - f(ys[0]))) / (f(ys[1]) - f(ys[0]));
    for (const t of ticks(xs[0], xs[1], 6)) s.append(svg("line", { x1: x(t), x2: x(t), y1: top, y2: bottom, class: "grid" }), svg("text", { x: x(t), y: bottom + 17, "text-anchor": "middle" }, tickText(t)));
    const yTicks = log ? [1, 2, 5].flatMap((m) => [1, 10, 100, 1000, 1e4].map((p) => m * p)).filter((t) => t >= ys[0] && t <= ys[1]) : ticks(ys[0], ys[1], 5);
    for (const t of yTicks) s.append(svg("line", { x1: left, x2: right, y1: y(t), y2: y(t), class: "grid" }), svg("text", { x: left - 5, y: y(t) + 5, "text-anchor": "end" }, tickText(t)));
    s.append(svg("path", { d: `M${left} ${top}V${bottom}H${right}`, class: "axis" }), svg("text", { x: right, y: h - 4, "text-anchor": "end" }, xName), svg("text", { x: 2, y: 14 }, yName));
    return { x, y, left, right, top, bottom };
  }
  const span = (values, least) => {
    const low = Math.min(...values), high = Math.max(...values), room = Math.max(0.08 * (high - low), (least - (high - low)) / 2, 0);
    return [low - room, high + room];
  };

  function trendChart(t) {
    if (!t) return figure("trend");
    const last = t.points.at(-1);
    const values = t.points.map((p) => p[1]);
    if (t.band) values.push(t.band.low, t.band.high);
    if (t.settled !== undefined) values.push(t.settled);
    const xs = [Math.min(...t.points.map((p) => p[0])), Math.max(...t.points.map((p) => p[0]), ...t.moves.map((m) => m.minutes))];
    if (xs[1] - xs[0] < 5) xs[1] = xs[0] + 5;
    figure("trend", t.text ? sentence(t.text) : `${sentence(t.of)} over the log`, `${t.of} over time: ${t.points.length} readings, the last ${round(last[1])} ${t.unit} at ${round(last[0])} minutes`, 240, (s) => {
      const { x, y, left, right, top, bottom } = frame(s, 240, xs, span(values, 4), "minutes", `${t.of}, ${t.unit}`);
      if (t.band) s.prepend(svg("rect", { x: left, width: right - left, y: y(t.band.high), height: Math.max(1, y(t.band.low) - y(t.band.high)), class: "band" }));
      if (t.band) s.append(svg("line", { x1: left, x2: right, y1: y(t.band.target), y2: y(t.band.target), class: "target" }));
      t.moves.forEach((m, i) => s.append(svg("line", { x1: x(m.minutes), x2: x(m.minutes), y1: top, y2: bottom, class: "move" }), svg("text", { x: Math.min(x(m.minutes) + 3, right - 40), y: top + 12 + 14 * (i % 3), class: "halo" }, m.text)));
      if (t.settled !== undefined) s.append(svg("line", { x1: left, x2: right, y1: y(t.settled), y2: y(t.settled), class: "rest" }));
      s.append(svg("path", { d: path(t.points, x, y), class: "curve" }));
      if (t.points.length < 60) for (const p of t.points) s.append(svg("circle", { cx: x(p[0]), cy: y(p[1]), r: 4, class: "dot" }));
    });
  }
  function pictures(c) {
    $("pictures").hidden = !c || (!c.cycle && !c.air);
    cycleChart(c && c.cycle);
    airChart(c && c.air);
  }
  // place sets the name of a point where it has room.
  function named(s, p, x, y, above, toLeft) {
    s.append(svg("circle", { cx: x(p.x), cy: y(p.y), r: 5.5, class: "dot" }),
      svg("text", { x: x(p.x) + (toLeft ? -8 : 8), y: y(p.y) + (above ? -9 : 18), "text-anchor": toLeft ? "end" : "start", class: "halo" }, p.name));
  }
  function cycleChart(c) {
    if (!c) return figure("cycle");
    const all = [...(c.lines || []).flatMap((l) => l.points), ...c.points.map((p) => [p.x, p.y])];
    const ys = all.map((p) => p[1]);
    figure("cycle", `Pressure over enthalpy${c.ideal ? "; discharge not measured, drawn as if ideal" : ""}`, "Pressure-enthalpy diagram. " + c.points.map((p) => `${p.name}: ${p.text}`).join("; "), 270, (s) => {
      const { x, y } = frame(s, 270, span(all.map((p) => p[0]), 1), [Math.min(...ys) * 0.9, Math.max(...ys) * 1.15], `enthalpy, ${c.xUnit}`, `pressure, ${c.yUnit}`, true);
      if (c.lines && c.lines.length === 2) s.append(svg("path", { d: path([...c.lines[0].points, ...c.lines[1].points.toReversed()], x, y), class: "curve" }));
      s.append(svg("path", { d: path([...c.points, c.points[0]].map((p) => [p.x, p.y]), x, y), class: "path" }));
      c.points.forEach((p, i) => named(s, p, x, y, i === 1 || i === 2, i === 1 || i === 2 || i === 0 ? x(p.x) > 240 : false));
    });
  }
  function airChart(c) {
    if (!c) return figure("airchart");
    const px = c.points.map((p) => p.x), py = c.points.map((p) => p.y);
    const unit = c.xUnit === "°C" ? 1 : 1.8;
    const xs = span(px, 14 * unit), top = Math.max(...py) * 1.5;
    figure("airchart", "Moist air over the indoor coil", "Psychrometric chart. " + c.points.map((p) => `${p.name} air: ${p.text}`).join("; "), 270, (s) => {
      const { x, y, left, right, bottom, top: head } = frame(s, 270, xs, [0, top], `dry bulb, ${c.xUnit}`, `humidity ratio, ${c.yUnit}`);
      const clip = "inside-air";
      s.append(svg("clipPath", { id: clip }, svg("rect", { x: left, y: head, width: right - left, height: bottom - head })));
      for (const l of c.lines) {
        const inside = l.points.filter((p) => p[0] >= xs[0] && p[0] <= xs[1] && p[1] <= top);
        if (inside.length < 2) continue;
        const end = inside.at(-1);
        s.append(svg("path", { d: path(l.points, x, y), class: l.name === "100 %" ? "curve" : "thin", "clip-path": `url(#${clip})` }), svg("text", { x: Math.min(x(end[0]), right - 2), y: Math.max(y(end[1]) - 4, head + 10), "text-anchor": "end", class: "halo" }, l.name));
      }
      if (c.points.length > 1) s.append(svg("path", { d: path(c.points.map((p) => [p.x, p.y]), x, y), class: "path" }));
      c.points.forEach((p, i) => named(s, p, x, y, i === 0, x(p.x) > 280));
    });
  }

  // ---- the log

  const clock = (seconds) => (seconds < 60 ? seconds + " s" : (seconds < 3600 ? "" : Math.floor(seconds / 3600) + " h ") + Math.floor((seconds % 3600) / 60) + " min");
  // entry lists the readings of a log entry that are not as they were before.
  function entry(e, before) {
    const news = Object.entries(e.readings).filter(([n, v]) => !before || before.readings[n] !== v);
    return news.length ? news.map(([n, v]) => `${short(n)} ${unbroken(v)}`).join(", ") : "no change";
  }
  function paintLog() {
    const rows = [...state.log.map((e, i) => [e.at, entry(e, state.log[i - 1])]), ...state.moves.map((m) => [m.at, (m.way === "added" ? "added " : "recovered ") + m.mass])].sort((p, q) => p[0] - q[0]);
    $("log-list").replaceChildren(...(rows.length ? [make("table", {}, make("thead", {}, make("tr", {}, make("th", { scope: "col" }, "after"), make("th", { scope: "col" }, "entry"))), make("tbody", {}, ...rows.map(([at, text]) => make("tr", {}, make("td", { class: "num" }, clock(at)), make("td", {}, text)))))] : []));
    $("log-undo").disabled = rows.length === 0;
    paintSince();
  }
  function short(name) {
    for (const [n, label] of [...READINGS.flatMap(([, fields]) => fields), ...MORE]) if (n === name) return label.toLowerCase();
    return name;
  }
  function paintSince() {
    const last = lastAt();
    $("since").textContent = last < 0 ? "" : `${clock(Math.max(0, elapsed() - last))} since the last entry`;
  }
  function logTime() {
    if (!state.start) state.start = Date.now();
    return Math.max(elapsed(), lastAt() + (lastAt() >= 0 ? 1 : 0), 0);
  }
  function logNow() {
    const now = readings(), marked = document.querySelector('[data-path^="readings."][aria-invalid]');
    if (Object.keys(now).length === 0) return say("There are no readings to log.");
    if (marked) {
      marked.focus();
      return say("Mend the marked reading first.");
    }
    state.log.push({ at: logTime(), readings: now });
    changed();
    say(`Logged ${Object.keys(now).length} readings.`);
  }
  function logMove(way) {
    const mass = written(MOVE);
    if (!mass) {
      $(idOf(MOVE)).focus();
      return say("Enter how much was moved first.");
    }
    state.moves.push({ at: logTime(), way, mass });
    delete state.texts[MOVE];
    changed();
    say(`${way} ${mass}, logged.`);
  }
  function undo() {
    const log = state.log.at(-1), move = state.moves.at(-1);
    if (!log && !move) return;
    if (!move || (log && log.at > move.at)) state.log.pop();
    else state.moves.pop();
    if (lastAt() < 0) state.start = 0;
    changed();
    say("The last entry is taken back.");
  }
  function say(text) {
    $("saved").textContent = text;
    announce(text);
  }

  // ---- keeping

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
        else if (!["units", "scope", "log", "moves", "equipment.metering"].includes(p)) {
          // What has no field here is kept as it came.
          put(state.extra, p, value);
          kept.push(p);
        }
      }
    };
    walk(v, "");
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

  // ---- events

  function listen() {
    document.addEventListener("input", (e) => {
      const t = e.target;
      if (t.dataset.kind) state.texts[t.dataset.path] = t.value;
      else if (t.name === "units") changeSystem(t.value);
      else if (t.name === "metering") state.metering = t.value;
      else if (t.dataset.condition) state.conditions[t.dataset.condition] = t.checked;
      else return;
      save();
      paintUnits();
      ask(e);
    });
    document.addEventListener("focusout", (e) => {
      if (e.target.dataset && e.target.dataset.kind) setTimeout(ask);
    });
    document.addEventListener("keydown", (e) => {
      if (e.key !== "Enter" || !e.target.dataset || !e.target.dataset.kind || e.target.tagName !== "INPUT") return;
      const all = [...document.querySelectorAll("input[data-kind]")].filter((x) => x.checkVisibility());
      const next = all[all.indexOf(e.target) + 1];
      if (next) next.focus();
    });
    document.addEventListener("click", (e) => {
      const unit = e.target.closest("[data-unit]");
      if (!unit) return;
      const path = unit.dataset.unit, choices = unitsOf(kindOf(path));
      state.units[path] = choices[(choices.indexOf(unitOf(path)) + 1) % choices.length];
      save();
      paintUnits();
      ask();
    });
    $("log-now").addEventListener("click", logNow);
    $("move-added").addEventListener("click", () => logMove("added"));
    $("move-recovered").addEventListener("click", () => logMove("recovered"));
    $("log-undo").addEventListener("click", undo);
    $("print").addEventListener("click", () => print());
    $("export").addEventListener("click", download);
    $("import").addEventListener("click", () => $("file").click());
    $("file").addEventListener("change", async (e) => {
      const [file] = e.target.files;
      e.target.value = "";
      if (!file) return;
      try {
        const doc = JSON.parse(await file.text());
        if (!mayReplace("the file")) return;
        const kept = open(doc);
        say(`Opened ${file.name}.` + (kept.length ? ` Kept, though it has no field here: ${kept.join(", ")}.` : ""));
      } catch {
        say("That file is not a visit in JSON.");
      }
    });
    $("example").addEventListener("click", () => {
      if (!mayReplace("an invented example")) return;
      open(JSON.parse($("sample").textContent));
      say("An invented visit is shown.");
    });
    $("clear").addEventListener("click", () => {
      if (!confirm("Clear everything on this page?")) return;
      state = empty();
      shown = null;
      changed();
      say("Everything is cleared.");
    });
    // What is folded on the screen is open on paper.
    addEventListener("beforeprint", () => document.querySelectorAll(".evidence").forEach((d) => (d.open = true)));
    setInterval(paintSince, 10000);
  }

  build();
  restore();
  listen();
  paint();
  start();
})();
