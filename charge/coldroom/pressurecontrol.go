package coldroom

import (
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A PressureControl is how a low-pressure control is set.
type PressureControl struct {
	CutIn, CutOut quantity.GaugePressure
	Source        fact.Source
}

// Where the settings come from.
var (
	boxControl = fact.Source{
		Title:    "ACHR News, Understanding low-pressure controls in refrigeration systems",
		Standing: fact.Published,
	}
	pumpDown = fact.Source{
		Title: "ACHR News, Verifying a proper pump-down", Standing: fact.Published,
	}
)

// PressureControl returns the usual setting of the low-pressure control of a room that is
// kept at box, from Coldest to Warmest, with a refrigerant, where the atmosphere is that of the
// site.
//
// After a pump-down it cuts in 5 °F of saturation below the box, so that it starts as soon as
// the solenoid valve opens, and cuts out 15 °F below the coil, at no more than 10 psig and no
// less than 1 psig: low enough that the coil is empty, and above the atmosphere. Most such
// systems cut out between 5 and 10 psig (the pump-down source). Where the control itself keeps
// the box, it cuts in at the saturation of the warmest box, 3 °F over box, at which the coil has
// lost its frost, and cuts out 2 °F below the coil (the box-control source, whose cooler of
// R-134a with a difference of 20 °F cuts in at 38 °F and out at 15 °F for a box of 35 °F). A
// cut-in above the saturation of the outdoor air keeps a machine that stands outdoors from
// starting in winter.
//
// The maker's chart comes before it. The error is a *quantity.RangeError: the box is out of
// range, or the refrigerant has no saturation there.
func (r Room) PressureControl(
	fluid *refrigerant.Refrigerant, box quantity.Temperature, atmosphere quantity.Pressure,
) (PressureControl, error) {
	if !(box >= Coldest && box <= Warmest) {
		return PressureControl{}, &quantity.RangeError{
			Quantity: "box temperature", Value: box, Min: Coldest, Max: Warmest,
			Advice: "give the temperature that the box is kept at",
		}
	}
	coil := r.Usual(&box).Difference.Value
	in, out := quantity.FahrenheitDelta(3), coil+quantity.FahrenheitDelta(2)
	if r.PumpDown {
		in, out = quantity.FahrenheitDelta(-5), coil+quantity.FahrenheitDelta(15)
	}
	cutIn, err := fluid.DewPressure(box.Add(in))
	if err != nil {
		return PressureControl{}, fmt.Errorf("cut-in: %w", err)
	}
	cutOut, err := fluid.DewPressure(box.Add(-out))
	if err != nil {
		return PressureControl{}, fmt.Errorf("cut-out: %w", err)
	}
	set := PressureControl{
		CutIn:  cutIn.Gauge(atmosphere),
		CutOut: max(cutOut.Gauge(atmosphere), quantity.PSIG(1)),
		Source: boxControl,
	}
	if r.PumpDown {
		set.CutOut, set.Source = min(set.CutOut, quantity.PSIG(10)), pumpDown
	}
	return set, nil
}
