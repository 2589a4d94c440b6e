package satline

import (
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// What is written as JSON is read back equal, also where nothing is stated yet: a
// visit is kept while it is filled in, and a map may have any quantity or name as
// its key.
func TestZeroValuesReadBack(t *testing.T) {
	readsBack(t, Visit{}, quantity.Temperature(0), quantity.Fahrenheit(71))
	readsBack(t, Assessment{Schema: AssessmentSchema}, quantity.IP, quantity.SI)
	readsBack(t, charge.Verdict{}, charge.Outcome(0), charge.CannotTell)
	readsBack(t, charge.Dose{}, charge.Action(0), charge.Halt)
	readsBack(t, charge.Obstacle{}, charge.Method(0), charge.WeighIn)
	readsBack(t, charge.Decay{}, charge.DecayOutcome(0), charge.Leak)
	readsBack(t, charge.RecoveryLevel{}, charge.RecoveryClass(0), charge.HighPressure)
	readsBack(t, fact.Source{}, charge.Temper(0), charge.Drawn)
	readsBack(
		t, charge.Sample[quantity.TemperatureDelta]{At: 1500 * time.Millisecond, Value: 9.5}, "",
	)
	readsBack(t, charge.Steadiness[quantity.TemperatureDelta]{}, charge.Course(0), charge.Hunting)
	readsBack(t, airside.SplitVerdict{}, airside.SplitOutcome(0), airside.SplitHigh)
	readsBack(t, airside.StaticVerdict{}, airside.StaticOutcome(0), airside.StaticLow)
	readsBack(t, airside.PartDrop{}, airside.Part(0), airside.GridPart)
	readsBack(t, cycle.Operating{}, cycle.Limit(0), cycle.LowPressure)
	readsBack(t, cycle.Conditions{}, refrigerant.Metering(0), refrigerant.Capillary)
	readsBack(t, cycle.Prediction{Extrapolating: []cycle.Departure{{Of: "charge", Part: -0.1}}}, "")
	readsBack(t, cycle.FreezeForecast{Outdoor: new(quantity.Fahrenheit(61))}, "")
	readsBack(t, cycle.Analysis{HighSide: "both", COP: &quantity.UncertainNumber{Value: 3.2,
		Std: 0.1}}, "")
	readsBack(t, airside.ThawTime{Likely: 90 * time.Minute}, "")
	readsBack(t, airside.GasInput{Elapsed: 2 * time.Minute, Efficiency: 0.8}, "")
	readsBack(t, airside.Thaw{}, "")
	if c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return: airside.AirReading{DryBulb: quantity.Fahrenheit(78).PlusMinus(0.3),
			WetBulb: quantity.Fahrenheit(64).PlusMinus(0.4)},
		Supply: airside.AirReading{DryBulb: quantity.Fahrenheit(55).PlusMinus(0.3),
			WetBulb: quantity.Fahrenheit(53).PlusMinus(0.4)},
		Airflow:    quantity.CFM(1200).PlusMinus(quantity.CFM(60)),
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(0),
	}); err != nil || len(c.Budget.Terms()) == 0 {
		t.Errorf("%+v, %v", c, err)
	} else {
		readsBack(t, c, "")
	}
	readsBack(t, airside.Passage{WetShare: 0.5}, "")
	readsBack(t, refrigerant.Fill{Rule: refrigerant.ByLevel}, "")
	readsBack(t, refrigerant.Room{MayTake: quantity.Pounds(3)}, "")
	readsBack(t, refrigerant.LeakCase{From: refrigerant.Vapor}, "")
	readsBack(t, psychro.MeasuredAir{Saturated: true}, "")
	readsBack(t, psychro.Mixture{Fog: 1e-3}, "")
	readsBack(t, psychro.Process{Water: 1e-3}, "")
	readsBack(t, psychro.Doubt{Code: psychro.WickDrying}, "")
	readsBack(t, psychro.Stream{}, psychro.PerfectGas, psychro.RealGas)
	readsBack(t, psychro.Reading{}, psychro.WickUnseen, psychro.WickIced)
	readsBack(t, psychro.Psychrometer{}, psychro.HylandWexler, psychro.IF97)
	readsBack(t, Equipment{}, Metering(0), TXV)
	readsBack(t, Outlook{}, Complaint(0), FrozenCoil)
	readsBack(t, Scenario{}, "")
}

// What a package answers has names of its own in JSON, as the fields of a visit have.
func TestAnswersHaveNames(t *testing.T) {
	lowerCamel := regexp.MustCompile(`^[a-z][A-Za-z]*$`)
	for _, v := range []any{
		cycle.Operating{}, cycle.Prediction{}, cycle.FreezeForecast{}, cycle.Departure{},
		cycle.Analysis{}, cycle.Unknown{}, cycle.Port{}, psychro.MeasuredAir{},
		psychro.Mixture{}, psychro.Process{}, psychro.Doubt{}, quantity.UncertainNumber{},
		refrigerant.State{}, refrigerant.Fill{}, refrigerant.Room{}, refrigerant.LeakStep{},
		refrigerant.StandingFit{}, refrigerant.Limits{}, refrigerant.CriticalPoint{},
		charge.Verdict{}, charge.Measurement{}, charge.Target{}, charge.Dose{}, charge.Weighing{},
		charge.Decay{}, charge.Tightness{}, charge.RecoveryLevel{}, charge.Risk{}, charge.Rule{},
		charge.Better{},
	} {
		text, err := json.Marshal(v)
		if err != nil {
			t.Errorf("%T: %v", v, err)
			continue
		}
		var fields map[string]any
		if err := json.Unmarshal(text, &fields); err != nil || len(fields) == 0 {
			t.Errorf("%T is written as %s", v, text)
		}
		for name := range fields {
			if !lowerCamel.MatchString(name) {
				t.Errorf("%T has %q in JSON", v, name)
			}
		}
	}
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
