package browser

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

const demo = "../../visit/demo/mountain-library.json"

// A key whose verdict was worked out ahead shows what the library answers when it is asked.
func TestAheadIsTheSame(t *testing.T) {
	t.Parallel()
	b := watched(t)
	for _, path := range []string{"readings-suctionPressure", "readings-suctionLine"} {
		for _, c := range []struct{ from, key, to string }{
			{"5", "8", "58"}, {"58", ".", "58."}, {"58", kb.Backspace, "5"}, {"5", kb.Backspace, ""},
			{"98", "9", "989"},
		} {
			b.ahead(path, c.from, c.key)
			ahead := eval[string](b, `told.all`)
			b.do(`document.activeElement.blur()`)
			b.input(path, "77")
			b.input(path, c.to)
			if b.wasAhead() {
				t.Fatalf("%s %q: the library was not asked", path, c.to)
			}
			if asked := eval[string](b, `told.all`); ahead != asked {
				t.Errorf("%s %q: ahead\n%s\nasked\n%s", path, c.to, ahead, asked)
			}
		}
	}
}

// A change elsewhere lets go of what was worked out ahead.
func TestAheadOfTheWholeVisit(t *testing.T) {
	t.Parallel()
	b := watched(t)
	const path = "readings-suctionLine"
	v := visitOf(t, demo)
	v.Scope = satline.VerdictOnly
	v.Readings.SuctionLine = satline.Measured(quantity.Fahrenheit(70))
	shows := func() {
		t.Helper()
		want, err := satline.Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		b.wait(want.Headline.Text, fmt.Sprintf(`told.headline === %q`, want.Headline.Text))
	}
	b.ahead(path, "7", "0")
	shows()
	b.input(path, "7")
	time.Sleep(100 * time.Millisecond) // 70 is worked out ahead meanwhile
	b.do(set("readings-suctionPressure", "120") + set(path, "70"))
	v.Readings.SuctionPressure = satline.Measured(quantity.PSIG(120))
	shows()
	if b.wasAhead() {
		t.Error("what was worked out for another pressure was kept")
	}
}

// ahead presses a key behind a text in a field, until its verdict was there ahead of it.
func (b tab) ahead(path, from, key string) {
	b.Helper()
	b.do(fmt.Sprintf(`document.getElementById("f-%s").focus()`, path))
	for pause := range 40 {
		b.input(path, from)
		time.Sleep(time.Duration(pause) * 10 * time.Millisecond)
		b.do(unshown)
		b.run(chromedp.KeyEvent(key))
		b.wait("the verdict", `document.documentElement.dataset.shown`)
		if b.wasAhead() {
			return
		}
	}
	b.Fatalf("no verdict was worked out ahead of %q after %q", key, from)
}

func (b tab) wasAhead() bool {
	b.Helper()
	return eval[bool](b, `document.documentElement.dataset.ahead === "true"`)
}

// input puts a text into a field at once, and waits for the verdict.
func (b tab) input(path, text string) {
	b.Helper()
	b.do(set(path, text))
	b.wait("the verdict", `document.documentElement.dataset.shown`)
}

const unshown = `delete document.documentElement.dataset.shown;`

func set(path, text string) string {
	return unshown + fmt.Sprintf(`{ const e = document.getElementById("f-%s"); e.value = %q;
	  e.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertText" })) }`,
		path, text)
}

// watched opens the example, and keeps in told what the loop shows of each verdict before the whole
// answer follows it.
func watched(t *testing.T) tab {
	t.Helper()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(demo)
	b.press("#tab-loop")
	b.do(`window.told = {};
	  const seen = (id) => { const e = document.getElementById(id); return e.hidden ? "" : e.outerHTML };
	  new MutationObserver(() => {
	    if (document.documentElement.dataset.shown) window.told = {
	      all: ["bar", "risk", "figures", "band"].map(seen).join("\n"),
	      headline: document.getElementById("headline").textContent.replaceAll("\u00a0", " "),
	    };
	  }).observe(document.documentElement, { attributeFilter: ["data-shown"] })`)
	return b
}
