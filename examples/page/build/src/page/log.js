// The charge log: readings and moves over time.

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
  if (!units) return say("The library is still being loaded.");
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
  const mass = units && written(MOVE);
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
