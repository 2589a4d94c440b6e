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
}
function ask(event) {
  if (!units) return;
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
    if (units) return;
    $("fluids").append(...m.fluids.map((f) => make("option", { value: f.designation }, f.note)));
    looks = m.looks;
    units = m.units;
    paint();
    ask();
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
