package satline

import (
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// What is written as JSON is read back equal, also where nothing is stated yet: a
// visit is kept while it is filled in, and a map may have any quantity or name as
// its key.
func TestZeroValuesReadBack(t *testing.T) {
	readsBack(t, Visit{}, quantity.Temperature(0), quantity.Fahrenheit(62))
	readsBack(t, Assessment{Schema: AssessmentSchema}, quantity.IP, quantity.SI)
	readsBack(t, charge.Verdict{}, charge.Outcome(0), charge.CannotTell)
	readsBack(t, charge.Dose{}, charge.Action(0), charge.Halt)
	readsBack(t, charge.Obstacle{}, charge.Method(0), charge.WeighIn)
	readsBack(t, charge.Decay{}, charge.DecayOutcome(0), charge.Leak)
	readsBack(t, charge.RecoveryLevel{}, charge.RecoveryClass(0), charge.HighPressure)
	readsBack(t, charge.Source{}, charge.Temper(0), charge.Drawn)
	readsBack(t, charge.Steadiness[quantity.TemperatureDelta]{}, charge.State(0), charge.Hunting)
	readsBack(t, airside.SplitVerdict{}, airside.SplitOutcome(0), airside.SplitHigh)
	readsBack(t, airside.StaticVerdict{}, airside.StaticOutcome(0), airside.StaticLow)
	readsBack(t, airside.PartDrop{}, airside.Part(0), airside.GridPart)
	readsBack(t, cycle.Operating{}, cycle.Limit(0), cycle.LowPressure)
	readsBack(t, cycle.Conditions{}, cycle.Metering(0), cycle.Capillary)
	readsBack(t, psychro.Stream{}, psychro.PerfectGas, psychro.RealGas)
	readsBack(t, psychro.Reading{}, psychro.WickUnseen, psychro.WickIced)
	readsBack(t, psychro.Psychrometer{}, psychro.HylandWexler, psychro.IF97)
	readsBack(t, Equipment{}, Metering(0), TXV)
	readsBack(t, Outlook{}, Complaint(0), FrozenCoil)
	readsBack(t, Scenario{}, Technician, Owner)
}

// Each assessment of the visits under testdata reads back as it was.
func TestAssessmentsReadBack(t *testing.T) {
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		v, err := DecodeVisit(text)
		if err != nil {
			t.Errorf("%s: %v", f, err)
			continue
		}
		readsBack(t, v, f)
		if a, err := Assess(v); err == nil {
			readsBack(t, a, f)
		}
	}
}

func readsBack[T any, K comparable](t *testing.T, v T, keys ...K) {
	t.Helper()
	type kept struct {
		Value T
		By    map[K]K `json:",omitempty"`
		Key   K       `json:",omitzero"`
	}
	was := kept{Value: v, By: map[K]K{}}
	for _, k := range keys {
		was.By[k], was.Key = k, k
	}
	text, err := json.Marshal(was)
	if err != nil {
		t.Errorf("%T: %v", v, err)
		return
	}
	var is kept
	if err := json.Unmarshal(text, &is); err != nil {
		t.Errorf("%s: %v", text, err)
		return
	}
	if d := cmp.Diff(was, is, cmp.Exporter(func(reflect.Type) bool { return true })); d != "" {
		t.Errorf("%T reads back otherwise:\n%s", v, d)
	}
}
