// Work ahead: while a number is in hand, the quick worker answers what the likely next keys will
// ask, so that such a key shows its verdict at once. An answer is kept by the whole request: it
// holds for nothing else.

let kept = new Map(), work = 0;
// workAhead asks one thing at a time, so that a key waits for one at most; a key ends it.
async function workAhead() {
  const e = document.activeElement, own = ++work, id = asked, before = kept;
  kept = new Map();
  if (!form || e?.inputMode !== "decimal" || !inVisit(e.dataset.path)) return;
  await null; // what the key itself asks comes first
  moment = Date.now();
  for (const text of nextTexts(e)) {
    if (own !== work || id !== asked || document.hidden) return;
    const request = visitWith(e, text);
    kept.set(request, before.get(request) || (await quick.call("assess", request)));
  }
}
// Requests that say how late it is take the time of the last work ahead, while that is no older
// than this, so that a key asks what was answered ahead of it.
const sameMoment = 10_000; // ms
let moment = 0;
const instant = () => (Date.now() - moment < sameMoment ? moment : Date.now());
// nextTexts are what a field holds after one key more.
function nextTexts({ value, selectionStart: from, selectionEnd: to, dataset }) {
  const before = value.slice(0, from), after = value.slice(to);
  const typed = [...("0123456789" + t("decimal"))].map((key) => before + key + after);
  return [(from < to ? before : before.slice(0, -1)) + after, ...typed, ...(fieldOf(dataset.path).signed ? [otherSign(value)] : [])];
}
function visitWith(e, text) {
  const now = state.values;
  state.values = { ...now };
  keepTyped(e, text);
  const request = visit("verdict");
  state.values = now;
  return request;
}
