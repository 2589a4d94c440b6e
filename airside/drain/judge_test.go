package drain

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/strictjson"
	"golang.org/x/text/language"
	"pgregory.net/rapid"
)

func TestOrder(t *testing.T) {
	seal, draw := quantity.Inches(1), quantity.InchesWater(0.8)
	for _, c := range []struct {
		name  string
		r     Readings
		found fact.Code
		first fact.Code
	}{
		{"nothing looked at", Readings{}, "", "drain.look.pan-full"},
		{"pan empty", Readings{PanFull: No, Runs: Yes, Trapped: Yes, Seal: &seal}, "",
			"drain.look.iced"},
		{"ice, and a full pan", Readings{Iced: Yes, PanFull: Yes}, "drain.iced.yes",
			"drain.do.thaw"},
		{"full pan", Readings{Iced: No, PanFull: Yes}, "drain.pan-full.yes", "drain.do.clear"},
		{"no trap", Readings{Iced: No, PanFull: No, Runs: Yes, Trapped: No}, "drain.trapped.no",
			"drain.do.trap"},
		{"shallow trap", Readings{Runs: Yes, Trapped: Yes, Seal: &seal, Negative: &draw},
			"drain.seal.short", "drain.do.trap"},
		{"float below a ceiling", Readings{Above: Yes, Float: No}, "drain.float.no",
			"drain.do.float"},
		{"float where no harm is done", Readings{Iced: No, PanFull: No, Runs: Yes, Trapped: Yes,
			Seal: new(quantity.Inches(3)), PanSound: Yes, Level: Yes, Insulated: Yes, Above: No,
			Float: No},
			"", "drain.do.watch"},
	} {
		rep, err := Judge(c.r)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if rep.Finding.Code != c.found || rep.Plan[0].Code != c.first {
			t.Errorf("%s: %v, %v", c.name, rep.Finding, rep.Plan)
		}
	}
}

// A draw of half an inch asks for an inch and a half (common practice, no source).
func TestSealFor(t *testing.T) {
	got, err := SealFor(quantity.InchesWater(0.5))
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, verify.Source{Cite: "negative static and one inch", Kind: verify.CommonPractice},
		"trap seal at 0.5 in. w.c.", "in", 1.5, got.Inches(), 1e-9,
	)
	var out *RangeError
	if _, err := SealFor(quantity.StaticPressure(math.NaN())); !errors.As(err, &out) {
		t.Error(err)
	}
}

// One eighth of an inch in twelve is what the code asks for.
func TestSlope(t *testing.T) {
	run := quantity.Feet(10)
	for fall, want := range map[float64]fact.Outcome{10.0 / 8: fact.Sound, 1.2: fact.Wrong} {
		f := quantity.Inches(fall)
		rep, err := Judge(Readings{Fall: &f, Run: &run})
		if err != nil || rep.Checks[0].Outcome != want {
			t.Errorf("%v in.: %v, %v", fall, rep.Checks, err)
		}
	}
	verify.Relative(t, verify.Source{
		Cite: "International Mechanical Code, 307.2.1: 1/8 in 12, 1 %", Kind: verify.Published,
	}, "least slope of a condensate drain", "%", 1, leastSlope.Percent(), 0.05)
}

// Whatever is answered, there is a step, and every code has its words.
func TestAnswers(t *testing.T) {
	spoken := words.Shapes(language.English)
	said := func(t *rapid.T, code fact.Code) {
		if _, ok := spoken[string(code)]; !ok {
			t.Fatalf("no words for %s", code)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		of := func(n string) Answer { return Answer(rapid.IntRange(0, 2).Draw(t, n)) }
		rep, err := Judge(Readings{
			Iced: of("iced"), PanFull: of("pan"), Runs: of("runs"), Trapped: of("trap"),
			PanSound: of("sound"), Level: of("level"), Insulated: of("insulated"),
			Above: of("above"), Float: of("float"),
		})
		if err != nil || len(rep.Plan) == 0 || len(rep.Cautions) == 0 {
			t.Fatal(rep, err)
		}
		for _, f := range append(rep.Plan, rep.Cautions...) {
			said(t, f.Code)
		}
		for _, c := range rep.Checks {
			said(t, c.Says.Code)
		}
	})
}

func TestImpossible(t *testing.T) {
	run := quantity.Length(0)
	var out *RangeError
	if _, err := Judge(Readings{Run: &run}); !errors.As(err, &out) {
		t.Error(err)
	}
	var name *quantity.NameError
	if _, err := Judge(Readings{Iced: 7}); !errors.As(err, &name) {
		t.Error(err)
	}
}

func FuzzReadings(f *testing.F) {
	f.Add([]byte(`{"iced": "no", "panFull": "yes", "seal": "1 in", "negative": "0.5 in. w.c."}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		var r Readings
		if strictjson.Decode(text, &r, strictjson.Limits{Bytes: 4096, Depth: 3, Items: 30}) != nil {
			return
		}
		rep, err := Judge(r)
		if err == nil && len(rep.Plan) == 0 {
			t.Fatal("no plan")
		}
		for _, c := range rep.Checks {
			if s := c.Says.String(); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
				t.Fatal(s)
			}
		}
	})
}
