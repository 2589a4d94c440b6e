// The library in two workers: the quick one follows the typing, the other has the whole
// assessment, one at a time, so that a key never waits for it.

function engine() {
  const worker = new Worker(URL.createObjectURL(new Blob([$("worker").textContent], { type: "text/javascript" })));
  const waiting = new Map();
  let next = 0;
  worker.onmessage = ({ data }) => {
    if (data.failed) return fail(data.failed);
    if (data.compiled) return thorough.boot({ compiled: data.compiled });
    waiting.get(data.id)(data);
    waiting.delete(data.id);
  };
  worker.onerror = (e) => fail(e.message);
  return {
    boot: (first) => worker.postMessage(first),
    call: (name, ...args) =>
      new Promise((done) => {
        waiting.set(++next, ({ text, took, at }) => done({ ...JSON.parse(text), took, at: at - performance.timeOrigin }));
        worker.postMessage({ id: next, name, args });
      }),
  };
}
let quick, thorough;
function bytesOf(base64) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(base64);
  const raw = atob(base64), bytes = new Uint8Array(raw.length);
  for (let i = 0; i < raw.length; i++) bytes[i] = raw.charCodeAt(i);
  return bytes;
}
function start() {
  const packed = bytesOf($("module").textContent.trim());
  quick = engine();
  thorough = engine();
  quick.boot({ packed });
}
function fail(why) {
  $("bar").dataset.outcome = "high";
  $("outcome").textContent = t("start.failed") === "start.failed" ? "This browser cannot run the library" : t("start.failed");
  $("headline").textContent = why;
}

// ask has the verdict at once, and the whole after a pause. Its attributes tell the benchmark when
// the verdict was ready and shown, and whether it was answered ahead.
let asked = 0, answered = 0, wholeTimer = 0, busy = false, again = false, first = true;
async function ask(pause) {
  if (!form) return;
  const id = ++asked, root = document.documentElement, request = visit("verdict"), ahead = kept.get(request);
  clearTimeout(wholeTimer);
  wholeTimer = setTimeout(askWhole, pause);
  const ready = performance.now(), answer = ahead || (await quick.call("assess", request));
  if (id < answered) return;
  if (id > answered) renderLoop(answer, false); // else the whole came first
  answered = id;
  Object.assign(root.dataset, { ahead: !!ahead, ready: ahead ? ready : answer.at, library: answer.took, shown: performance.now() });
  started();
  if (id === asked) workAhead();
  if (id === asked && root.dataset.answered !== "whole") root.dataset.answered = "verdict";
}
async function askWhole() {
  again = busy;
  if (busy) return;
  busy = true;
  const id = asked, answer = await thorough.call("assess", visit());
  busy = false;
  if (again) askWhole();
  if (id < answered) return;
  answered = id;
  shown = answer.assessment;
  whole = answer;
  renderLoop(answer, true);
  started();
  renderKeep();
  document.documentElement.dataset.answered = id === asked ? "whole" : "";
}
function started() {
  if (first) document.documentElement.dataset.first = performance.now().toFixed(1);
  first = false;
}
let whole = null;
// changed answers what was done, and keeps it while the library works. A thumb takes its time from
// key to key: what is drawn between two of them would keep the next one waiting for its frame.
const betweenKeys = 400; // ms
function changed(typing) {
  delete document.documentElement.dataset.answered;
  ask(typing ? betweenKeys : 0);
  save();
}
async function describe() {
  form = await quick.call("form", all.settings.language, system());
  document.documentElement.lang = all.settings.language;
  fieldsByPath.clear();
  const groups = [...form.groups, ...form.tasks, ...form.tasks.flatMap((k) => k.parts || [])];
  for (const g of groups) for (const f of [...(g.fields || []), ...(g.lists || []).flatMap((l) => [l, ...(l.lists || [])]).flatMap((l) => l.fields)]) fieldsByPath.set(f.path, f);
  fieldsByPath.set(form.move.path, form.move);
  build();
  changed();
}
const fieldsByPath = new Map();
