package browser

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
)

// A person taps, types and scrolls, and everything is counted.
type person struct {
	tab
	taps, keys, pixels int
}

// tap presses what can be seen, after scrolling to it where it cannot.
func (p *person) tap(selector string) {
	p.Helper()
	at := eval[struct {
		X, Y, Scrolled float64
		Hit            bool
	}](p.tab, fmt.Sprintf(`(() => {
	  const e = document.querySelector(%q), before = scrollY, high = 0;
	  const low = innerHeight - document.getElementById("tabs").offsetHeight;
	  const own = e.labels && e.type === "radio" ? e.labels[0] : e;
	  const r0 = own.getBoundingClientRect();
	  if (r0.top < high || r0.bottom > low)
	    scrollBy({ top: r0.top + r0.height / 2 - (high + low) / 2, behavior: "instant" });
	  const r = own.getBoundingClientRect(), x = r.left + r.width / 2, y = r.top + r.height / 2;
	  const hit = document.elementFromPoint(x, y);
	  const met = !!hit && (own.contains(hit) || hit.contains(own));
	  return { x, y, scrolled: Math.abs(scrollY - before), hit: met };
	})()`, selector))
	if !at.Hit {
		p.Fatalf("%s lies under something else", selector)
	}
	p.taps++
	p.pixels += int(at.Scrolled)
	p.run(chromedp.MouseClickXY(at.X, at.Y))
}

func (p *person) write(text string) {
	p.Helper()
	p.keys += len([]rune(text))
	p.run(chromedp.KeyEvent(text))
}

// From an empty page to a verdict with eight readings, then ten rounds of a charging loop, on
// the screen of a phone. The figures of the visit are invented.
func TestPathOfAVisit(t *testing.T) {
	t.Parallel()
	p := &person{tab: open(t, fileURL(pageFile(t)), 390, 844)}
	p.tap("#f-equipment-refrigerant")
	p.write("410a\r")
	p.tap("#f-equipment-metering-1")
	p.write("\r")
	// Capacity and elevation are passed over, and what stands open of the label.
	active := func() string { return eval[string](p.tab, `document.activeElement.id`) }
	for i := 0; active() != "f-readings-suctionPressure"; i++ {
		if i > 12 {
			t.Fatalf("Enter leads to %s", active())
		}
		p.write("\r")
	}
	for _, reading := range []string{"105", "365", "47", "90", "95", "75", "63", "56"} {
		p.write(reading + "\r")
	}
	p.settled()
	if got := eval[string](p.tab, `document.activeElement.id`); got != "log-now" {
		t.Errorf("after the last reading Enter leads to %s", got)
	}
	verdict := p.text("#outcome")
	t.Logf("to the verdict %q: %d taps, %d keys, %d px scrolled", verdict, p.taps, p.keys, p.pixels)
	p.fits("eight readings")
	first := *p
	p.do(watchSaid)
	const moves = `JSON.parse(localStorage["satline.machines/1"]).machines[1].moves.length`
	for round := range 10 {
		p.tap("#f-readings-suctionPressure")
		p.write(fmt.Sprint(106 + round))
		p.tap("#f-readings-suctionLine")
		p.write(fmt.Sprint(48 + round%3))
		p.tap("#log-now")
		p.tap("#f-move")
		p.write("2")
		p.tap("#move-added")
		// What was typed is checked first; until then the answer before counts as settled.
		p.wait("the move", fmt.Sprintf(`%s === %d`, moves, round+1))
		p.settled()
		p.fits(fmt.Sprint("round ", round))
	}
	if said := eval[int](p.tab, `said`); said < 20 {
		t.Errorf("%d of 20 actions were confirmed", said)
	}
	if under := eval[string](p.tab, `[...under].join(" ")`); under != "" {
		t.Errorf("what the page says lies over %s", under)
	}
	if got := eval[int](p.tab, moves); got != 10 {
		t.Errorf("%d moves are logged of 10", got)
	}
	t.Logf("ten rounds: %d taps, %d keys, %d px scrolled",
		p.taps-first.taps, p.keys-first.keys, p.pixels-first.pixels)
	if p.pixels-first.pixels > 0 {
		t.Errorf("the loop scrolls by %d px", p.pixels-first.pixels)
	}
	p.shoot("loop-ten-rounds")
}

// watchSaid keeps in under what could be tapped where the page says what was done, and in said how
// often it said so.
const watchSaid = `window.under = new Set(); window.said = 0;
  const toast = document.getElementById("said");
  new MutationObserver((changes) => {
    window.said += changes.filter((c) => c.addedNodes.length).length; // some come at once
    if (!toast.textContent) return;
    const over = toast.getBoundingClientRect();
    for (const e of document.querySelectorAll("button, input, select")) {
      const r = e.getBoundingClientRect();
      if (e.checkVisibility() && r.left < over.right && over.left < r.right &&
        r.top < over.bottom && over.top < r.bottom) under.add(e.id);
    }
  }).observe(toast, { childList: true })`

// fits holds that the whole loop is on the screen, and nothing wider than it.
func (b tab) fits(state string) {
	b.Helper()
	const past = `document.documentElement.scrollHeight - document.documentElement.clientHeight`
	if over := eval[int](b, past); over > 0 {
		b.Errorf("%s: the loop is %d px higher than the screen", state, over)
	}
	b.narrow(state)
}

func (b tab) narrow(state string) {
	b.Helper()
	const past = `document.documentElement.scrollWidth - document.documentElement.clientWidth`
	if over := eval[int](b, past); over > 0 {
		b.Errorf("%s: the page is %d px wider than the screen", state, over)
	}
}
