// The other tasks of a visit: each its fields, its clock, its answer.

let openTask = "";
function buildTasks() {
  $("tasks").replaceChildren(
    make("div", { class: "menu" }, ...form.tasks.map((k) => make("button", { type: "button", "data-task": k.code }, t("task." + k.code)))),
    ...form.tasks.map((k) => make("section", { class: "card task", id: "task-" + k.code, "data-code": k.code, hidden: k.code !== openTask }, make("h2", { tabindex: "-1" }, k.name), make("p", { class: "hint" }, k.hint))),
  );
  if (openTask) showTask(openTask);
}
// The fields of a task stand on the page only while it is open: some are those of the visit.
function showTask(code) {
  openTask = code;
  const task = form.tasks.find((k) => k.code === code);
  $("tasks").querySelector(".menu").hidden = !!task;
  document.querySelectorAll(".task").forEach((e) => {
    e.hidden = e.dataset.code !== code;
    while (e.children.length > 2) e.lastChild.remove();
  });
  if (!task) return;
  const at = $("task-" + code), own = (f) => ({ ...f, path: f.path });
  at.append(make("button", { type: "button", "data-task": "" }, "‹ " + t("task.back")), make("div", { class: "answer-box", role: "status" }));
  for (const l of task.lists || []) if (l.timed) at.append(make("div", { class: "row" }, make("button", { type: "button", class: "strong", "data-clock": l.path }, ""), make("button", { type: "button", "data-now": l.path }, t("task.now"))));
  at.append(...groupElements((task.fields || []).filter((f) => !elsewhere(f.path, at)).map(own), (task.lists || []).filter((l) => l.path.startsWith("task."))));
  for (const f of (task.fields || []).filter((x) => elsewhere(x.path, at))) at.append(make("button", { type: "button", class: "leads", "data-go": f.path }));
  at.append(...(task.parts || []).map((part) => make("details", {}, make("summary", {}, part.name), ...groupElements(part.fields || [], part.lists || []))));
  grown();
  paintFields(at);
  paintClocks();
  runTask();
}
// A field of the visit stands in one place; a task leads there.
const elsewhere = (path, at) => !path.startsWith("task.") && $(idOf(path)) && !at.contains($(idOf(path)));
async function runTask() {
  const code = openTask, at = $("task-" + code);
  if (!at || all.settings.tab !== "tasks") return;
  at.querySelectorAll(".leads").forEach((b) => {
    const f = fieldOf(b.dataset.go), chosen = (f.options || []).find((o) => o.value === written(f.path));
    b.textContent = `${f.label}: ${(chosen ? chosen.text : inSystem(f, written(f.path))) || "…"}`;
  });
  const answer = await thorough.call("task", code, visit(), taskInputs()), box = at.querySelector(".answer-box");
  if (!box || code !== openTask) return;
  box.replaceChildren(
    ...(answer.problem ? [make("p", { class: "error" }, sentence(answer.problem))] : []),
    ...(answer.lines || []).map((l, i) => make("p", { class: i ? "" : "big" }, sentence(l))),
    ...(answer.cautions ? [make("ul", { class: "hint" }, ...answer.cautions.map(plain))] : []),
  );
  at.dataset.answered = code;
}
function paintClocks() {
  document.querySelectorAll("[data-clock]").forEach((b) => {
    const from = state.clocks[b.dataset.clock];
    b.textContent = t("task.clock", { time: from ? clock((Date.now() - from) / 1000) : "0:00" });
  });
}
function startClock(path) {
  state.clocks[path] = Date.now();
  for (const p of Object.keys(state.values)) if (p.startsWith(path + ".")) delete state.values[p];
  changed();
  showTask(openTask);
}
// readNow puts the time of the clock into the next row and waits for its number.
function readNow(path) {
  const list = form.tasks.flatMap((k) => k.lists || []).find((l) => l.path === path);
  const rows = document.querySelectorAll(`[data-list="${path}"] .entry`).length - 1;
  state.clocks[path] ??= Date.now();
  const at = list.fields.find((f) => f.path.endsWith(".at")), other = list.fields.find((f) => !f.path.endsWith(".at"));
  state.values[at.path.replace("*", rows)] = { text: ((Date.now() - state.clocks[path]) / 60000).toFixed(2), unit: "min" };
  save();
  paintFields($("task-" + openTask));
  $(idOf(other.path.replace("*", rows))).focus();
}
