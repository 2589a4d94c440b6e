package satline

import (
	"math"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func withHouse(t *testing.T, visit string, h House) Assessment {
	t.Helper()
	v := load(t, visit)
	v.House = &h
	a, err := Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// A target of the house stands where the label has none, under the name of the house.
func TestHouseTarget(t *testing.T) {
	nine := quantity.FahrenheitDelta(9).PlusMinus(quantity.FahrenheitDelta(1))
	h := House{
		Name:       "manual",
		Superheat:  &nine,
		Subcooling: &nine,
		Tolerance:  quantity.FahrenheitDelta(2),
	}
	own := fact.Source{Title: "manual", Standing: fact.House}
	r := withHouse(t, "sound-r410a-piston", h).Charge.Reading
	if r == nil || r.TargetSource != own || r.ToleranceSource != own ||
		math.Abs(r.Target.Value.Fahrenheit()-9) > 1e-6 {
		t.Errorf("%+v", r)
	}
	r = withHouse(t, "liquid-line-restricted", h).Charge.Reading
	if r == nil || r.TargetSource.Standing != fact.Label || r.ToleranceSource != own {
		t.Errorf("the label is outranked: %+v", r)
	}
}

// A target of the house moves what is believed of the charge, the same on a label moves it more,
// and beside a label that of the house moves nothing.
func TestHouseTargetIsBelieved(t *testing.T) {
	high := quantity.FahrenheitDelta(16).PlusMinus(quantity.FahrenheitDelta(1))
	low := func(label, house *deltaReading) float64 {
		v := load(t, "sound-r410a-piston")
		v.Equipment.Metering = TXV
		v.Readings.SuctionLine = Measured(quantity.Fahrenheit(54))
		v.Equipment.Label.Subcooling = label
		v.House = &House{Name: "manual", Subcooling: house}
		a, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		return a.Charge.Low
	}
	none, house, label := low(nil, nil), low(nil, &high), low(&high, nil)
	if !(none < house && house < label) {
		t.Errorf("low: %.3f with no target, %.3f with the house's, %.3f with the label's",
			none, house, label)
	}
	if both := low(&high, &high); both != label {
		t.Errorf("low: %.3f by the label, %.3f with the house's beside it", label, both)
	}
}

// A rule of the house that holds comes before the charge is judged, for its methods.
func TestHouseHold(t *testing.T) {
	for _, c := range []struct {
		methods []charge.Method
		held    bool
	}{{nil, true}, {[]charge.Method{charge.Superheat}, true},
		{[]charge.Method{charge.Approach}, false}} {
		a := withHouse(t, "sound-r410a-piston",
			House{Name: "manual", Holds: []HouseHold{{Rule: "two persons.", Methods: c.methods}}})
		held := a.Charge.Outcome == ChargeNotJudged && a.Plan[0].Do.Code == StepHouseRule
		if held != c.held {
			t.Errorf("%v: %s, %v", c.methods, a.Charge.Outcome, a.Plan[0].Do)
		}
		// The sentence ends with one full stop.
		if rule, _ := a.Plan[0].Do.Value("rule"); held && rule.Of != "two persons" {
			t.Errorf("the rule is %q", rule.Of)
		}
	}
}

// A fault of the house takes its share of the cause that it belongs to, and nothing of others.
func TestHouseFault(t *testing.T) {
	before := withHouse(t, "liquid-line-restricted", House{Name: "manual"})
	after := withHouse(t, "liquid-line-restricted", House{
		Name:   "manual",
		Faults: []HouseFault{{Name: "kink", Like: "liquid-line-restriction", Share: 4}},
	})
	share := func(a *Assessment, fault string) float64 {
		for _, x := range a.Findings[0].Faults {
			if x.Fault == fault {
				return x.Chance
			}
		}
		return 0
	}
	if d := before.Findings[0].Chance - after.Findings[0].Chance; math.Abs(d) > 0.01 {
		t.Errorf("the cause moved by %.3f", d)
	}
	if r := share(&after, "kink") / share(&after, "liquid-line-restriction"); math.Abs(r-4) > 1e-6 {
		t.Errorf("%g times as likely as the fault that it is like; 4 was said", r)
	}
}

// What is specified in parts of the reading takes the place of what is usual.
func TestInstrumentParts(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SuctionPressure = Measured(quantity.PSIG(120))
	v.Readings.Airflow = Measured(quantity.CFM(1000))
	v.Instruments = Instruments{Gauge: quantity.PSIG(0.6), GaugePart: 0.01, AirflowPart: 0.04}
	p, err := prepare(v)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := quantity.GaugePressure(p.readings.SuctionPressure.of.Std).PSIG(),
		math.Hypot(0.6, 1.2); math.Abs(
		got-want,
	) > 1e-9 {
		t.Errorf("gauge %.3f psi, want %.3f", got, want)
	}
	if got := quantity.VolumeFlow(p.readings.Airflow.of.Std).CFM(); math.Abs(got-40) > 1e-9 {
		t.Errorf("airflow %.1f CFM, want 40", got)
	}
}

func TestHouseIsChecked(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Instruments.PowerPart = math.NaN()
	v.House = &House{
		Tolerance: quantity.KelvinDelta(99),
		Holds:     []HouseHold{{Methods: []charge.Method{77}}},
		Faults: []HouseFault{
			{Name: "overcharge", Like: "gremlin", Share: -1}, {Name: "kink", Like: "overcharge"},
		},
	}
	want := []string{
		"instruments.powerPart", "house.name", "house.tolerance", "house.holds[0].rule",
		"house.holds[0].methods[0]", "house.faults[0].name", "house.faults[0].like",
		"house.faults[0].share", "house.faults[1].share",
	}
	problems := v.Validate()
	if len(problems) != len(want) {
		t.Fatalf("%d problems of %d: %v", len(problems), len(want), problems)
	}
	for i, p := range problems {
		if p.Field != want[i] {
			t.Errorf("%s, want %s", p.Field, want[i])
		}
	}
}
