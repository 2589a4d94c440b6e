// The fields: made of what the library offers, and painted from the state.

const idOf = (path) => "f-" + path.replaceAll(".", "-");
const fieldOf = (path) => fieldsByPath.get(path);
const groupOf = (code) => form.groups.find((g) => g.code === code);

function fieldElement(field, label = field.label) {
  fieldsByPath.set(field.path, field);
  const id = idOf(field.path), error = make("p", { class: "error", id: "e-" + id });
  const common = { id, "data-path": field.path, "aria-describedby": "e-" + id, autocomplete: "off", enterkeyhint: "next" };
  if (field.kind === "yes") return make("label", { class: "check" }, make("input", { type: "checkbox", ...common }), make("span", {}, label));
  if (field.options && field.options.length <= (/\.\d+(\.|$)/.test(field.path) ? 3 : 4)) {
    const radios = field.options.map((o, i) => make("label", {}, make("input", { type: "radio", name: id, value: o.value, "data-path": field.path, id: i ? `${id}-${i}` : id }), make("span", {}, o.text)));
    return make("fieldset", { class: "choice" }, make("legend", {}, sentence(label)), make("div", { class: "segments" }, ...radios), error);
  }
  let control;
  if (field.options) control = make("select", common, make("option", { value: "" }, t("choose")), ...field.options.map((o) => make("option", { value: o.value }, o.text)));
  else if (field.path === "notes") control = make("textarea", { ...common, rows: 3, maxlength: 4000 });
  else if (field.path.endsWith("refrigerant") || field.path.endsWith("holds")) control = make("input", { ...common, list: "fluids", autocapitalize: "characters", spellcheck: "false" });
  else control = make("input", { ...common, inputmode: field.kind === "text" ? "text" : "decimal", maxlength: 120 });
  if (!isQuantity(field)) return make("div", { class: "field" + (field.kind === "text" ? " wide" : "") }, make("label", { for: id }, sentence(label)), control, error);
  const units = make("select", { class: "unit", "data-unit": field.path, "aria-label": t("unit.of", { name: label }) });
  const sign = field.signed && make("button", { type: "button", class: "sign", "data-sign": field.path, "aria-label": t("sign.of", { name: label }) }, "±");
  return make("div", { class: "field" }, make("label", { for: id }, sentence(label)), make("div", { class: "pair" }, control, sign, units), error);
}

function listElement(list) {
  const box = make("div", { class: "list", "data-list": list.path });
  const paintRows = () => {
    const filled = Object.keys(state.values).filter((p) => p.startsWith(list.path + ".")).map((p) => Number(p.slice(list.path.length + 1).split(".")[0]));
    const rows = Math.max(-1, ...filled) + 2;
    for (let i = box.children.length; i < rows; i++) {
      const at = (x) => ({ ...x, path: x.path.replace("*", i) });
      const inner = (list.lists || []).map((l) => listElement({ ...at(l), name: `${l.name}, ${i + 1}`, fields: l.fields.map(at) }));
      box.append(make("div", { class: "entry fields" }, ...list.fields.map((f) => fieldElement(at(f), `${f.label} ${i + 1}`)), ...inner));
      box.lastChild.querySelectorAll("[data-list]").forEach((b) => b.grow());
      paintFields(box.lastChild);
    }
    while (box.children.length > rows && !box.lastChild.contains(document.activeElement)) box.lastChild.remove();
  };
  box.grow = paintRows;
  return make("fieldset", { class: "plain" }, make("legend", { class: list.fields.length === 1 && !list.lists && "unseen" }, list.name), box);
}
const grown = () => document.querySelectorAll("[data-list]").forEach((b) => b.grow());

function groupElements(fields, lists = []) {
  const checks = fields.filter((f) => f.kind === "yes"), others = fields.filter((f) => f.kind !== "yes");
  return [
    others.length && make("div", { class: "fields" }, ...others.map((f) => fieldElement(f))),
    checks.length && make("div", { class: "checks" }, ...checks.map((f) => fieldElement(f))),
    ...lists.map(listElement),
  ].filter(Boolean);
}
function groupCard(code) {
  const g = groupOf(code), open = code === "readings" ? 0 : g.opened || 0;
  const rest = g.fields.slice(g.opened || 0), core = g.fields.slice(0, open), whole = open === 0;
  const folded = (rest.length || g.lists) && make("details", { class: whole && "whole" }, make("summary", {}, code === "readings" ? t("loop.more") : whole ? g.name : t("more", { name: g.name.toLowerCase() })), ...groupElements(rest, g.lists));
  return make("section", { class: "card", "data-group": code }, !whole && make("h2", {}, g.name), ...(whole ? [] : groupElements(core)), folded);
}
function setting(name, options) {
  const id = "s-" + name;
  return make("div", { class: "field" }, make("label", { for: id }, t("settings." + name)), make("select", { id, "data-setting": name }, ...options.map(([value, text]) => make("option", { value }, text))));
}

// build makes the page in the language of the form.
function build() {
  const focused = document.activeElement && document.activeElement.id;
  document.querySelectorAll("[data-word]").forEach((e) => (e.textContent = t(e.dataset.word)));
  $("tabs").setAttribute("aria-label", t("settings"));
  const machines = make("div", { class: "row" }, make("div", { class: "field grow" }, make("label", { for: "machine" }, t("machines")), make("select", { id: "machine" })), make("button", { type: "button", id: "machine-new" }, "+ " + t("machine.new")));
  $("setup").replaceChildren(
    make("section", { class: "card" }, machines, make("div", { class: "fields three" },
      setting("language", form.languages.map((l) => [l.value, l.text])),
      setting("system", [["IP", t("units.IP")], ["SI", t("units.SI")]]),
      setting("theme", ["auto", "bright", "dark"].map((x) => [x, t("theme." + x)])))),
    ...form.groups.filter((g) => g.code !== "record").map((g) => groupCard(g.code)),
    make("button", { type: "button", id: "machine-remove", class: "risky" }, t("machine.remove")),
    make("datalist", { id: "fluids" }, ...form.fluids.map((f) => make("option", { value: f.designation }, f.note))),
  );
  document.querySelector('label[for="s-system"]').textContent = t("settings.units");
  $("core").replaceChildren(...form.core.map((p) => fieldElement(fieldOf(p), t("short." + p.slice(9)))));
  paintNote();
  $("move-field").replaceChildren(fieldElement(form.move));
  $(idOf(form.move.path)).placeholder = form.move.label;
  $("record").replaceChildren(groupCard("record"));
  $("log-now").textContent = t("loop.log");
  $("undo").setAttribute("aria-label", t("loop.undo"));
  $("move-added").textContent = t("loop.added");
  $("move-recovered").textContent = t("loop.recovered");
  buildTasks();
  paint();
  if (focused && $(focused)) $(focused).focus({ preventScroll: true });
}

function paint() {
  const s = all.settings;
  document.documentElement.dataset.theme = s.theme;
  document.querySelectorAll("[data-setting]").forEach((e) => (e.value = s[e.dataset.setting]));
  $("machine").replaceChildren(...Object.entries(all.machines).map(([id, m]) => {
    const name = ["title", "equipment.refrigerant"].map((p) => m.values[p] && m.values[p].text).filter(Boolean).join(", ");
    return make("option", { value: id, selected: id === all.current }, name || t("machine.unnamed"));
  }));
  grown();
  paintFields(document);
  paintLoop();
  showTab(s.tab);
}
function paintFields(within) {
  within.querySelectorAll("[data-path]").forEach((e) => {
    const field = fieldOf(e.dataset.path), v = state.values[e.dataset.path];
    if (e.type === "checkbox") e.checked = !!v;
    else if (e.type === "radio") e.checked = !!v && v.text === e.value;
    else if (e !== document.activeElement || e.value === "" || !v) {
      const text = shownText(field);
      if (e.value !== text) e.value = text;
    }
  });
  within.querySelectorAll("[data-unit]").forEach(paintUnit);
}
function paintUnit(e) {
  const field = fieldOf(e.dataset.unit), unit = unitOf(field), symbols = unitsOf(field).map((u) => u.symbol);
  if (e.dataset.units !== symbols.join("|")) {
    e.dataset.units = symbols.join("|");
    e.replaceChildren(...symbols.map((s) => make("option", { value: s }, s)));
  }
  e.value = unit;
}
// keepTyped takes what is in a field into the state.
function keepTyped(e, text = e.value) {
  const path = e.dataset.path, field = fieldOf(path);
  if (e.type === "checkbox") e.checked ? (state.values[path] = { text: true }) : delete state.values[path];
  else if (!text.trim()) delete state.values[path];
  else if (isQuantity(field)) state.values[path] = { text, unit: unitOf(field) };
  else state.values[path] = { text, number: field.kind === "number" || undefined, either: field.kind === "either" || undefined };
}

// What is logged waits for what is wrong with the field that was typed last.
let checking = Promise.resolve();
// check asks the library what is wrong with a field, while it is being typed.
async function check(e, typing) {
  const path = e.dataset.path, field = fieldOf(path), text = e.value.trim();
  if (!isQuantity(field)) return;
  const half = typing && /^[+\-−]?[.,]?$/.test(text);
  if (!text || half) return tell(e, "");
  const answer = await quick.call("read", JSON.stringify({ path, kind: field.kind, unit: unitOf(field), language: all.settings.language, typing, text: bare(text) ? plainNumber(text) + " " + unitOf(field) : text.replace(/^([+\-−]?\d+),(\d+)/, "$1.$2") }));
  if (e.value.trim() !== text) return;
  // While a unit is being typed it may be half of one.
  tell(e, typing && !bare(text) && /^[+\-−]?[\d.,]+\s*\D{0,2}$/.test(text) && answer.problem && halfUnit(field, text) ? "" : answer.problem || "");
  if (typing || bare(text) || !answer.unit) return;
  // The unit was typed: the field shows it from now on.
  if (unitsOf(field).some((u) => u.symbol === answer.unit)) {
    setUnit(field, answer.unit);
    state.values[path] = { text: answer.number.replace(".", t("decimal")), unit: answer.unit };
    changed();
    paintFields(document);
    e.value = shownText(field);
  }
}
const halfUnit = (field, text) => {
  const typed = text.replace(/^[+\-−]?[\d.,]+\s*/, "").replace(/[°º\s]/g, "").toLowerCase();
  return unitsOf(field).some((u) => u.symbol.replace(/[°\s]/g, "").toLowerCase().startsWith(typed));
};
function tell(e, problem, doubt) {
  const place = $("e-" + idOf(e.dataset.path));
  if (problem && !doubt) e.setAttribute("aria-invalid", "true");
  else e.removeAttribute("aria-invalid");
  if (!place || place.textContent === problem) return;
  place.textContent = sentence(problem);
  place.classList.toggle("doubt", !!doubt);
  paintNote();
  if (problem) announce(problem);
}
// paintNote says over the fields of the loop, where it has room, what is wrong with one of them: with
// that in hand, else with what cannot be read, else with what is not believed. A doubt names its
// reading itself.
function paintNote() {
  const rank = (e) => 2 * e.parentElement.contains(document.activeElement) + !e.classList.contains("doubt");
  const [told] = [...$("core").querySelectorAll(".error:not(:empty)")].sort((a, b) => rank(b) - rank(a));
  const doubt = told?.classList.contains("doubt"), name = told && !doubt ? told.parentElement.querySelector("label").textContent + ": " : "";
  $("note").textContent = told ? name + told.textContent : "";
  $("note").classList.toggle("doubt", !!doubt);
}

// goTo leads to a field, on its tab and out of what is folded.
function goTo(path) {
  const e = $(idOf(path));
  if (!e) return;
  showTab(e.closest("[role=tabpanel]").id);
  for (let d = e.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
  (document.querySelector(`[name="${e.id}"]:checked`) || e).focus();
  e.scrollIntoView({ block: "center" });
}
// nextField is where Enter leads: each field that is open, the choices with them, from the
// machine through its label to the readings and to the log.
function nextField(e) {
  const open = [...document.querySelectorAll("#setup [data-path], #core [data-path]")].filter((x) => (x.closest("#core") || x.closest("details:not([open])") === null) && x.type !== "checkbox");
  const paths = [...new Set(open.map((x) => x.dataset.path))], next = paths[paths.indexOf(e.dataset.path) + 1];
  if (next && paths.includes(e.dataset.path)) return goTo(next);
  const own = [...e.closest("[role=tabpanel]").querySelectorAll("[data-path]")].filter((x) => x.checkVisibility());
  const after = own[own.indexOf(e) + 1];
  if (e.dataset.path === form.core.at(-1)) $("log-now").focus();
  else if (after && !e.closest("#loop")) after.focus();
  else e.blur();
}
function showTab(name) {
  const leaving = all.settings.tab !== name;
  all.settings.tab = name;
  document.body.dataset.tab = name;
  for (const b of $("tabs").children) {
    const on = b.id === "tab-" + name;
    b.setAttribute("aria-selected", String(on));
    b.tabIndex = on ? 0 : -1;
  }
  for (const p of document.querySelectorAll("[role=tabpanel]")) p.hidden = p.id !== name;
  if (leaving) {
    scrollTo(0, 0);
    save();
  }
  if (name === "keep") renderKeep();
  keepAwake();
}
