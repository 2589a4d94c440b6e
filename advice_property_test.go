package satline

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// anyVisit is a machine in any state, read by instruments that may lie.
func anyVisit(t *rapid.T) Visit {
	fluid := rapid.SampledFrom([]string{"R-22", "R-410A", "R-407C", "R-32", "R-454B", "R-290"}).Draw(t, "refrigerant")
	r, err := refrigerant.Lookup(fluid)
	if err != nil {
		t.Fatal(err)
	}
	at := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	evaporating, condensing := at("evaporating", 0, 60), at("condensing", 75, 140)
	low, err := r.DewPressure(quantity.Fahrenheit(evaporating))
	if err != nil {
		t.Skip(err)
	}
	high, err := r.BubblePressure(quantity.Fahrenheit(condensing))
	if err != nil {
		t.Skip(err)
	}
	f := func(x float64) *temperatureReading { return Measured(quantity.Fahrenheit(x)) }
	returnAir := at("return", 66, 84)
	v := Visit{
		Equipment: Equipment{
			Refrigerant: fluid, Metering: rapid.SampledFrom([]Metering{FixedRestrictor, TXV, EXV}).Draw(t, "metering"),
			Arrangement: rapid.SampledFrom([]Arrangement{Split, SplitHeatPump, Package}).Draw(t, "arrangement"), NominalCapacity: quantity.Tons(3),
		},
		Site: Site{Elevation: new(quantity.Feet(0))},
		Readings: Readings{
			SuctionPressure: Measured(low.Gauge(quantity.StandardAtmosphere)), LiquidPressure: Measured(high.Gauge(quantity.StandardAtmosphere)),
			SuctionLine: f(evaporating + at("superheat", -3, 45)), LiquidLine: f(condensing - at("subcooling", -1, 28)),
			DischargeLine:  f(condensing + at("discharge", 0, 120)),
			OutdoorDryBulb: f(at("outdoor", 50, 110)),
			ReturnDryBulb:  f(returnAir), ReturnWetBulb: f(returnAir - at("depression", -1, 22)), SupplyDryBulb: f(returnAir - at("split", 2, 30)),
		},
		Conditions: Conditions{
			Running:     time.Duration(rapid.IntRange(0, 40).Draw(t, "minutes")) * time.Minute,
			FilterDirty: rapid.Bool().Draw(t, "filter"), CoilIced: rapid.Bool().Draw(t, "iced"), OutdoorCoilDirty: rapid.Bool().Draw(t, "dirty"),
			CoilWet: rapid.Bool().Draw(t, "wet"),
		},
	}
	if rapid.IntRange(0, 2).Draw(t, "low charge") > 0 { // a machine in the way that charge is added to
		outdoor, evaporating := at("warm outdoor", 80, 95), at("starved", 30, 40)
		condensing := outdoor + at("little over outdoor", 9, 16)
		low, errLow := r.DewPressure(quantity.Fahrenheit(evaporating))
		high, errHigh := r.BubblePressure(quantity.Fahrenheit(condensing))
		if errLow != nil || errHigh != nil {
			t.Skip(errLow, errHigh)
		}
		v.Readings = Readings{
			SuctionPressure: Measured(low.Gauge(quantity.StandardAtmosphere)), LiquidPressure: Measured(high.Gauge(quantity.StandardAtmosphere)),
			SuctionLine: f(evaporating + at("high superheat", 18, 32)), LiquidLine: f(condensing - at("low subcooling", 1, 5)),
			OutdoorDryBulb: f(outdoor), ReturnDryBulb: f(76), ReturnWetBulb: f(64), SupplyDryBulb: f(76 - at("small split", 14, 19)),
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "plain") > 0 { // else hardly one is judged
		v.Conditions = Conditions{Running: 30 * time.Minute}
	}
	if v.Equipment.Metering != FixedRestrictor && rapid.Bool().Draw(t, "label") {
		v.Equipment.Label.Subcooling = new(quantity.FahrenheitDelta(10).PlusMinus(quantity.FahrenheitDelta(1)))
	}
	if rapid.Bool().Draw(t, "verdict only") {
		v.Scope = VerdictOnly
	}
	if rapid.Bool().Draw(t, "airflow") {
		v.Readings.Airflow = Measured(quantity.CFM(at("CFM", 500, 1500)))
	}
	return v
}

// Whatever is read: the machine is secured first, refrigerant is moved last and never
// beside a doubt, and nothing is said twice.
func TestAdviceHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyVisit(t)
		a, err := Assess(v)
		if err != nil {
			t.Skip(err)
		}
		if len(a.Next) == 0 {
			t.Fatalf("nothing to do: %s", a.Headline)
		}
		stops := slices.ContainsFunc(a.Risks, func(r Risk) bool { return r.Stop != "" })
		first := strings.ToLower(a.Next[0].Do)
		if secures := strings.HasPrefix(first, "stop") || strings.HasPrefix(first, "feel") || strings.HasPrefix(first, "listen"); stops != secures && !v.Conditions.CoilIced {
			t.Errorf("risks %+v, first %q", a.Risks, a.Next[0].Do)
		}
		for i, s := range a.Next {
			if s.Do == "" || s.Why == "" || slices.ContainsFunc(a.Next[:i], func(b Step) bool { return b.Do == s.Do }) {
				t.Errorf("step %d of %+v", i+1, a.Next)
			}
			moves := strings.HasPrefix(s.Do, "Add ") && !strings.HasPrefix(s.Do, "Add nothing") || strings.HasPrefix(s.Do, "Recover refrigerant") || a.Dose != nil && s.Do == closed(sentence(a.Dose.Text(v.Units)))
			if moves && (i < len(a.Next)-1 || a.Charge.Outcome != ChargeLow && a.Charge.Outcome != ChargeHigh) {
				t.Errorf("refrigerant is moved at step %d, charge %s: %+v", i+1, a.Charge.Outcome, a.Next)
			}
			if moves && (a.Charge.Hold != "" || slices.ContainsFunc(a.Doubts, grave) || v.Conditions.FilterDirty || v.Conditions.OutdoorCoilDirty) {
				t.Errorf("refrigerant is moved beside a doubt (%s, %+v, %+v): %+v", a.Charge.Hold, a.Doubts, v.Conditions, a.Next)
			}
		}
	})
}
