// The loop: verdict, danger, next step, readings and log on one screen.

const OUTCOMES = { "in-band": ["good", "✓"], low: ["low", "▼"], high: ["high", "▲"], open: ["wait", "?"], "not-judged": ["wait", "!"] };

let inBar = []; // pressures that may have been read in bar
function renderLoop(answer, isWhole) {
  const l = answer.loop, outcome = l ? l.outcome : "none", [tone, mark] = OUTCOMES[outcome] || ["none", "…"];
  $("bar").dataset.outcome = tone;
  $("mark").textContent = mark;
  $("outcome").textContent = t("outcome." + outcome);
  $("bar").classList.toggle("said", !!(l && l.said));
  const missing = l ? undefined : ["equipment.refrigerant"].find((path) => !written(path) || answer.errors[path]);
  const line = l ? l.headline : missing && !written(missing) ? t("first." + missing.slice(10)) : sentence(answer.problem || "");
  $("headline").textContent = joined(line);
  const grave = l && (l.dangers || []).filter((d) => d.grave), risk = $("risk");
  risk.hidden = !(grave && grave.length);
  if (!risk.hidden) risk.replaceChildren(make("b", {}, t("danger") + (grave.length > 1 ? ` 1/${grave.length}` : "")), " " + sentence(grave[0].text));
  announce([(l && l.said ? "" : t("outcome." + outcome) + ". ") + line, ...(risk.hidden ? [] : [t("danger") + ": " + grave[0].text])].join(" "));
  $("figures").replaceChildren(...((l && l.figures) || []).map((f) => make("div", {}, make("dt", {}, f.name), make("dd", {}, joined(f.text)))));
  bandChart(answer.band);
  inBar = answer.inBar || [];
  errors(answer.errors || {}, (l && l.doubts) || {});
  if (isWhole || !l) renderNext(l, missing);
  trendChart(answer.trend); // last, in what the rest leaves
}

let nextShown = "";
function renderNext(l, missing) {
  const key = JSON.stringify([missing, l && l.steps, l && l.count, all.settings.language, system()]);
  if (key === nextShown) return;
  nextShown = key;
  const box = $("next"), held = box.contains(document.activeElement), step = l && l.steps && l.steps[0];
  box.hidden = !step && !missing;
  if (missing) return box.replaceChildren(make("div", { class: "answers" }, goButton(missing)));
  if (!step) return;
  const look = form.looks.find((x) => x.code === step.look), buttons = [];
  if (look) buttons.push(answerButton(look, true), answerButton(look, false));
  for (const path of step.fields || []) if ($(idOf(path))) buttons.push(goButton(path));
  if (step.task) buttons.push(make("button", { type: "button", "data-task": step.task }, t("task." + step.task)));
  const more = make("button", { type: "button", class: "quiet", "data-to": "keep-plan", "aria-label": `1/${l.count} › ${t("loop.all", { count: l.count })}` }, `1/${l.count} ›`);
  box.replaceChildren(make("h2", { class: "unseen" }, t("loop.next")), make("p", {}, sentence(step.text)), more, make("div", { class: "answers" }, ...buttons));
  document.querySelectorAll(".asked").forEach((e) => e.classList.remove("asked"));
  for (const path of (l.steps || []).flatMap((s) => s.fields || [])) {
    const e = $(idOf(path)), field = e && e.closest(".field, .choice");
    if (field) field.classList.add("asked");
    if (e && e.closest("details")) e.closest("details").open = true;
  }
  if (held) (box.querySelector("button") || $("log-now")).focus({ preventScroll: true });
}
const goButton = (path) => make("button", { type: "button", "data-go": path }, t("loop.enter", { name: fieldOf(path).label.toLowerCase() }));
function answerButton(look, found) {
  return make("button", { type: "button", class: "answer", "data-look": look.code, "data-found": String(found) }, sentence(found ? look.found.text : look.notFound.text));
}
function answerLook(code, found) {
  const look = form.looks.find((x) => x.code === code);
  state.checks = [...state.checks.filter((c) => c.look !== code), { look: code, found }];
  say(t("said.noted", { name: sentence(look.name.text), answer: found ? look.found.text : look.notFound.text }));
  changed();
}

// errors says at each field what has to be mended there, or why it is not believed.
function errors(problems, doubted) {
  const found = Object.fromEntries(Object.entries(problems).map(([p, x]) => [/^(log|moves|checks)\[/.test(p) ? p : p.replace(/\[(\d+)\]/g, ".$1"), x]));
  document.querySelectorAll("[data-path]").forEach((e) => {
    if (e === document.activeElement || e.type === "radio" && e.id !== idOf(e.dataset.path)) return;
    if (!inVisit(e.dataset.path)) return;
    // What a visit begins without is no error; the rest of a row that was begun is missing.
    const path = e.dataset.path, blank = !state.values[path] && !/\.\d+\.|^house\./.test(path);
    const problem = blank || isQuantity(fieldOf(path)) && e.getAttribute("aria-invalid") ? "" : found[path] || "";
    if (!blank && e.getAttribute("aria-invalid") && isQuantity(fieldOf(path)) && found[path]) return;
    tell(e, problem || (blank ? "" : doubted[path] || ""), !problem);
  });
  const left = [];
  for (const [path, problem] of Object.entries(found)) {
    const [, list, index] = /^(log|moves)\[(\d+)\]/.exec(path) || [], entry = list && state[list][index];
    if (/^checks\[/.test(path)) continue;
    if (entry) left.push(t("problem.log", { time: clock(entry.at), problem }));
    else if (!list && !$(idOf(path)) && path) left.push(t("problem.file", { problem: path + ": " + problem }));
  }
  $("e-file").textContent = left.join(" ");
}

function paintLoop() {
  $("undo").disabled = lastAt() < 0;
  paintClock();
}
function paintClock() {
  const last = lastAt(), move = state.moves.at(-1), parts = [];
  if (state.running) parts.push(`${t("loop.running")} ${clock((Date.now() - state.running) / 1000)}`);
  if (move) {
    const left = form.wait - (elapsed() - move.at);
    parts.push(left > 0 ? `${t("loop.wait")} ${clock(left)}` : t("loop.ready") + " ✓");
  } else if (last >= 0) parts.push(`${clock(elapsed() - last)} ${t("loop.since")}`);
  const text = parts.join(" · ") || t("loop.start");
  if ($("clock").textContent !== text) $("clock").textContent = text;
}
function logTime() {
  if (!state.start) state.start = Date.now();
  return Math.max(elapsed(), lastAt() + (lastAt() >= 0 ? 1 : 0), 0);
}
async function logNow() {
  await checking;
  const now = readings(), marked = document.querySelector('[data-path^="readings."][aria-invalid]');
  if (Object.keys(now).length === 0) return say(t("said.nothing"));
  if (marked) {
    goTo(marked.dataset.path);
    return say(t("said.mend"));
  }
  state.log.push({ at: logTime(), readings: now });
  say(t("said.logged", { count: Object.keys(now).length }));
  paintLoop();
  changed();
}
async function logMove(way) {
  await checking;
  const path = form.move.path, mass = written(path), e = $(idOf(path));
  if (!mass || e.getAttribute("aria-invalid")) {
    e.focus();
    return say(t("said.mass"));
  }
  state.moves.push({ at: logTime(), way, mass });
  delete state.values[path];
  e.value = "";
  say(t("said.moved", { way: t("loop." + way), mass: joined(mass) }));
  paintLoop();
  changed();
}
function undo() {
  const log = state.log.at(-1), move = state.moves.at(-1);
  if (!log && !move) return;
  if (!move || (log && log.at > move.at)) state.log.pop();
  else state.moves.pop();
  if (lastAt() < 0) state.start = 0;
  say(t("said.undone"));
  paintLoop();
  changed();
}

// The screen stays awake in the loop, where the browser can keep it so.
let lock = null;
async function keepAwake() {
  const wanted = () => all.settings.tab === "loop" && document.visibilityState === "visible";
  if (!navigator.wakeLock || wanted() === !!lock) return;
  if (lock) {
    lock.release();
    lock = null;
    return;
  }
  try {
    const own = await navigator.wakeLock.request("screen");
    if (lock || !wanted()) return own.release(); // it was left before the answer came
    lock = own;
    own.addEventListener("release", () => lock === own && (lock = null));
  } catch {
    lock = null; // low on battery, or not allowed: nothing is lost but the light
  }
}
