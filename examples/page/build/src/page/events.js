// What the technician does.

function act(target) {
  const d = target.dataset;
  if (target.role === "tab" || target.getAttribute("role") === "tab") return showTab(target.id.slice(4)), openTask && runTask();
  if (d.look) return answerLook(d.look, d.found === "true");
  if (d.unlook) {
    const [gone] = state.checks.splice(Number(d.unlook), 1);
    say(t("said.removed", { name: gone.look }));
    return changed();
  }
  if (d.go) return goTo(d.go);
  if (d.to) {
    showTab("keep");
    const e = $(d.to);
    if (e) e.scrollIntoView(), e.focus({ preventScroll: true });
    return;
  }
  if (d.task !== undefined) {
    showTab("tasks");
    showTask(d.task);
    scrollTo(0, 0);
    return (d.task ? $("task-" + d.task).querySelector("h2") : $("tasks").querySelector("button")).focus({ preventScroll: true });
  }
  if (d.clock) return startClock(d.clock);
  if (d.now) return readNow(d.now);
  if (d.sign) return changeSign($(idOf(d.sign)));
  const actions = {
    "log-now": logNow, undo, print: printRecord, share: shareRecord, html: saveRecord, json: saveJSON,
    "move-added": () => logMove("added"), "move-recovered": () => logMove("recovered"),
    clock: () => {
      state.running = state.running ? 0 : Date.now();
      paintClock();
      changed();
    },
    open: () => $("file").click(),
    example: () => {
      if (!isEmpty() && !confirm(t("ask.replace"))) return;
      openVisit(JSON.parse($("sample").textContent));
      say(t("said.example"));
    },
    "machine-new": () => switchTo(String(Math.max(...Object.keys(all.machines).map(Number)) + 1)),
    "machine-remove": () => {
      if (!confirm(t("ask.remove"))) return;
      delete all.machines[all.current];
      switchTo(Object.keys(all.machines)[0] || "1");
      say(t("said.cleared"));
    },
  };
  if (actions[target.id]) actions[target.id]();
}
function switchTo(id) {
  all.current = id;
  state = all.machines[id] ??= empty();
  shown = whole = null;
  openTask = "";
  build();
  changed();
}
const otherSign = (text) => (/^[-−]/.test(text) ? text.slice(1) : "-" + text);
function changeSign(e) {
  e.value = otherSign(e.value);
  e.focus();
  e.dispatchEvent(new Event("input", { bubbles: true }));
}

// roomFor leaves the sign's key out where it would cover the number.
function roomFor(e) {
  const pair = e.closest(".pair");
  pair?.classList.remove("tight");
  pair?.classList.toggle("tight", e.scrollWidth > e.clientWidth);
}

function listen() {
  document.addEventListener("input", (e) => {
    if (!e.target.dataset.path) return;
    keepTyped(e.target);
    changed(e.inputType);
    roomFor(e.target);
    checking = check(e.target, true);
    grown();
    if (e.target.closest(".task")) runTask();
  });
  document.addEventListener("change", (e) => {
    const d = e.target.dataset;
    if (d.path && e.target.tagName === "INPUT") checking = check(e.target, false);
    if (d.unit) {
      setUnit(fieldOf(d.unit), e.target.value);
      if (inBar.includes(d.unit) && e.target.value === "barg") {
        state.values[d.unit].unit = "barg"; // asked, and answered
        changed();
      } else save();
      paintFields(document);
    } else if (d.setting) {
      all.settings[d.setting] = e.target.value;
      save();
      nextShown = "";
      describe();
    } else if (e.target.id === "machine") switchTo(e.target.value);
    else if (e.target.id === "file") openFile(e.target);
  });
  document.addEventListener("focusin", (e) => {
    if (e.target.inputMode === "decimal" || e.target.list) e.target.select();
    roomFor(e.target);
    paintNote();
    workAhead();
  });
  document.addEventListener("click", (e) => {
    const button = e.target.closest("button");
    if (button) act(button);
  });
  document.addEventListener("keydown", (e) => {
    if (e.target.closest("[role=tablist]") && /^Arrow(Left|Right)$/.test(e.key)) {
      const tabs = [...$("tabs").children], next = tabs[(tabs.indexOf(e.target) + (e.key === "ArrowRight" ? 1 : 3)) % 4];
      showTab(next.id.slice(4));
      next.focus();
    }
    if (e.key !== "Enter" || !e.target.dataset.path || e.target.tagName === "TEXTAREA") return;
    e.preventDefault();
    if (e.target.id === idOf(form.move.path)) e.target.blur();
    else nextField(e.target);
  });
  document.addEventListener("visibilitychange", keepAwake);
  setInterval(() => {
    if (!form) return;
    paintClock();
    paintClocks();
    if (lastTrend && state.start && elapsed() % 10 === 0) trendChart(lastTrend);
  }, 1000);
}
async function openFile(input) {
  const [file] = input.files;
  if (!file) return;
  try {
    const doc = JSON.parse(await new Promise((done, failed) => {
      const reader = new FileReader();
      reader.onload = () => done(reader.result);
      reader.onerror = failed;
      reader.readAsText(file);
    }));
    if (!isEmpty() && !confirm(t("ask.replace"))) return;
    const kept = openVisit(doc);
    say(t("said.opened", { name: file.name }) + (kept.length ? " " + t("said.kept", { names: kept.join(", ") }) : ""));
  } catch {
    say(t("said.notvisit"));
  }
  input.value = "";
}

// Served over https, the page installs itself and needs no network afterwards.
function install() {
  if (!location.protocol.startsWith("http") || !isSecureContext || !navigator.serviceWorker) return;
  document.head.append(make("link", { rel: "manifest", href: "satline.webmanifest" }), make("link", { rel: "apple-touch-icon", href: "satline-icon.png" }));
  navigator.serviceWorker.register("satline-sw.js").catch(() => {});
}

restore();
listen();
showTab(all.settings.tab);
start();
describe();
install();
