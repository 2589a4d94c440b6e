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

// PressureControl returns the usual setting of the low-pressure control of a room that is
// kept at box, from Coldest to Warmest, with a refrigerant, where the atmosphere is that of the
// site.
//
// After a pump-down it cuts in 5 °F of saturation below the box, so that it starts as soon as
// the solenoid valve opens, and cuts out 15 °F below the coil, and not below 1 psig. Where the
// control itself keeps the box, it cuts in at the saturation of the warmest box, 3 °F over
// box, and cuts out 2 °F below the coil. A cut-in above the saturation of the outdoor air
// keeps a machine that stands outdoors from starting in winter.
//
// Common practice, no source; the maker's chart comes before it. The error is a
// *quantity.RangeError: the box is out of range, or the refrigerant has no saturation there.
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
	return PressureControl{
		CutIn:  cutIn.Gauge(atmosphere),
		CutOut: max(cutOut.Gauge(atmosphere), quantity.PSIG(1)),
		Source: practice,
	}, nil
}
