// The looks that were made, with what was found.

let looks = { IP: [], SI: [] };
const lookOf = (code) => looks[state.system].find((l) => l.code === code);

function paintChecks() {
  // Before the library is there no look has a name.
  $("looked").hidden = state.checks.length === 0 || looks.IP.length === 0;
  $("looked").querySelector(".hint").hidden = !state.checks.some((c) => c.found);
  $("looked").querySelector("ul").replaceChildren(...state.checks.map(checked));
  document.querySelectorAll("#settle [data-look]").forEach((b) => b.setAttribute("aria-pressed", state.checks.some((c) => c.look === b.dataset.look && String(c.found) === b.dataset.found)));
}
function checked(check, i) {
  const look = lookOf(check.look), name = look ? look.name.text : String(check.look || "unnamed");
  const found = unused(check, i) || (check.found ? look.found.text : look.notFound.text);
  const button = make("button", { type: "button", "aria-label": "Remove: " + name }, "Remove");
  button.addEventListener("click", () => {
    state.checks.splice(i, 1);
    changed();
    say(`${sentence(name)}: removed.`);
    const others = $("looked").querySelectorAll("button");
    (others[Math.min(i, others.length - 1)] || $("verdict")).focus({ preventScroll: true });
  });
  return make("li", {}, make("span", {}, make("b", {}, joined(sentence(name))), make("span", { class: "why" }, joined(sentence(found)))), button);
}
// unused says of a check from a file why it is kept and not used.
function unused(check, i) {
  if (!lookOf(check.look) || typeof check.found !== "boolean") return "not known here: kept, and not used";
  return state.checks.findIndex((c) => c.look === check.look) < i ? "answered twice: remove one" : "";
}
