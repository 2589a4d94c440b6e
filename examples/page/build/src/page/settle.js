// The one reading or look that would settle most, and its two answers.

let settled;
function settling(settle) {
  const section = $("settle"), focused = section.contains(document.activeElement), text = JSON.stringify(settle);
  if (text === settled) return;
  settled = text;
  section.hidden = !settle;
  const look = settle && lookOf(settle.look);
  $("h-settle").textContent = `The ${look ? "look" : "reading"} that would settle most`;
  section.querySelector("div").replaceChildren(...(settle ? [question(settle, look)] : []));
  paintChecks();
  // The button that was pressed is gone: its question is answered.
  if (focused) (section.querySelector("fieldset") || $("looked")).focus();
}
function question(settle, look) {
  const at = $(idOf("readings." + settle.field));
  return make("fieldset", { tabindex: "-1" },
    make("legend", {}, joined(sentence(settle.take.text))),
    ...(look ? [make("div", { class: "answers" }, answer(look, true), answer(look, false))] : []),
    ...(at ? [lead(at)] : []),
    make("ul", {}, ...(settle.outcomes || []).map((o) => plain(o.says.text))));
}
function answer(look, found) {
  const button = make("button", { type: "button", "data-look": look.code, "data-found": found }, joined(sentence(found ? look.found.text : look.notFound.text)));
  button.addEventListener("click", () => {
    state.checks = [...state.checks.filter((c) => c.look !== look.code), { look: look.code, found }];
    changed();
    say(`${sentence(look.name.text)}: ${found ? look.found.text : look.notFound.text}, noted.`);
  });
  return button;
}
// lead goes to the field of a reading, also where that is folded away.
function lead(field) {
  const button = make("button", { type: "button", class: "lead" }, "Enter it: " + document.querySelector(`label[for="${field.id}"]`).textContent.toLowerCase());
  button.addEventListener("click", () => {
    const folded = field.closest("details");
    if (folded) folded.open = true;
    field.focus();
  });
  return button;
}
