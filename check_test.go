package satline

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

// A visit is carried to its end by answering what the assessment asks for: no look
// is asked for twice, and what a look finds is believed.
func TestChecksCarryAVisitOn(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no visits", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		v := load(t, name)
		asked := map[string]bool{}
		for range 40 {
			a, err := Assess(v)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if a.Settle == nil || a.Settle.Look == "" {
				break
			}
			if asked[a.Settle.Look] {
				t.Fatalf("%s: asks for %q again", name, a.Settle.Look)
			}
			asked[a.Settle.Look] = true
			v.Checks = append(v.Checks, Check{Look: a.Settle.Look})
		}
	}
}

func TestACheckRulesAnInstrumentOutOrIn(t *testing.T) {
	v := load(t, "gauge-off-zero-at-altitude")
	gauges := func(a Assessment) (p float64) {
		for _, f := range a.Findings {
			if strings.Contains(string(f.Code), "gauge-zero") {
				p += f.Probability
			}
		}
		return p
	}
	before := gauges(assess(t, v))
	v.Checks = []Check{{Look: "gauge-zero"}}
	cleared := assess(t, v)
	v.Checks = []Check{{Look: "gauge-zero", Found: true}}
	found := assess(t, v)
	if !(gauges(cleared) < 0.5*before && gauges(found) > before) {
		t.Errorf("gauges off zero: %.2f, at zero when looked at %.2f, off zero %.2f", before, gauges(cleared), gauges(found))
	}
	told := false
	for _, f := range found.Findings {
		told = told || strings.Contains(fmt.Sprint(f.For), "the zero of both gauges: off zero")
	}
	if !told {
		t.Errorf("what was found is not among the evidence: %+v", found.Findings)
	}
}

func TestChecksThatAreNone(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	for _, c := range []struct {
		checks []Check
		says   string
	}{
		{[]Check{{Look: "gauges"}}, `visit: checks[0].look: "gauges" is none of the looks there are; give one of standing-pressure, `},
		{[]Check{{Look: "gauge-zero"}, {Look: "elevation"}, {Look: "gauge-zero", Found: true}}, `visit: checks[2].look: "gauge-zero" is answered twice`},
	} {
		v.Checks = c.checks
		_, err := Assess(v)
		var bad *VisitError
		if !errors.As(err, &bad) || !strings.HasPrefix(err.Error(), c.says) {
			t.Errorf("%v: %v", c.checks, err)
		}
	}
}

func TestLooksAreWhole(t *testing.T) {
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		for _, l := range Looks(sys) {
			if l.Code == "" || l.Name == "" || l.Take == "" || l.Found == "" || l.NotFound == "" || strings.ContainsAny(l.Name+l.Take+l.Found+l.NotFound, "{}") {
				t.Errorf("%+v", l)
			}
		}
	}
}

// A reading that is asked for is named as in the visit, as a look is by its code.
func TestTheReadingAskedForIsNamed(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil {
		t.Fatal(err)
	}
	named := 0
	for _, file := range files {
		m := assess(t, load(t, strings.TrimSuffix(filepath.Base(file), ".json"))).Settle
		switch {
		case m == nil:
		case (m.Look == "") == (m.Field == ""):
			t.Errorf("%s: asks for %q, with look %q and field %q", file, m.Take, m.Look, m.Field)
		case m.Field != "":
			named++
			if !slices.ContainsFunc(readingFields, func(f readingField) bool { return f.name == m.Field }) {
				t.Errorf("%s: %q is no reading of a visit", file, m.Field)
			}
		}
	}
	if named == 0 {
		t.Error("no visit asks for a reading")
	}
	v := load(t, "sound-r410a-piston")
	v.Readings = Readings{}
	if m := assess(t, v).Settle; m != nil && (m.Field != "" || m.Look != "") {
		t.Errorf("several readings are asked for as %q and %q", m.Field, m.Look)
	}
}
