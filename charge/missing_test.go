package charge

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// A NotNowError made elsewhere, and a method that is none, are still told of.
func TestValuesMadeElsewhere(t *testing.T) {
	e := &NotNowError{Method: Superheat}
	if e.Code() == "" || e.Error() == "" || e.Instead() == "" || e.Reason(quantity.SI) == "" || e.Obstacle(quantity.IP).Code != e.Code() {
		t.Errorf("%v", e)
	}
	for _, m := range []Method{0, -1, 99, math.MinInt32, math.MaxInt32} {
		if got := Obstacles(Situation{CoilWet: true, PanelsOff: true}, m); got != nil {
			t.Errorf("obstacles of method %d: %v", m, got)
		}
	}
	for _, d := range []Metering{0, -1, 99} {
		if m, _ := Choose(Situation{Metering: d}); m != WeighIn {
			t.Errorf("device %d is charged by %v", d, m)
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
