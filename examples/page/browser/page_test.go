package browser

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// The module is small, the page is one file, and its policy admits no connection.
func TestPageStandsAlone(t *testing.T) {
	text, err := os.ReadFile(pageFile(t))
	if err != nil {
		t.Fatal(err)
	}
	html := string(text)
	_, after, ok := strings.Cut(html, `id="module"`)
	_, after, opened := strings.Cut(after, ">")
	module, _, closed := strings.Cut(after, "<")
	if !ok || !opened || !closed {
		t.Fatal("no module in the page")
	}
	if size := len(module) * 3 / 4; size > most {
		t.Errorf("the module is %d bytes compressed, want at most %d", size, most)
	}
	for _, never := range []string{
		"connect-src", "unsafe-inline", "fetch(", "XMLHttpRequest", "WebSocket", "sendBeacon",
		"EventSource",
	} {
		// The support of Go for WebAssembly names one that it is never given.
		if strings.Contains(html, never) {
			t.Errorf("the page holds %q", never)
		}
	}
}

// most is what the module may take, in bytes.
const most = 3_000_000

// A number keeps what was typed: another unit converts what is shown, and back again.
func TestUnitsConvert(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	value := func(path string) string {
		return eval[string](b, fmt.Sprintf(`(() => { const e = document.getElementById("f-%s");
		  return e.value + " " + e.parentElement.querySelector("select").value })()`, path))
	}
	expect := func(what string, want ...string) {
		t.Helper()
		for i := 0; i < len(want); i += 2 {
			if got := value(want[i]); got != want[i+1] {
				t.Errorf("%s: %s is %q, want %q", what, want[i], got, want[i+1])
			}
		}
	}
	const p, l, e = "readings-suctionPressure", "readings-suctionLine", "site-elevation"
	b.enter("equipment-refrigerant", "R-410A", p, "108", l, "62", e, "5000")
	b.press("#f-equipment-metering-1")
	b.settled()
	evaporating := func() string { return b.text("#figures div:last-child dd") }
	before := evaporating()
	b.choose(`[data-unit="readings.suctionPressure"]`, "kPag")
	expect("one unit", p, "745 kPag", l, "62 °F")
	if after := evaporating(); after != before || before == "" {
		t.Errorf("a change of the unit moved %s to %s", before, after)
	}
	b.choose(`[data-unit="readings.suctionPressure"]`, "barg")
	expect("another", p, "7.4 barg")
	b.choose(`[data-unit="readings.suctionPressure"]`, "psig")
	expect("back", p, "108 psig")
	b.choose("#s-system", "SI")
	b.settled()
	expect("SI", p, "745 kPag", l, "16.7 °C", e, "1524 m")
	b.choose("#s-language", "es")
	b.settled()
	expect("Spanish", l, "16,7 °C")
	b.choose("#s-language", "en")
	b.choose("#s-system", "IP")
	b.settled()
	expect("IP again", p, "108 psig", l, "62 °F", e, "5000 ft")

	b.enter(l, "21.5 C\r")
	b.wait("the typed unit", `document.getElementById("f-readings-suctionLine").value === "21.5"`)
	expect("a unit typed", l, "21.5 °C")
	// Minus has a key of its own, where it can be.
	b.enter(p, "5")
	b.press(`[data-sign="readings.suctionPressure"]`)
	expect("the sign", p, "-5 psig")
	if eval[bool](b, `!!document.querySelector('[data-sign="readings.power"]')`) {
		t.Error("a power may be below zero")
	}
	bad := eval[[]string](b, `[...document.querySelectorAll("[data-unit]")]
	  .map((u) => document.getElementById("f-" + u.dataset.unit.replaceAll(".", "-")))
	  .filter((e) => e.inputMode !== "decimal").map((e) => e.id)`)
	if len(bad) > 0 {
		t.Errorf("no decimal keys for %q", bad)
	}
}

// A typo is told under the field at once, in one line and in its own units.
func TestTypos(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	const at = "#e-f-readings-suctionLine"
	for _, c := range []struct{ typed, unit, told string }{
		{"6x", "°F", "Not a number in °F"}, {"900", "°F", "From -76 °F to 212 °F"},
		{"101", "°C", "From -60 °C to 100 °C"}, {"62", "°F", ""}, {"62 ", "°F", ""},
	} {
		b.choose(`[data-unit="readings.suctionLine"]`, c.unit)
		b.enter("readings-suctionLine", c.typed)
		b.wait(fmt.Sprintf("%q of %q", c.told, c.typed),
			fmt.Sprintf(`document.querySelector(%q).textContent.
				replaceAll("\u00a0", " ") === %q`, at, c.told))
		if c.told != "" {
			b.shoot("typo")
			if note := b.text("#note"); !strings.Contains(note, c.told) {
				t.Errorf("%q is noted as %q", c.told, note)
			}
			const height = `document.getElementById("note").getBoundingClientRect().height`
			if lines := eval[float64](b, height); lines > 24 {
				t.Errorf("%q takes %v px", c.told, lines)
			}
		}
	}
	b.choose("#s-language", "es")
	b.settled()
	b.enter("readings-liquidLine", "999")
	b.wait("it in Spanish",
		`/^De .* a /.test(document.querySelector("#e-f-readings-liquidLine").textContent)`)
}

// What cannot be read as a mass is not logged as moved; a bar on a gauge is one above the air.
func TestTyposInTheLoop(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(visits + "just-moved.json")
	moves := func() int {
		return eval[int](b, `JSON.parse(localStorage["satline.machines/1"]).machines[1].moves.length`)
	}
	before := moves()
	b.enter("move", "added 12 oz\r")
	b.press("#move-added")
	b.enter("move", "12 oz\r")
	b.press("#move-added")
	b.settled()
	if n := moves(); n != before+1 {
		t.Errorf("%d moves, before %d", n, before)
	}
	b.enter("readings-suctionPressure", "7.2 bar\r")
	b.wait("its unit", `document.querySelector('[data-unit="readings.suctionPressure"]').value ===
	  "barg" && document.getElementById("f-readings-suctionPressure").value === "7.2"`)
}

// A pressure in kPa that was hardly read so asks for bar, and takes it as it stands. Invented.
func TestReadInBar(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.settings("es", "SI")
	b.enter("equipment-refrigerant", "R-410A")
	b.press("#f-equipment-metering-1")
	b.settled()
	b.enter("readings-suctionPressure", "7,2", "readings-suctionLine", "13")
	b.fits("a question")
	b.shoot("in-bar")
	if b.text("#e-f-readings-suctionPressure") == "" {
		t.Error("nothing is asked of 7.2 kPa")
	}
	b.choose(`[data-unit="readings.suctionPressure"]`, "barg")
	b.settled()
	const field = `document.getElementById("f-readings-suctionPressure").value`
	if got := eval[string](b, field); got != "7,2" {
		t.Errorf("7.2 in bar is %q", got)
	}
	if got := b.text("#e-f-readings-suctionPressure"); got != "" {
		t.Errorf("it is still asked: %q", got)
	}
}

// A visit is there again after the page was closed, and several machines stand beside each
// other.
func TestKept(t *testing.T) {
	t.Parallel()
	address := fileURL(pageFile(t))
	b := open(t, address, 390, 844)
	b.openVisit(visits + "just-moved.json")
	b.press("#tab-loop")
	// What is logged has its time; what is not is as late as it is asked.
	b.do(`delete document.documentElement.dataset.answered`)
	b.press("#log-now")
	b.settled()
	before := b.text("#headline")
	b.visit(address)
	if got := b.text("#headline"); got != before || before == "" {
		t.Errorf("after opening it again %q, before %q", got, before)
	}
	if b.text("#clock") == "" || eval[string](b, `document.body.dataset.tab`) != "loop" {
		t.Errorf("the loop is not there again: %q", b.text("#clock"))
	}
	b.press("#machine-new")
	b.settled()
	got := eval[string](b, `document.getElementById("f-readings-suctionPressure").value`)
	if got != "" {
		t.Errorf("a new machine reads %q", got)
	}
	b.enter("title", "Invented roof 2")
	b.choose("#machine", "1")
	b.settled()
	if got := b.text("#headline"); got != before {
		t.Errorf("the first machine again: %q", got)
	}
	if n := eval[int](b, `document.getElementById("machine").options.length`); n != 2 {
		t.Errorf("%d machines", n)
	}
	b.press("#machine-remove")
	b.settled()
	got = eval[string](b, `document.getElementById("f-title").value`)
	if got != "Invented roof 2" {
		t.Errorf("after removing the first there is %q", got)
	}
}

// saved is what the page saves when a button is pressed.
func (b tab) saved(button string) string {
	b.Helper()
	b.do(`window.saved = undefined;
	  URL.createObjectURL = (blob) => { window.saved = blob.text(); return "blob:x"; };
	  HTMLAnchorElement.prototype.click = () => {}`)
	b.press(button)
	b.wait("a file", `window.saved`)
	return eval[string](b, `window.saved`)
}

// A visit from a file is saved again as it was, also what has no field on the page.
func TestFilesGoInACircle(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	files, err := filepath.Glob("../../visit/demo/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b.openFile(string(text))
		b.settled()
		var doc struct {
			Visit      json.RawMessage
			Assessment satline.Assessment
		}
		if err := json.Unmarshal([]byte(b.saved("#json")), &doc); err != nil {
			t.Fatal(err)
		}
		want, got := decoded(t, text), decoded(t, doc.Visit)
		if got != want {
			t.Errorf("%s, opened and saved again:\n%s\nwant\n%s", file, got, want)
		}
		if doc.Assessment.Headline.Text == "" {
			t.Error("no assessment is saved")
		}
	}
	held := eval[string](b, `localStorage["satline.machines/1"]`)
	for _, text := range []string{
		`5`, `null`, `[]`, `{"colour": 1}`, `{"equipment": {}, "log": 7}`,
		`{"equipment": {}, "checks": 7}`, `{"equipment": {"accessories": [1]}}`, `not JSON`,
	} {
		b.openFile(text)
		b.wait("the word on "+text,
			`document.getElementById("said").textContent.startsWith("That file is not a visit")`)
		b.do(`document.getElementById("said").textContent = ""`)
		if got := eval[string](b, `localStorage["satline.machines/1"]`); got != held {
			t.Errorf("%s replaced what was entered", text)
		}
	}
}

// decoded is a visit as the library writes it, its times in whole seconds.
func decoded(t *testing.T, text []byte) string {
	t.Helper()
	v, err := satline.DecodeVisit(text)
	if err != nil {
		t.Fatal(err)
	}
	v.Language, v.Scope = satline.English, satline.Whole
	for i := range v.Log {
		v.Log[i].At = v.Log[i].At.Round(time.Second)
	}
	for i := range v.Moves {
		v.Moves[i].At = v.Moves[i].At.Round(time.Second)
	}
	out, err := json.MarshalIndent(v, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// The look that the plan begins with is answered by one of two buttons, in the loop.
func TestLookIsAnswered(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	v, file := lookedFor(t)
	b.openVisit(file)
	b.press("#tab-loop")
	for range 2 {
		a, err := satline.Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		if got := b.text("#next p"); !strings.EqualFold(got, a.Plan[0].Do.Text) {
			t.Errorf("the page says %q, the library %q", got, a.Plan[0].Do.Text)
		}
		if a.Plan[0].Look == "" {
			break
		}
		b.do(`delete document.documentElement.dataset.answered`)
		b.press("#next [data-found=false]")
		b.settled()
		v.Checks = append(v.Checks, satline.Check{Look: a.Plan[0].Look})
	}
	b.press("#tab-keep")
	b.do(`delete document.documentElement.dataset.answered`)
	b.press("#keep-looked [data-unlook]")
	b.settled()
	last := fmt.Sprintf(`!!document.querySelector("#keep-looked li:nth-child(%d)")`, len(v.Checks))
	if eval[bool](b, last) {
		t.Error("an answer was not taken back")
	}
}

// lookedFor is a visit whose plan begins with a look.
func lookedFor(t *testing.T) (satline.Visit, string) {
	t.Helper()
	files, err := filepath.Glob(visits + "*.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		v := visitOf(t, file)
		a, err := satline.Assess(v)
		if err == nil && a.Plan[0].Look != "" && len(v.Log) == 0 && len(v.Checks) == 0 {
			return v, file
		}
	}
	t.Fatal("no plan begins with a look")
	return satline.Visit{}, ""
}

func visitOf(t *testing.T, file string) satline.Visit {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	v, err := satline.DecodeVisit(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// What the plan asks for stands open on the page, and Enter comes by it.
func TestPlanLeadsToItsFields(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	v := visitOf(t, visits+"nearly-empty.json")
	v.Equipment.Label = satline.Label{}
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	b.openFile(string(text))
	b.settled()
	b.press("#tab-setup")
	const charge = "equipment-label-charge"
	if !eval[bool](b, `(() => {
	  const e = document.getElementById("f-`+charge+`");
	  return e.checkVisibility() && !!e.closest(".asked");
	})()`) {
		t.Error("the plan reads the label, and the page does not show where")
	}
	b.do(`document.getElementById("f-title").focus()`)
	seen := ""
	for range 40 {
		b.run(chromedp.KeyEvent("\r"))
		seen += " " + eval[string](b,
			`document.activeElement.dataset.path || document.activeElement.id`)
	}
	for _, path := range []string{
		"equipment.refrigerant", "equipment.metering", "equipment.label.charge",
		"readings.supplyDryBulb", "log-now",
	} {
		if !strings.Contains(seen, path) {
			t.Errorf("Enter passes over %s:%s", path, seen)
		}
	}
}

// Each task opens, takes its fields, and answers; the figures are invented.
func TestTasks(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(demo)
	for _, task := range []struct {
		code   string
		fields []string
		says   string
	}{
		{"frozen", nil, "A night of"},
		{"forecast", []string{"task-forecast-outdoors", "60"}, "freeze"},
		{"weighin", []string{"equipment-label-charge", "6.25", "equipment-lineSet-length", "40",
			"equipment-lineSet-liquidDiameter", "0.375"}, "Weigh in"},
		{"recovery", nil, "recovered down to"},
		{"cylinder", []string{"task-cylinder-waterCapacity", "47.7", "task-cylinder-tare", "28",
			"task-cylinder-gross", "40"}, "more may go in"},
		{"nitrogen", []string{"task-nitrogen-start", "500", "task-nitrogen-startGas", "90",
			"task-nitrogen-held", "60", "task-nitrogen-end", "490", "task-nitrogen-endGas", "80"},
			"Pressure test holds"},
		{"vacuum", []string{"task-vacuum-readings-0-at", "0", "task-vacuum-readings-0-value", "300",
			"task-vacuum-readings-1-at", "5", "task-vacuum-readings-1-value", "310"},
			"Decay test open"},
		{"electrical", []string{"electrical-nameplate-voltage", "230",
			"electrical-supply-atRest-0", "231", "electrical-control-transformer", "0"},
			"No control voltage"},
		{"job", []string{"task-job-technician", "Ines Invented"}, "missing"},
	} {
		b.press("#tab-tasks")
		b.press(fmt.Sprintf(`.menu [data-task=%s]`, task.code))
		b.enter(task.fields...)
		b.press("#tab-tasks")
		b.wait(task.code+" says "+task.says, fmt.Sprintf(
			`document.querySelector("#task-%s .answer-box")?.textContent.includes(%q)`, task.code,
			task.says,
		))
		b.narrow(task.code)
		b.shoot("task-" + task.code)
	}
}

// The record prints on one sheet and is saved as a page that stands by itself.
func TestRecord(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(visits + "just-moved.json")
	b.enter("notes", "Invented note")
	html := b.saved("#html")
	if !strings.Contains(html, "Invented note") || !strings.Contains(html, "<!DOCTYPE html>") {
		t.Errorf("the record: %.200s", html)
	}
	b.do(`window.print = () => {}`)
	printed := func(what string) {
		t.Helper()
		b.do(`delete document.documentElement.dataset.printed`)
		b.press("#print")
		b.wait(what+" to print", `document.documentElement.dataset.printed`)
		if n := b.sheets(); n != 1 {
			t.Errorf("%s prints on %d sheets", what, n)
		}
	}
	printed("the record")
	b.press("#tab-tasks")
	b.press(".menu [data-task=job]")
	b.choose("#f-task-job-task", "maintain")
	b.enter("task-job-technician", "Ines Invented")
	printed("the record of the job")
	if html := b.saved("#html"); !strings.Contains(html, "Ines Invented") {
		t.Errorf("the record of the job: %.200s", html)
	}
}

// The screen is kept awake while the loop is looked at, and no longer. What asks the browser
// for that is tried; whether a phone then stays awake is its own affair.
func TestKeptAwake(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.do(`window.asked = ""; window.hold = Promise.resolve();
	  const request = async (what) => {
	    asked += what + " ";
	    await hold;
	    const lock = new EventTarget();
	    lock.release = async () => {
	      asked += "released ";
	      lock.dispatchEvent(new Event("release"));
	    };
	    return window.lock = lock;
	  };
	  Object.defineProperty(navigator, "wakeLock", { configurable: true, value: { request } });
	  window.look = (seen) => {
	    const state = { configurable: true, value: seen };
	    Object.defineProperty(document, "visibilityState", state);
	    document.dispatchEvent(new Event("visibilitychange"));
	  }`)
	step := func(what, script, want string) {
		t.Helper()
		b.do(`asked = "";` + script)
		b.do(`await hold; await new Promise((done) => setTimeout(done, 20))`)
		if got := strings.TrimSpace(eval[string](b, `asked`)); got != want {
			t.Errorf("%s: asked %q, want %q", what, got, want)
		}
	}
	const loop = `document.getElementById("tab-loop").click();`
	const setup = `document.getElementById("tab-setup").click();`
	step("the loop", loop, "screen")
	step("the loop again", loop, "")
	step("another tab", setup, "released")
	step("back", loop, "screen")
	step("out of sight", `look("hidden")`, "released")
	step("in sight", `look("visible")`, "screen")
	step("taken by the browser", `lock.release(); look("visible")`, "released screen")
	step("left", setup, "released")
	step("left before the answer",
		`hold = new Promise((done) => setTimeout(done, 50));`+loop+setup, "screen released")
}

// The record goes to where the browser shares to; where it shares nothing it is saved.
func TestShared(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(visits + "just-moved.json")
	b.enter("notes", "Invented note")
	b.do(`navigator.canShare = (x) => x.files.length === 1;
	  navigator.share = async ({ files: [f] }) => {
	    window.shared = f.type + " " + f.name + " " + (await f.text());
	  }`)
	b.press("#share")
	b.wait("what is shared", `window.shared`)
	got := eval[string](b, `shared`)
	if !strings.HasPrefix(got, "text/html ") || !strings.Contains(got, ".html <!DOCTYPE html>") ||
		!strings.Contains(got, "Invented note") {
		t.Errorf("shared: %.200s", got)
	}
	b.do(`navigator.canShare = () => false; delete window.shared`)
	if html := b.saved("#share"); !strings.Contains(html, "Invented note") {
		t.Errorf("saved in place of shared: %.200s", html)
	}
	if eval[bool](b, `!!window.shared`) {
		t.Error("it was shared all the same")
	}
}

// Rules of a firm are entered like everything else, and come back out as they went in.
func TestRulesOfAFirm(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.openVisit(demo)
	b.press("#tab-setup")
	text := b.text("#setup")
	if strings.Contains(text, "false") || strings.Contains(text, "undefined") {
		t.Errorf("what is nothing is written out: %.300s", text)
	}
	b.enter("house-name", "Invented rules", "house-subcooling", "9",
		"house-holds-0-rule", "Two persons")
	b.choose("#f-house-holds-0-methods-0", "superheat")
	b.enter("house-faults-0-name", "kinked behind the wall")
	b.settled()
	if got := b.text("#e-f-house-faults-0-like"); got == "" {
		t.Error("nothing says that a fault of a firm is not whole yet")
	}
	b.choose("#f-house-faults-0-like", "liquid-line-restriction")
	b.enter("house-faults-0-share", "0.5")
	want := visitOf(t, demo)
	nine := quantity.FahrenheitDelta(9).PlusMinus(0)
	want.House = &satline.House{
		Name: "Invented rules", Subcooling: &nine,
		Holds: []satline.HouseHold{
			{Rule: "Two persons", Methods: []charge.Method{charge.Superheat}},
		},
		Faults: []satline.HouseFault{
			{Name: "kinked behind the wall", Like: "liquid-line-restriction", Share: 0.5},
		},
	}
	for range 2 {
		saved := b.saved("#json")
		var doc struct{ Visit json.RawMessage }
		if err := json.Unmarshal([]byte(saved), &doc); err != nil {
			t.Fatal(err)
		}
		got, err := satline.DecodeVisit(doc.Visit)
		if err != nil {
			t.Fatal(err)
		}
		house := func(v satline.Visit) string {
			text, err := json.Marshal(v.House)
			if err != nil {
				t.Fatal(err)
			}
			return string(text)
		}
		if house(got) != house(want) {
			t.Errorf("%s, want %s", house(got), house(want))
		}
		b.openFile(saved)
		b.settled()
	}
}

// Served where that is safe, the page opens again without a network.
func TestOffline(t *testing.T) {
	t.Parallel()
	server := httptest.NewServer(http.FileServer(http.Dir(filepath.Dir(pageFile(t)))))
	address := server.URL + "/satline.html"
	b := open(t, address, 390, 844)
	b.wait("the service worker", `navigator.serviceWorker.controller`)
	manifest := eval[string](b, `document.querySelector("[rel=manifest]").href`)
	if manifest != server.URL+"/satline.webmanifest" {
		t.Error("there is no manifest")
	}
	server.Close()
	b.visit(address)
	if got := b.text("#tab-loop"); got != "Loop" {
		t.Errorf("without a network there is %q", got)
	}
}

// axe finds nothing, on any tab, in the light and in the dark; and everything can be touched.
func TestAccessible(t *testing.T) {
	t.Parallel()
	script, err := os.ReadFile("node_modules/axe-core/axe.min.js")
	if err != nil {
		t.Fatalf("axe-core is not there; npm ci installs it: %v", err)
	}
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.run(page.SetBypassCSP(true))
	b.visit(fileURL(pageFile(t)))
	b.openVisit(visits + "just-moved.json")
	b.run(chromedp.Evaluate(string(script), nil))
	for _, theme := range []string{"bright", "dark"} {
		b.choose("#s-theme", theme)
		b.settled()
		for _, name := range []string{"setup", "loop", "tasks", "keep"} {
			b.press("#tab-" + name)
			if name == "tasks" {
				b.press(".menu [data-task=electrical]")
			}
			b.do(`document.querySelectorAll("details").forEach((d) => (d.open = true));
			  document.getElementById("said").textContent = ""`)
			b.shoot(name + "-" + theme)
			for _, v := range eval[[]string](b, violations) {
				t.Errorf("%s, %s: %s", theme, name, v)
			}
			for _, s := range eval[[]string](b, small) {
				t.Errorf("%s: too small to touch with a glove: %s", name, s)
			}
		}
	}
	// A screen reader hears the verdict first, then danger, next step, readings, log.
	b.press("#tab-loop")
	got := eval[string](b, `[...document.querySelectorAll(
	  "#outcome, #risk, #figures, #next, #f-readings-suctionPressure, #log-now",
	)].map((e) => e.id).join(" ")`)
	if got != "outcome risk figures next f-readings-suctionPressure log-now" {
		t.Errorf("the order of the loop is %s", got)
	}
	// Text twice as large stays within the screen, and nothing lies over the verdict.
	b.do(`document.documentElement.style.fontSize = "200%"`)
	for _, name := range []string{"setup", "loop", "tasks", "keep"} {
		b.press("#tab-" + name)
		b.narrow(name + " in large text")
		b.shoot(name + "-large")
	}
	b.press("#tab-loop")
	if !eval[bool](b, `(() => {
	  const { left, right, top, bottom } = document.getElementById("bar").getBoundingClientRect();
	  return [top + 5, (top + bottom) / 2, bottom - 5].every((y) =>
	    document.elementFromPoint((left + right) / 2, y).closest("#bar"));
	})()`) {
		t.Error("in large text something lies over the verdict")
	}
	b.run(emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{
		{Name: "prefers-reduced-motion", Value: "reduce"}}))
	if moves := eval[int](b, `document.getAnimations().length`); moves > 0 {
		t.Errorf("%d things move", moves)
	}
}

// violations lists what an engine of accessibility rules finds wrong.
const violations = `axe.run({
  resultTypes: ["violations"],
  runOnly: ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
}).then((r) => r.violations.flatMap((v) => v.nodes.map((n) =>
  v.id + ": " + n.html.slice(0, 120) + " " + (n.any[0] ? n.any[0].message : ""))))`

// small lists what is too small to touch.
const small = `[...document.querySelectorAll(
  "button, input, select, textarea, summary",
)].flatMap((e) => {
  const own = e.type === "radio" || e.type === "checkbox" ? e.closest("label")
    : e.closest(".pair") && e.tagName === "INPUT" ? e.closest(".pair") : e;
  const r = own.getBoundingClientRect();
  if (!e.checkVisibility() || e.type === "file") return [];
  const name = e.id || e.dataset.unit || e.textContent;
  return r.height < 44.5 || r.width < 43.5
    ? [name + " " + Math.round(r.width) + "x" + Math.round(r.height)] : [];
})`
