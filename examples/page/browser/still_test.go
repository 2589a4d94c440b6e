package browser

import (
	"fmt"
	"testing"
)

// What a thumb aims at in the loop stays where it is, whatever is typed and answered: each button
// and field, at every frame. The figures are invented.
func TestLoopStaysStill(t *testing.T) {
	t.Parallel()
	for _, size := range []struct{ width, height int64 }{{390, 844}, {360, 640}} {
		t.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(t *testing.T) {
			t.Parallel()
			b := open(t, fileURL(pageFile(t)), size.width, size.height)
			b.enter("equipment-refrigerant", "410a")
			b.press("#f-equipment-metering-1")
			b.press("#tab-loop")
			b.settled()
			b.do(watchMoved)
			b.enter("readings-suctionPressure", "105", "readings-liquidPressure", "365",
				"readings-suctionLine", "900") // out of its range
			b.enter("readings-suctionLine", "47", "readings-liquidLine", "90",
				"readings-outdoorDryBulb", "95", "readings-returnDryBulb", "75",
				"readings-returnWetBulb", "63", "readings-supplyDryBulb", "56")
			for round := range 3 {
				b.press("#log-now")
				b.enter("readings-suctionPressure", fmt.Sprint(103+round),
					"readings-liquidLine", fmt.Sprint(91-round), "move", "2")
				b.press("#move-added")
				b.settled()
			}
			// A danger comes and goes.
			b.enter("readings-liquidPressure", "610")
			b.enter("readings-liquidPressure", "365")
			for _, moved := range eval[[]string](b, `[...moved.values()]`) {
				t.Error(moved)
			}
		})
	}
}

// watchMoved keeps in moved what lay elsewhere than in the first frame, and where.
const watchMoved = `window.moved = new Map();
  const first = new Map();
  const aims = () => document.querySelectorAll(
    "#core input, #core .unit, #move input, #move .unit, #loop .actions button");
  const watch = () => {
    for (const e of aims()) {
      const { left, top, right, bottom } = e.getBoundingClientRect();
      const name = e.id || e.dataset.unit, at = [left, top, right, bottom].map(Math.round).join(" ");
      if (!first.has(name)) first.set(name, at);
      // A field makes room for its minus while it is typed into.
      const own = e.tagName === "INPUT" && e.matches(":focus");
      if (at !== first.get(name) && !own) moved.set(name, name + ": " + first.get(name) + " to " + at);
    }
    requestAnimationFrame(watch);
  };
  watch()`

// An answer that comes where another stood cannot be given by the tap that was meant for that one,
// and can be a moment later.
func TestAnswersWaitForTheThumb(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	_, file := lookedFor(t)
	b.openVisit(file)
	b.press("#tab-loop")
	got := eval[string](b, `(async () => {
	  const aimed = () => {
	    const e = document.querySelector("#next .answer"), r = e.getBoundingClientRect();
	    return e.contains(document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2));
	  };
	  const calm = () => Promise.all(document.getAnimations().map((a) => a.finished));
	  await calm();
	  const before = aimed();
	  const next = document.getElementById("next");
	  next.replaceChildren(...[...next.children].map((e) => e.cloneNode(true)));
	  const fresh = aimed();
	  await calm();
	  return [before, fresh, aimed()].join(" ");
	})()`)
	if got != "true false true" {
		t.Errorf("an answer can be given before it is new, as it comes, and later: %s", got)
	}
}

// A number is seen whole while it is typed; the key of its sign gives way to it.
func TestNumbersAreSeenWhole(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 360, 640)
	b.settings("es", "SI")
	for _, typed := range []struct{ path, number string }{
		{"readings-liquidPressure", ""}, {"readings-liquidPressure", "2650"},
		{"readings-suctionPressure", "-98,5"}, {"readings-suctionLine", "-10,5"},
	} {
		b.enter(typed.path, typed.number)
		got := eval[struct{ Past, Key float64 }](b, fmt.Sprintf(`(() => {
		  const e = document.getElementById("f-%s"), key = e.parentElement.querySelector(".sign");
		  return { past: e.scrollWidth - e.clientWidth, key: key.offsetWidth };
		})()`, typed.path))
		if got.Past > 0 || typed.number == "" && got.Key == 0 {
			t.Errorf("%q: %v px are out of sight, the key of its sign is %v px wide",
				typed.number, got.Past, got.Key)
		}
	}
}
