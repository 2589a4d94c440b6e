package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"github.com/satline/satline"
)

var pictures = flag.String("pictures", "", "directory to write pictures of the page to")

// The page is built once for all tests.
var built = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "satline-page-test")
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "satline.html")
	return file, build(file, io.Discard)
})

func TestMain(m *testing.M) {
	code := m.Run()
	if !testing.Short() {
		if file, err := built(); err == nil {
			os.RemoveAll(filepath.Dir(file))
		}
	}
	os.Exit(code)
}

func page(t testing.TB) string {
	t.Helper()
	if testing.Short() {
		t.Skip("SKIPPED in short mode: building the page takes a while")
	}
	file, err := built()
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// The whole page, module and all, is one file; the module is below 6 MB
// compressed, and the policy admits no connection.
func TestPageStandsAlone(t *testing.T) {
	text, err := os.ReadFile(page(t))
	if err != nil {
		t.Fatal(err)
	}
	html := string(text)
	_, after, ok := strings.Cut(html, `id="module">`)
	module, _, closed := strings.Cut(after, "<")
	if !ok || !closed {
		t.Fatal("no module in the page")
	}
	if size := len(module) * 3 / 4; size > 6_000_000 {
		t.Errorf("the module is %d bytes compressed, want at most 6000000", size)
	}
	if !strings.Contains(html, "default-src 'none'") || strings.Contains(html, "connect-src") ||
		strings.Contains(html, "unsafe-inline") {
		t.Error("the policy admits too much")
	}
	for _, never := range []string{"http://", "https://", "fetch(", "XMLHttpRequest", "WebSocket", "sendBeacon", "EventSource"} {
		for _, part := range sources(t) {
			source, err := src.ReadFile(part)
			if err != nil {
				t.Fatal(err)
			}
			if i := strings.Index(strings.ReplaceAll(string(source), "http://www.w3.org/2000/svg", ""), never); i >= 0 {
				t.Errorf("%s holds %q", part, never)
			}
		}
	}
}

// sources are the files that the page is made of, each of them in it.
func sources(t *testing.T) []string {
	t.Helper()
	files, err := fs.Glob(src, "src/*.*")
	if err != nil {
		t.Fatal(err)
	}
	parts, err := fs.Glob(src, "src/page/*.js")
	if err != nil {
		t.Fatal(err)
	}
	if len(parts) != len(scripts) {
		t.Errorf("%d parts of the script, %d in the page", len(parts), len(scripts))
	}
	return append(files, parts...)
}

var screens = []struct {
	name          string
	width, height int
	phone         bool
}{{"phone", 360, 740, true}, {"desktop", 1280, 800, false}}

func TestInBrowser(t *testing.T) {
	file := page(t)
	b := startBrowser(t)
	for _, s := range screens {
		t.Run(s.name, func(t *testing.T) {
			b.t = t
			b.open(file, s.width, s.height, s.phone)
			b.eval(`localStorage.clear()`)
			b.navigate(file)
			if s.name == screens[0].name {
				shoot(b, s.name+"-empty", false)
			}
			t.Logf(
				"first answer %s ms after the start of loading",
				b.text(`document.documentElement.dataset.first`),
			)
			layout(t, b, s.width)
			names(t, b)
			enterVisit(t, b)
			shoot(b, s.name+"-full", true)
			shoot(b, s.name, false)
			layout(t, b, s.width)
			names(t, b)
			contrast(t, b)
			if s.phone {
				largeText(t, b, s.width)
				wrongReading(t, b, s.width)
				impossibleReading(t, b)
				danger(t, b)
				typedUnits(t, b)
			}
			chargeLog(t, b)
			shoot(b, s.name+"-log", true)
			layout(t, b, s.width)
			if !s.phone {
				keyboard(t, b)
			}
			enterKey(t, b)
			wrongLog(t, b)
			kept(t, b, file)
			printed(t, b, s.name)
			opened(t, b)
			lookedAt(t, b, file, s.name, s.width)
			wrongFiles(t, b)
			if asked := b.requests(); len(asked) > 0 {
				t.Errorf("requests left the page: %q", asked)
			}
		})
	}
}

func shoot(b *browser, name string, full bool) {
	if *pictures != "" {
		b.picture(filepath.Join(*pictures, name+".png"), full)
	}
}

// layout holds that nothing is wider than the screen and that everything to
// touch is large enough for a gloved finger.
func layout(t *testing.T, b *browser, width int) {
	t.Helper()
	if over := decode[int](b, b.eval(`document.documentElement.scrollWidth`)) - width; over > 0 {
		t.Errorf("the page is %d px wider than the screen", over)
	}
	small := decode[[]string](
		b,
		b.eval(
			`[...document.querySelectorAll("button, input, select, textarea, summary, a")].flatMap((e) => {
	  const shown = e.closest("label") && (e.type === "radio" || e.type === "checkbox") ? e.closest("label") : e;
	  const r = shown.getBoundingClientRect();
	  if (!e.checkVisibility() || e.className === "skip" || e.type === "file") return [];
	  return r.height < 48 || r.width < 48 ? [(e.id || e.textContent || e.value) + " " + Math.round(r.width) + "x" + Math.round(r.height)] : [];
	})`,
		),
	)
	if len(small) > 0 {
		t.Errorf("too small to touch with a glove: %q", small)
	}
}

// names holds that a screen reader has a name for everything to operate.
func names(t *testing.T, b *browser) {
	t.Helper()
	tree := decode[struct {
		Nodes []struct {
			Ignored    bool
			Role, Name struct{ Value any }
		}
	}](b, b.call("Accessibility.getFullAXTree", nil))
	counts := map[string]int{}
	for _, n := range tree.Nodes {
		role, _ := n.Role.Value.(string)
		name, _ := n.Name.Value.(string)
		counts[role]++
		switch role {
		case "button",
			"textbox",
			"combobox",
			"checkbox",
			"radio",
			"link",
			"image",
			"searchbox",
			"radiogroup":
			if !n.Ignored && strings.TrimSpace(name) == "" {
				t.Errorf("a %s has no name", role)
			}
		}
	}
	if counts["textbox"] < 15 || counts["checkbox"] < 10 || counts["heading"] < 5 ||
		counts["status"] < 1 {
		t.Errorf("too little of the page is in the accessibility tree: %v", counts)
	}
}

// contrast holds that every text stands out by 7 to 1 from what is behind it, in
// any state (WCAG 2.2, success criterion 1.4.6), for it is read in the sun.
func contrast(t *testing.T, b *browser) {
	t.Helper()
	poor := decode[[]string](b, b.eval(`(() => {
	  document.querySelectorAll("details").forEach((d) => d.open = true);
	  const rgb = (c) => (c.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
	  const light = (c) => { const [r, g, b] = rgb(c).map((v) => v / 255).map((v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
	  const behind = (e) => { for (let at = e; at; at = at.parentElement) { const c = getComputedStyle(at).backgroundColor, p = rgb(c); if (p.length < 4 || p[3] > 0) return c; } return "rgb(255,255,255)"; };
	  const found = new Set();
	  let seen = 0;
	  for (const e of document.querySelectorAll("body *")) {
	    const own = [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim()) || e.matches("input[data-kind], textarea");
	    if (!own || !e.checkVisibility() || e.matches("script, option, title")) continue;
	    seen++;
	    const style = getComputedStyle(e), ink = light(e instanceof SVGElement ? style.fill : style.color), paper = light(e instanceof SVGElement ? "rgb(255,255,255)" : behind(e));
	    const ratio = (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05);
	    if (ratio < 7) found.add((e.textContent || e.id).trim().slice(0, 30) + " " + ratio.toFixed(2));
	  }
	  if (seen < 80) found.add("only " + seen + " texts were looked at");
	  document.querySelectorAll(".evidence").forEach((d) => d.open = false);
	  return [...found];
	})()`))
	if len(poor) > 0 {
		t.Errorf("too faint in the sun: %q", poor)
	}
}

func enterVisit(t *testing.T, b *browser) {
	t.Helper()
	b.write("f-refrigerant", "r410a")
	b.press(`[name=metering][value="fixed restrictor"]`)
	b.wait(
		"what to read first",
		`document.getElementById("bar-line").textContent.startsWith("Not judged")`,
	)
	b.fill(map[string]string{
		"f-site-elevation":           "6000",
		"f-readings-suctionPressure": "104", "f-readings-liquidPressure": "285",
		"f-readings-suctionLine": "70", "f-readings-liquidLine": "91",
		"f-readings-outdoorDryBulb": "82", "f-readings-returnDryBulb": "75", "f-readings-returnWetBulb": "63",
		"f-readings-supplyDryBulb": "61", "f-readings-supplyWetBulb": "57",
	})
	b.wait("dose and diagnosis", `document.documentElement.dataset.answered === "whole"`)
	if got := b.text(`document.getElementById("outcome").textContent`); got != "Charge low" {
		t.Errorf("the verdict is %q", got)
	}
	if got := b.text(`document.getElementById("headline").textContent.replaceAll("\u00a0", " ")`); !strings.Contains(
		got,
		"refrigerant",
	) {
		t.Errorf("the headline is %q", got)
	}
	for _, id := range []string{"band", "cycle", "airchart", "next", "values", "judged", "cautions"} {
		if string(
			b.eval(fmt.Sprintf(`document.getElementById(%q).checkVisibility()`, id)),
		) != "true" {
			t.Errorf("%s is not shown", id)
		}
	}
	b.wait(
		"the announcement to a screen reader",
		`document.getElementById("announce").textContent.startsWith("Charge low. ")`,
	)
	t.Logf(
		"a later answer: %s ms from the key to the page, %s ms of it in the library, %s ms to show it; with dose and diagnosis %s ms in the library",
		b.text(
			`document.documentElement.dataset.latency`,
		),
		b.text(`document.documentElement.dataset.verdict`),
		b.text(`document.documentElement.dataset.render`),
		b.text(`document.documentElement.dataset.whole`),
	)
}

// largeText: who has set letters of nearly twice the size has the page in one
// column, and nothing beside the screen.
func largeText(t *testing.T, b *browser, width int) {
	t.Helper()
	b.eval(`document.documentElement.style.fontSize = "32px"`)
	layout(t, b, width)
	shoot(b, "phone-large-text", true)
	b.eval(`document.documentElement.style.fontSize = ""`)
}

// wrongReading: what is wrong is marked at its field, in words, and the rest is
// still assessed.
func wrongReading(t *testing.T, b *browser, width int) {
	t.Helper()
	b.write("f-readings-liquidLine", "92 psi")
	b.eval(`document.activeElement.blur()`)
	b.wait(
		"the mark of a wrong reading",
		`document.getElementById("f-readings-liquidLine").getAttribute("aria-invalid") === "true"`,
	)
	if got := b.text(`document.getElementById("e-f-readings-liquidLine").textContent`); !strings.Contains(
		got,
		"°F",
	) {
		t.Errorf("the field says %q", got)
	}
	b.wait(
		"the fault told to a screen reader",
		`document.getElementById("announce").textContent.includes("Liquid line: ")`,
	)
	contrast(t, b)
	layout(t, b, width)
	if string(
		b.eval(
			`document.getElementById("f-readings-liquidLine").getBoundingClientRect().top === document.getElementById("f-readings-suctionLine").getBoundingClientRect().top`,
		),
	) != "true" {
		t.Error("the words under one field push its neighbour out of line")
	}
	if got := b.text(`document.getElementById("outcome").textContent`); got != "Charge low" {
		t.Errorf("with a wrong reading beside it the verdict is %q", got)
	}
	b.write("f-readings-liquidLine", "91")
	b.wait(
		"the mark gone",
		`!document.getElementById("f-readings-liquidLine").hasAttribute("aria-invalid")`,
	)
}

// impossibleReading: a reading that is well written and cannot be so is said so
// at its field.
func impossibleReading(t *testing.T, b *browser) {
	t.Helper()
	b.write("f-readings-returnWetBulb", "85")
	b.eval(`document.activeElement.blur()`)
	b.wait(
		"the doubt at the field",
		`document.getElementById("e-f-readings-returnWetBulb").textContent.includes("above return dry bulb")`,
	)
	shoot(b, "phone-impossible", false)
	b.write("f-readings-returnWetBulb", "63")
	b.eval(`document.activeElement.blur()`)
	b.wait(
		"the doubt gone",
		`document.getElementById("e-f-readings-returnWetBulb").textContent === ""`,
	)
	b.wait("the diagnosis again", `document.documentElement.dataset.answered === "whole"`)
}

// danger: what ruins a compressor is said in the bar, whatever the charge is.
func danger(t *testing.T, b *browser) {
	t.Helper()
	b.write("f-readings-suctionLine", "33")
	b.wait(
		"the danger",
		`document.getElementById("bar-danger").checkVisibility() && document.getElementById("risks").checkVisibility()`,
	)
	b.wait(
		"the danger told to a screen reader",
		`document.getElementById("announce").textContent.includes("Danger to the compressor.")`,
	)
	contrast(t, b)
	shoot(b, "phone-danger", false)
	b.write("f-readings-suctionLine", "70")
	b.wait(
		"the danger gone",
		`document.getElementById("bar-danger").hidden && document.documentElement.dataset.answered === "whole"`,
	)
}

// typedUnits: a unit may be typed, or changed by its button.
func typedUnits(t *testing.T, b *browser) {
	t.Helper()
	before := b.text(`document.getElementById("headline").textContent.replaceAll("\u00a0", " ")`)
	b.write("f-readings-suctionLine", "21.1111111 C")
	b.wait("the diagnosis of it", `document.documentElement.dataset.answered === "whole"`)
	if got := b.text(`document.getElementById("headline").textContent.replaceAll("\u00a0", " ")`); got != before {
		t.Errorf("70 °F and 21.1 °C: %q and %q", before, got)
	}
	b.write("f-readings-suctionLine", "70")
	b.press(`[data-unit="readings.suctionLine"]`)
	b.wait(
		"the unit changed",
		`document.querySelector('[data-unit="readings.suctionLine"]').textContent === "°C"`,
	)
	b.press(`[data-unit="readings.suctionLine"]`)
	b.wait(
		"the unit back",
		`document.querySelector('[data-unit="readings.suctionLine"]').textContent === "°F"`,
	)
	b.press(`[name=units][value=SI]`)
	b.wait(
		"metric values",
		`document.getElementById("values").textContent.replaceAll("\u00a0", " ").includes(" K ")`,
	)
	b.press(`[name=units][value=IP]`)
	b.wait(
		"the first verdict again",
		fmt.Sprintf(
			`document.getElementById("headline").textContent.replaceAll("\u00a0", " ") === %q`,
			before,
		),
	)
}

func chargeLog(t *testing.T, b *browser) {
	t.Helper()
	b.press("#log-now")
	b.write("f-move", "3")
	b.press("#move-added")
	if got := b.text(`document.getElementById("f-move").value`); got != "" {
		t.Errorf("after a move is logged its field holds %q", got)
	}
	for i, line := range []string{"64", "60", "57.5", "56"} {
		b.write("f-readings-suctionLine", line)
		b.eval(`window.setNow = Date.now; Date.now = () => setNow() + ` + fmt.Sprint(180000*(i+1)))
		b.press("#log-now")
		b.eval(`Date.now = setNow`)
	}
	b.wait(
		"the trend",
		`document.querySelectorAll("#trend .dot").length === 5 && document.querySelectorAll("#trend .move").length === 1`,
	)
	b.press("#log-undo")
	b.wait("one entry less", `document.querySelectorAll("#log-list tbody tr").length === 5`)
}

// wrongLog: readings that are marked are not logged, and a move that cannot be
// read is said not to be used.
func wrongLog(t *testing.T, b *browser) {
	t.Helper()
	entries := func() int { return decode[int](b, b.eval(`document.querySelectorAll("#log-list tbody tr").length`)) }
	before := entries()
	b.write("f-readings-liquidLine", "92 psi")
	b.eval(`document.activeElement.blur()`)
	b.wait(
		"the mark of a wrong reading",
		`document.getElementById("f-readings-liquidLine").hasAttribute("aria-invalid")`,
	)
	b.eval(`document.getElementById("log-now").click()`)
	if got := b.text(`document.activeElement.id`); got != "f-readings-liquidLine" ||
		entries() != before {
		t.Errorf("%d entries after %d, and the focus is at %s", entries(), before, got)
	}
	b.write("f-readings-liquidLine", "91")
	b.write("f-move", "3 spoons")
	b.press("#move-added")
	b.wait(
		"the word on a move that cannot be read",
		`document.getElementById("e-log").textContent.includes("spoons")`,
	)
	b.press("#log-undo")
	b.wait("the word gone", `document.getElementById("e-log").textContent === ""`)
	b.wait("the diagnosis again", `document.documentElement.dataset.answered === "whole"`)
}

// keyboard: tabbing reaches every control in the order of the page.
func keyboard(t *testing.T, b *browser) {
	t.Helper()
	b.call(
		"Emulation.setEmulatedMedia",
		map[string]any{
			"features": []any{map[string]any{"name": "prefers-reduced-motion", "value": "reduce"}},
		},
	)
	b.wait("no answer outstanding", `document.documentElement.dataset.answered === "whole"`)
	b.eval(
		`(() => { document.querySelectorAll("details").forEach((d) => d.open = true); document.querySelector(".skip").focus(); window.last = document.activeElement; })()`,
	)
	seen := map[string]bool{"skip": true}
	left := false
	for range 200 {
		b.key("Tab", 9)
		at := decode[struct {
			ID      string
			Back    bool
			Covered bool
		}](b, b.eval(`(() => {
		  const e = document.activeElement, back = !!(last.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_PRECEDING);
		  window.last = e;
		  const r = (e.closest("label") || e).getBoundingClientRect(), bar = document.getElementById("bar");
		  return { id: e.id || e.dataset.unit || e.name || e.tagName + e.textContent.slice(0, 60), back, covered: !bar.contains(e) && (r.bottom <= bar.getBoundingClientRect().bottom || r.top >= innerHeight) };
		})()`))
		if left = strings.HasPrefix(at.ID, "BODY") || at.ID == "skip"; left {
			break
		}
		if at.Back {
			t.Errorf("the focus goes back at %s", at.ID)
		}
		if at.Covered {
			t.Errorf("%s has the focus and cannot be seen", at.ID)
		}
		seen[at.ID] = true
	}
	if !left {
		t.Errorf("200 presses of Tab do not lead out of the page; they reach %d places", len(seen))
	}
	for _, id := range []string{"skip", "f-refrigerant", "metering", "units", "f-readings-suctionPressure", "readings.suctionPressure", "c-coilWet", "log-now", "f-move", "move-added", "f-notes", "print", "export", "import", "example", "clear"} {
		if !seen[id] {
			t.Errorf("the Tab key does not reach %s; it reaches %d places", id, len(seen))
		}
	}
}

// enterKey: the Enter key, on a phone "next", leads from field to field and past
// what is folded.
func enterKey(t *testing.T, b *browser) {
	t.Helper()
	b.eval(
		`document.querySelectorAll("details").forEach((d) => d.open = false); document.getElementById("f-title").focus()`,
	)
	for _, want := range []string{
		"f-refrigerant", "f-site-elevation", "f-readings-suctionPressure", "f-readings-liquidPressure", "f-readings-suctionLine", "f-readings-liquidLine", "f-readings-dischargeLine",
		"f-readings-outdoorDryBulb", "f-readings-returnDryBulb", "f-readings-returnWetBulb", "f-readings-supplyDryBulb", "f-readings-supplyWetBulb", "f-conditions-running", "f-move",
	} {
		b.key("Enter", 13)
		if got := b.text(`document.activeElement.id`); got != want {
			t.Fatalf("Enter leads to %q, want %s", got, want)
		}
	}
}

// kept: the visit is there again after the page was closed.
func kept(t *testing.T, b *browser, file string) {
	t.Helper()
	b.write("f-notes", "Invented note")
	before := b.text(`document.getElementById("headline").textContent.replaceAll("\u00a0", " ")`)
	b.navigate(file)
	if got := b.text(`document.getElementById("f-readings-returnWetBulb").value + "/" + document.getElementById("f-notes").value`); got != "63/Invented note" {
		t.Errorf("after opening it again: %q", got)
	}
	if got := b.text(`document.getElementById("headline").textContent.replaceAll("\u00a0", " ")`); got != before {
		t.Errorf("after opening it again: %q, before: %q", got, before)
	}
	b.eval(
		`window.saved = []; URL.createObjectURL = (blob) => { window.saved.push(blob.text()); return "blob:x"; }; HTMLAnchorElement.prototype.click = () => {}; document.getElementById("export").click()`,
	)
	var doc struct {
		Visit      json.RawMessage
		Assessment struct{ Schema string }
	}
	if err := json.Unmarshal([]byte(b.text(`Promise.all(window.saved).then((all) => all[0])`)), &doc); err != nil ||
		doc.Assessment.Schema == "" ||
		len(doc.Visit) == 0 {
		t.Errorf("the file saved: %v %+v", err, doc)
	}
}

// catchFile takes what the page saves, and lets it replace what is entered.
const catchFile = `URL.createObjectURL = (blob) => { window.saved = blob.text(); return "blob:x"; }; HTMLAnchorElement.prototype.click = () => {}; window.confirm = () => true`

// opened: a visit from a file is saved again as it was, also what has no field on
// the page.
func opened(t *testing.T, b *browser) {
	t.Helper()
	files, err := filepath.Glob("../../visit/demo/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("%v %v", files, err)
	}
	b.eval(catchFile)
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b.openFile(string(text))
		b.wait("the visit of "+file, `document.documentElement.dataset.answered === "whole"`)
		want, err := satline.DecodeVisit(text)
		if err != nil {
			t.Fatal(err)
		}
		b.eval(`document.getElementById("export").click()`)
		var doc struct{ Visit json.RawMessage }
		if err := json.Unmarshal([]byte(b.text(`window.saved`)), &doc); err != nil {
			t.Fatal(err)
		}
		got, err := satline.DecodeVisit(doc.Visit)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, got, cmp.Transformer("seconds", func(d time.Duration) int { return int(d.Seconds()) })); diff != "" {
			t.Errorf("%s, opened and saved again:\n%s", file, diff)
		}
	}
}

// openFile gives the page a file as its own dialog would.
func (b *browser) openFile(text string) {
	b.t.Helper()
	quoted, err := json.Marshal(text)
	if err != nil {
		b.t.Fatal(err)
	}
	b.eval(fmt.Sprintf(`(() => {
	  delete document.documentElement.dataset.answered;
	  const d = new DataTransfer(), input = document.getElementById("file");
	  d.items.add(new File([%s], "visit.json"));
	  input.files = d.files;
	  document.getElementById("saved").textContent = "";
	  input.dispatchEvent(new Event("change"));
	})()`, quoted))
}

// wrongFiles: what is no visit, or is not wanted after all, leaves the one that
// is entered as it was, and what a file has wrong is said.
func wrongFiles(t *testing.T, b *browser) {
	t.Helper()
	held := `JSON.stringify([...document.querySelectorAll("[data-kind]")].map((e) => e.value))`
	before := b.text(held)
	const good = `{"equipment": {"refrigerant": "R-22", "metering": "TXV"}, "readings": {"liquidLine": 92}}`
	for _, text := range []string{`5`, `null`, `[]`, `{"colour": 1}`, `{"equipment": {}, "log": 7}`, `{"equipment": {}, "checks": 7}`, `not JSON`} {
		b.openFile(text)
		b.wait(
			"the word on "+text,
			`document.getElementById("saved").textContent.startsWith("That file is not a visit")`,
		)
		if got := b.text(held); got != before {
			t.Errorf("%s replaced what was entered: %s", text, got)
		}
	}
	b.eval(`window.confirm = () => false`)
	b.openFile(good)
	b.eval(`new Promise((done) => setTimeout(done, 50))`)
	if got := b.text(held); got != before {
		t.Errorf("a file replaced what was entered, unasked: %s", got)
	}
	b.eval(`window.confirm = () => true`)
	b.openFile(good)
	b.wait(
		"the word on a number without a unit",
		`document.getElementById("e-file").textContent.includes("readings.liquidLine")`,
	)
}

// printed: the record on paper has the verdict and none of the form.
func printed(t *testing.T, b *browser, name string) {
	t.Helper()
	b.call("Emulation.setEmulatedMedia", map[string]any{"media": "print"})
	if string(
		b.eval(
			`document.getElementById("f-title").checkVisibility() || document.getElementById("log-now").checkVisibility() || !document.getElementById("trend").checkVisibility() || !document.getElementById("headline").checkVisibility() || !document.getElementById("record-notes").checkVisibility()`,
		),
	) != "false" {
		t.Error("on paper the form is printed, or the record is not")
	}
	shoot(b, name+"-print", true)
	b.call("Emulation.setEmulatedMedia", map[string]any{"media": ""})
}

// BenchmarkFirstAnswer is the time from the start of loading to the first
// assessment on the page, of a visit that is kept from the last time.
func BenchmarkFirstAnswer(b *testing.B) {
	file := page(b)
	br := startBrowser(b)
	br.open(file, 390, 844, true)
	br.eval(`document.getElementById("example").click()`)
	var took []float64
	for b.Loop() {
		br.navigate(file)
		took = append(took, decode[float64](br, br.eval(`+document.documentElement.dataset.first`)))
	}
	quantiles(b, took)
}

// BenchmarkLaterAnswer is the time from a key to the verdict on the page, also
// where the diagnosis of the key before is still being worked out.
func BenchmarkLaterAnswer(b *testing.B) {
	file := page(b)
	br := startBrowser(b)
	br.open(file, 390, 844, true)
	br.eval(`document.getElementById("example").click()`)
	var took, library, shown []float64
	for b.Loop() {
		br.write("f-readings-suctionLine", fmt.Sprintf("%.1f", 50+float64(len(took)%100)/10))
		at := decode[struct{ Latency, Verdict, Render string }](
			br,
			br.eval(`({...document.documentElement.dataset})`),
		)
		for text, into := range map[string]*[]float64{at.Latency: &took, at.Verdict: &library, at.Render: &shown} {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				b.Fatal(err)
			}
			*into = append(*into, v)
		}
		time.Sleep(time.Duration(len(took)%8) * 30 * time.Millisecond)
	}
	quantiles(b, took)
	b.ReportMetric(median(library), "ms-library")
	b.ReportMetric(median(shown), "ms-shown")
}

func quantiles(b *testing.B, took []float64) {
	slices.Sort(took)
	b.ReportMetric(took[0], "ms-least")
	b.ReportMetric(median(took), "ms-median")
	b.ReportMetric(took[len(took)*95/100], "ms-p95")
}

func median(v []float64) float64 { return slices.Sorted(slices.Values(v))[len(v)/2] }
