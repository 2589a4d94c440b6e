package coldroom

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Receiver is a cylinder by its inside, upright or lying.
type Receiver struct {
	Diameter, Length quantity.Length
	Upright          bool
}

// Holds returns the liquid that stands in the receiver up to a level, from its bottom up, at the
// temperature of that liquid: what lies between two levels is what to weigh in or out. A receiver
// that takes up a pump-down is filled to no more than 0.9 of its volume at 90 °F (ANSI/ASHRAE 15,
// from memory). Its ends are taken as flat; dished ones hold a little more.
//
// The error is a *quantity.RangeError: a diameter over 2 m, a length over 10 m, a level above the
// top, or no saturation there.
func (r Receiver) Holds(
	fluid *refrigerant.Refrigerant, at quantity.Temperature, level quantity.Length,
) (quantity.Mass, error) {
	top := r.Diameter
	if r.Upright {
		top = r.Length
	}
	for _, x := range []struct {
		name         string
		of, low, top quantity.Length
	}{
		{"diameter of a receiver", r.Diameter, 0.02, 2}, {"length of a receiver", r.Length, 0.05, 10},
		{"level in a receiver", level, 0, top},
	} {
		if err := limit.Within(x.name, x.of, x.low, x.top, "measure it"); err != nil {
			return 0, err
		}
	}
	liquid, err := fluid.SaturatedLiquid(at)
	if err != nil {
		return 0, err
	}
	radius, high := float64(r.Diameter)/2, float64(level)
	volume := math.Pi * radius * radius * high
	if !r.Upright {
		below := max(-1, min(1, (radius-high)/radius)) // of the circle's middle
		volume = float64(r.Length) * radius * radius *
			(math.Acos(below) - below*math.Sqrt(1-below*below))
	}
	return quantity.Mass(volume * float64(liquid.Density)), nil
}
