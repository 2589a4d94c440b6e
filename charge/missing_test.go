package charge

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A NotNowError made elsewhere, and a method that is none, are still told of.
func TestValuesMadeElsewhere(t *testing.T) {
	e := &NotNowError{Method: Superheat}
	if e.Code() == "" || e.Error() == "" || e.Says().IsZero() || e.Obstacle().Code != e.Code() {
		t.Errorf("%v", e)
	}
	for _, m := range []Method{0, -1, 99, math.MinInt32, math.MaxInt32} {
		if got := Obstacles(Situation{CoilWet: true, PanelsOff: true}, m); got != nil {
			t.Errorf("obstacles of method %d: %v", m, got)
		}
	}
	for _, d := range []refrigerant.Metering{0, -1, 99} {
		if m, _ := ChooseMethod(Situation{Metering: d}); m != WeighIn {
			t.Errorf("device %d is charged by %v", d, m)
		}
	}
}

// A refrigerant that was not looked up is told of as in package refrigerant.
func TestNoRefrigerant(t *testing.T) {
	line, atm := f(50).PlusMinus(df(1)), pressure{Value: quantity.StandardAtmosphere}
	for _, fluid := range []*refrigerant.Refrigerant{nil, new(refrigerant.Refrigerant)} {
		_, superheat := MeasureSuperheat(fluid, psig(68, 1), atm, line)
		_, subcooling := MeasureSubcooling(fluid, psig(200, 1), atm, line)
		_, lineCharge := LineCharge(
			fluid, Tubes(Annealed)[2], quantity.Feet(10), quantity.Fahrenheit(90),
		)
		_, recovery := RecoverTo(fluid, quantity.Pounds(6))
		_, weighIn := WeighedCharge{Fluid: fluid, Label: quantity.Pounds(6)}.Weigh()
		for name, err := range map[string]error{"weigh-in": weighIn, "superheat": superheat,
			"subcooling": subcooling, "line": lineCharge, "recovery": recovery} {
			if !errors.Is(err, refrigerant.ErrNoRefrigerant) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// What no instrument shows neither stands in the way nor is written into a reason.
func TestObstaclesLeaveOutNonsense(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e308, -1e308} {
		s := Situation{
			Metering: refrigerant.TXV, LabelSubcooling: true, NominalCapacity: quantity.Power(v),
			OutdoorDryBulb: &temperature{
				Value: quantity.Temperature(v),
			}, ReturnDryBulb: &temperature{Value: quantity.Temperature(v)},
			ReturnWetBulb: &temperature{Value: quantity.Temperature(v)},
			Superheat: &delta{
				Value: quantity.TemperatureDelta(v),
			}, Subcooling: &delta{Value: quantity.TemperatureDelta(v)},
			Airflow: &quantity.Uncertain[quantity.VolumeFlow]{Value: quantity.VolumeFlow(v)},
		}
		if got := Obstacles(s, Subcooling); len(got) > 0 {
			t.Errorf("%g: %+v", v, got)
		}
	}
}

// A target with a value that cannot be gets no tolerance.
func TestToleranceOfNoTarget(t *testing.T) {
	var out *RangeError
	for _, target := range []Target{{}, {Method: WeighIn},
		{Method: Superheat, Value: delta{Std: math.Inf(1)}},
		{Method: Subcooling, Value: delta{Value: 1e9}}} {
		if _, err := target.WithTolerance(2, fact.Source{}); !errors.As(err, &out) {
			t.Errorf("%+v: %v", target, err)
		}
	}
}

// A machine too small to be one gets no dose: its figures run off to infinity.
func TestDoseOfNoMachine(t *testing.T) {
	target, err := SubcoolingTarget(nil)
	if err != nil {
		t.Fatal(err)
	}
	history := []Moved{{Value: quantity.FahrenheitDelta(2).PlusMinus(quantity.FahrenheitDelta(1))}}
	for _, d := range []Dosing{
		{Target: target, History: history, LabelCharge: 5e-324},
		{Target: target, History: history, NominalCapacity: 1e-300},
	} {
		_, err := d.Next()
		var out *RangeError
		if !errors.As(err, &out) {
			t.Errorf("label %v, capacity %v: %v", d.LabelCharge, d.NominalCapacity, err)
		}
	}
}
