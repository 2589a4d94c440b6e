package satline

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
)

// A call with a meter alone: what is wrong leads, what turns is believed, and nobody touches
// the refrigerant.
func TestNoCoolCalls(t *testing.T) {
	for _, c := range []struct{ visit, cause string }{
		{"no-cool-weak-run-capacitor", "not-pumping"},
		{"no-cool-seized-fan-motor", "condenser-heat-rejection"},
		{"no-cool-reversed-scroll", "not-pumping"},
		{"no-cool-supply-falls", ""}, // air that was hardly cooled, by what ran for seconds
		{"no-cool-float-open", ""},   // a compressor that nobody calls is not a bad one
	} {
		a := assess(t, load(t, c.visit))
		if a.Headline.Code != "headline.electrical" || a.Charge.Outcome != ChargeNotJudged {
			t.Errorf("%s: %v, charge %v", c.visit, a.Headline, a.Charge.Outcome)
		}
		for _, s := range a.Plan {
			if s.Moves || s.Opens || s.Do.Code == StepRead {
				t.Errorf("%s: %v", c.visit, s.Do)
			}
		}
		switch {
		case c.cause == "" && len(a.Findings) > 0:
			t.Errorf("%s: %v", c.visit, a.Findings)
		case c.cause != "" && (a.Findings[0].Cause != c.cause || a.Findings[0].Chance < 0.8):
			t.Errorf("%s: %v", c.visit, a.Findings[0])
		}
	}
}

// What is broken electrically comes first in every mode.
func TestElectricalFirstInEveryMode(t *testing.T) {
	for _, mode := range []Mode{Cooling, Heating, Refrigeration} {
		v := load(t, "no-cool-seized-fan-motor")
		v.Conditions.Mode = mode
		a := assess(t, v)
		if a.Headline.Code != "headline.electrical" || len(a.Plan) == 0 || a.Dose != nil ||
			a.Charge.Outcome != ChargeNotJudged ||
			!strings.HasPrefix(string(a.Plan[0].Do.Code), "electrical.") {
			t.Errorf("%v: %v, charge %v, %v", mode, a.Headline.Code, a.Charge.Outcome, a.Plan)
		}
	}
}

// The compressor's current is the same evidence wherever it was written down.
func TestCurrentOfTheMeter(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.Label.RatedLoadCurrent = quantity.Amperes(15)
	current := quantity.Amperes(11.5).PlusMinus(quantity.Amperes(0.3))
	v.Readings.CompressorCurrent = ReadingOf(current)
	one := assess(t, v)
	v.Readings.CompressorCurrent = Reading[quantity.Current]{}
	v.Electrical = &electrical.Readings{Compressor: electrical.Motor{
		State: electrical.Runs, Currents: []quantity.Uncertain[quantity.Current]{current},
		RatedLoad: quantity.Amperes(15),
	}}
	other := assess(t, v)
	if d := cmp.Diff(one.Findings, other.Findings); d != "" {
		t.Error(d)
	}
}

// What stands and is not known to be fed says nothing of the compressor; a blower that stands
// beside a compressor that runs is too little air.
func TestWhatStands(t *testing.T) {
	v := load(t, "no-cool-float-open")
	v.Electrical = &electrical.Readings{Compressor: electrical.Motor{State: electrical.Silent}}
	if a := assess(t, v); len(a.Findings) > 0 {
		t.Error(a.Findings)
	}
	// So does one that two of three phases reach: that it does not cool has its reason.
	v.Readings = Readings{
		ReturnDryBulb: Measured(quantity.Fahrenheit(80)),
		SupplyDryBulb: Measured(quantity.Fahrenheit(80)),
	}
	v.Complaint = NotCooling
	v.Electrical = &electrical.Readings{
		Nameplate: electrical.Nameplate{Voltage: quantity.Volts(460), Phases: 3},
		Supply: electrical.Supply{AtRest: []quantity.Uncertain[quantity.Voltage]{
			{Value: quantity.Volts(478)}, {Value: quantity.Volts(271)},
			{Value: quantity.Volts(208)},
		}},
		Compressor: electrical.Motor{State: electrical.Hums},
	}
	if a := assess(t, v); len(a.Findings) > 0 || a.Ask != nil {
		t.Error(a.Findings, a.Ask)
	}
	v.Readings = Readings{}
	v.Electrical = &electrical.Readings{
		Compressor: electrical.Motor{State: electrical.Runs},
		IndoorFan:  electrical.Motor{State: electrical.Hums},
	}
	if a := assess(t, v); len(a.Findings) == 0 || a.Findings[0].Cause != "low-indoor-airflow" {
		t.Error(a.Findings)
	}
}

func TestImpossibleVoltage(t *testing.T) {
	v := load(t, "no-cool-float-open")
	v.Electrical.Control.Coil.Value = -3
	var where *VisitError
	var out *quantity.RangeError
	if _, err := Assess(v); !errors.As(err, &where) || where.Field != "electrical" ||
		!errors.As(err, &out) {
		t.Error(err)
	}
}
