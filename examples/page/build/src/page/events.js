// What the technician does.

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
