package live

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

func demo(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../../visit/demo/mountain-library.json")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestAssess(t *testing.T) {
	a := Assess(demo(t))
	if len(a.Errors) > 0 || a.Problem != "" || a.Assessment == nil {
		t.Fatalf("%v %s", a.Errors, a.Problem)
	}
	v, err := satline.DecodeVisit(demo(t))
	if err != nil {
		t.Fatal(err)
	}
	want, err := satline.Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	measured := want.Charge.Reading.Measured.Value.Fahrenheit()
	if a.Loop.Outcome != want.Charge.Outcome || a.Loop.Headline != want.Headline.Text ||
		a.Band == nil || math.Abs(a.Band.Measured-measured) > 1e-6 {
		t.Errorf("%+v %+v", a.Loop, a.Band)
	}
	if a.Charts.Cycle == nil || len(a.Charts.Cycle.Points) != 4 || a.Charts.Cycle.Ideal ||
		len(a.Charts.Cycle.Lines[0].Points) < 25 {
		t.Errorf("%+v", a.Charts.Cycle)
	}
	if a.Charts.Air == nil || len(a.Charts.Air.Points) != 2 ||
		math.Abs(a.Charts.Air.Points[0].X-v.Readings.ReturnDryBulb.Get().Value.Fahrenheit()) > 1e-6 {
		t.Errorf("%+v", a.Charts.Air.Points)
	}
	if _, err := json.Marshal(a); err != nil {
		t.Error(err)
	}
}

// What is wrong or half typed is named and left out, and the rest is assessed.
func TestWrongFieldsAreLeftOut(t *testing.T) {
	a := Assess([]byte(`{
	  "units": "IP", "title": "x",
	  "equipment": {"refrigerant": "R-410A", "metering": "TXV", "nominalCapacity": "3"},
	  "site": {"elevation": "99999 ft"},
	  "readings": {"liquidPressure": "318 psig", "liquidLine": "92 °F", "outdoorDryBulb": "8x",
	    "suctionLine": "900 °F", "returnDryBulb": ""},
	  "log": [{"at": "0s", "suctionPressure": "118"}, {"at": "soon"},
	    {"at": "30s", "liquidPressure": "318 psig", "liquidLine": "92 °F"}]
	}`))
	if a.Assessment == nil {
		t.Fatalf("%v %s", a.Errors, a.Problem)
	}
	for _, path := range []string{"equipment.nominalCapacity", "site.elevation",
		"readings.outdoorDryBulb", "readings.suctionLine", "readings.returnDryBulb",
		"log[0].suctionPressure", "log[1].at"} {
		if a.Errors[path] == "" {
			t.Errorf("%s is not named: %v", path, a.Errors)
		}
	}
	if len(a.Assessment.Readings) == 0 {
		t.Error("the rest was not assessed")
	}
}

// A name that is not known is told as such, not as one that is missing.
// Invented: a sound machine whose gauges show bar, written down in kPa; and readings in kPa that
// are none in bar.
func TestReadInBar(t *testing.T) {
	const suction, liquid = "readings.suctionPressure", "readings.liquidPressure"
	for _, c := range []struct {
		fluid, low, high string
		asked            []string
	}{
		{"R-410A", "7.2 kPag", "26.5 kPag", []string{liquid, suction}},
		{"R-410A", "7.2 kPag", "2650 kPag", []string{suction}},
		{"R-410A", "720 kPag", "26.5 kPag", []string{liquid}},
		{"R-410A", "720 kPag", "2650 kPag", nil},
		{"R-410A", "7.2 barg", "26.5 barg", nil},
		// A freezer, and one that is pumped down.
		{"R-134a", "5 kPag", "900 kPag", nil},
		{"R-404A", "-40 kPag", "1500 kPag", nil},
	} {
		visit := fmt.Sprintf(`{"units": "SI", "language": "es",
		  "equipment": {"refrigerant": %q, "metering": "TXV"}, "readings": {
		    "suctionPressure": %q, "liquidPressure": %q, "suctionLine": "13 °C",
		    "liquidLine": "37 °C", "outdoorDryBulb": "33 °C"}}`, c.fluid, c.low, c.high)
		a := Assess([]byte(visit))
		slices.Sort(a.InBar)
		if !slices.Equal(a.InBar, c.asked) {
			t.Errorf("%s at %s and %s: asked of %q", c.fluid, c.low, c.high, a.InBar)
		}
		for _, path := range a.InBar {
			if a.Errors[path] == "" && a.Loop.Doubts[path] == "" {
				t.Errorf("%s: nothing is asked at %s", c.low, path)
			}
		}
	}
}

func TestUnknownRefrigerant(t *testing.T) {
	const path, visit = "equipment.refrigerant", `{"language": %q,
		"equipment": {"refrigerant": %q, "metering": "TXV"}}`
	for _, language := range []string{"en", "es"} {
		none := Assess(fmt.Appendf(nil, visit, language, ""))
		a := Assess(fmt.Appendf(nil, visit, language, "410"))
		if a.Errors[path] == "" || a.Errors[path] == none.Errors[path] ||
			a.Problem != a.Errors[path] {
			t.Errorf("%s: %v, problem %q; without %v", language, a.Errors, a.Problem, none.Errors)
		}
	}
}

// What is begun in a list, or of the rules of a firm, and not yet whole, is named and keeps
// nothing else from being assessed.
func TestHalfOfARowIsLeftOut(t *testing.T) {
	for part, want := range map[string]string{
		`"house": {"subcooling": "9 °F"}`: "house.name",
		`"house": {"name": "Invented rules",
			"faults": [{"name": "kinked behind the wall"}]}`: "house.faults[0].like",
		`"house": {"name": "Invented rules",
			"holds": [{"methods": ["superheat"]}]}`: "house.holds[0].rule",
	} {
		a := Assess([]byte(strings.Replace(string(demo(t)), `"units"`, part+`, "units"`, 1)))
		if a.Assessment == nil || len(a.Errors) != 1 || a.Errors[want] == "" {
			t.Errorf("%s: %v %s", part, a.Errors, a.Problem)
		}
	}
}

// A target of the firm is that which the charge is judged by where the label has none.
func TestRulesOfAFirm(t *testing.T) {
	a := Assess([]byte(`{"units": "IP",
		"equipment": {"refrigerant": "R-410A", "metering": "TXV"},
		"house": {"name": "Invented rules", "subcooling": "9 °F"},
		"readings": {"suctionPressure": "118 psig", "liquidPressure": "340 psig",
			"suctionLine": "52 °F", "liquidLine": "95 °F", "outdoorDryBulb": "88 °F"}}`))
	if a.Band == nil || a.Band.Target != 9 {
		t.Errorf("%+v %v %s", a.Band, a.Errors, a.Problem)
	}
}

// A look that this library does not know, or an answer that is neither yes nor no,
// is left out whole, and counts as nothing.
func TestWrongChecksAreLeftOut(t *testing.T) {
	with := func(checks string) Answer {
		return Assess(
			[]byte(strings.Replace(string(demo(t)), `"units"`, `"checks": `+checks+`, "units"`, 1)),
		)
	}
	a := with(`[{"look": "of a later day", "found": true}, {"look": "gauge-zero", "found": false},
		{"look": "elevation", "found": "perhaps"}, {}]`)
	if len(a.Errors) != 3 || a.Assessment == nil {
		t.Fatalf("%v %s", a.Errors, a.Problem)
	}
	want := with(`[{"look": "gauge-zero", "found": false}]`).Assessment
	if a.Assessment.Headline.Text != want.Headline.Text {
		t.Errorf("%s, and without what is left out %s", a.Assessment.Headline, want.Headline)
	}
}

func TestNoAssessment(t *testing.T) {
	for doc, want := range map[string]string{
		`{`:  "cannot be read",
		`{}`: "name the refrigerant",
		`{"equipment": {"refrigerant": "R-41", "metering": "TXV"}}`:   "R-41",
		`{"equipment": {"refrigerant": ["R-41"], "metering": "TXV"}}`: "",
	} {
		if a := Assess([]byte(doc)); a.Assessment != nil || !strings.Contains(a.Problem, want) ||
			a.Problem == "" {
			t.Errorf("%s: %+v", doc, a)
		}
	}
}

func TestTrend(t *testing.T) {
	var entries []string
	for i := range 20 {
		entries = append(
			entries,
			fmt.Sprintf(
				`{"at": "%dm", "suctionPressure": "118 psig", "suctionLine": "%d °F"}`, i, 60-i/3,
			),
		)
	}
	a := Assess([]byte(`{"units": "IP",
		"equipment": {"refrigerant": "R-410A", "metering": "piston"},
		"log": [` + strings.Join(entries, ",") + `], "moves": [{"at": "4m", "added": "3 oz"}]}`))
	if a.Trend == nil {
		t.Fatalf("%+v", a)
	}
	tr := a.Trend
	if len(tr.Points) != 20 || tr.Of != "superheat" || tr.Moves[0].Text != "+3.0 oz" ||
		tr.Points[3][0] != 3 {
		t.Errorf("%+v", tr)
	}
}

func TestUnitsOnlyChangeWhatIsShown(t *testing.T) {
	ip := Assess(demo(t))
	si := Assess([]byte(strings.Replace(string(demo(t)), `"IP"`, `"SI"`, 1)))
	if ip.Band.Unit != "°F" || si.Band.Unit != "K" ||
		quantity.FahrenheitDelta(ip.Band.Measured)-quantity.KelvinDelta(si.Band.Measured) > 1e-9 {
		t.Errorf("%+v %+v", ip.Band, si.Band)
	}
}

func FuzzAssess(f *testing.F) {
	f.Add(demo(f))
	f.Add([]byte(`{"log": [{"at": "x"}], "equipment": {"refrigerant": "R-22", "metering": "TXV"}}`))
	f.Fuzz(func(t *testing.T, doc []byte) {
		if _, err := json.Marshal(Assess(doc)); err != nil {
			t.Error(err)
		}
	})
}

// BenchmarkVerdict is what a key costs, BenchmarkWhole what follows a pause.
func BenchmarkVerdict(b *testing.B) { benchmark(b, `{"scope": "verdict",`) }
func BenchmarkWhole(b *testing.B)   { benchmark(b, `{"scope": "whole",`) }

func benchmark(b *testing.B, scope string) {
	visit := []byte(scope + strings.TrimPrefix(strings.TrimSpace(string(demo(b))), "{"))
	for b.Loop() {
		a := Assess(visit)
		if a.Loop == nil {
			b.Fatal(a.Problem)
		}
		if _, err := json.Marshal(a); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkForm is what the page waits for before anything can be entered.
func BenchmarkForm(b *testing.B) {
	for b.Loop() {
		NewForm(satline.English, quantity.IP)
	}
}
