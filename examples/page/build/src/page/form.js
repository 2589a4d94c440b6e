// The form: made of the fields, and painted from the state.

const $ = (id) => document.getElementById(id);
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
const unitsOf = (kind) => (units ? units[kind][state.system] : []);
const unitOf = (path) => {
  const choices = unitsOf(kindOf(path));
  return choices.includes(state.units[path]) ? state.units[path] : choices[0] || "";
};
// changeSystem keeps every number that is there in the unit it was typed in.
function changeSystem(system) {
  document.querySelectorAll("[data-unit]").forEach((b) => {
    const path = b.dataset.unit;
    if (bare((state.texts[path] || "").trim())) state.units[path] = unitOf(path);
    else delete state.units[path];
  });
  state.system = system;
  paintChecks();
}
const bare = (text) => /^[+\-−]?\s*(\d+[.,]?\d*|[.,]\d+)$/.test(text);

// written is a field as the library reads it: as typed, or with its unit.
function written(path) {
  const text = (state.texts[path] || "").trim();
  if (text === "" || kindOf(path) === "text") return text;
  if (!bare(text)) return text;
  const unit = unitOf(path);
  // A comma before three digits may part thousands: the library says so.
  return text.replace(/,(?!\d{3}$)/, ".").replace("−", "-").replace(/\s/g, "") + (unit === "min" ? "m" : " " + unit).replace(" h", "h");
}

function paint() {
  document.querySelectorAll("[data-path][data-kind]").forEach((e) => {
    const text = state.texts[e.dataset.path] || "";
    if (e.value !== text) e.value = text;
  });
  document.querySelectorAll("[name=units]").forEach((e) => (e.checked = e.value === state.system));
  document.querySelectorAll("[name=metering]").forEach((e) => (e.checked = e.value === state.metering));
  document.querySelectorAll("[data-condition]").forEach((e) => (e.checked = !!state.conditions[e.dataset.condition]));
  paintUnits();
  paintChecks();
  paintLog();
}
function paintUnits() {
  document.querySelectorAll("[data-unit]").forEach((b) => {
    const path = b.dataset.unit, text = (state.texts[path] || "").trim();
    const own = text !== "" && !bare(text), unit = unitOf(path);
    const label = document.querySelector(`label[for="${idOf(path)}"]`).textContent;
    b.textContent = own ? "typed" : unit;
    b.disabled = own || unitsOf(kindOf(path)).length < 2;
    b.setAttribute("aria-label", own ? `${label}: unit as typed` : `${label}: unit ${unit}, change`);
  });
}
