package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A CapillaryTube is one or several long thin tubes side by side, each feeding a
// circuit of the evaporator.
//
// The flow is that of a homogeneous mixture at constant enthalpy with a constant
// friction factor: liquid down to its bubble point, then flashing to the choking
// point or the evaporator, with the volume of the mixture v = vl·(1 + k·(pb/p − 1)).
// The form and k = 2.62e5/pb^0.75 (pb in Pa) are those of Yilmaz and Ünal, "General
// equation for the design of capillary tubes", Journal of Fluids Engineering 118,
// 1996 (from memory); a test holds v to the equation of state within 8 %. Both parts then
// integrate in closed form.
type CapillaryTube struct {
	Diameter, Length quantity.Length
	Count            int
}

const (
	entrance          = 1.5    // velocity heads: acceleration, and a sharp entrance
	capillaryFriction = 0.0175 // Darcy; see TestCapillaryAgainstChart
)

// Flow returns what passes through all tubes from a state upstream to a pressure
// downstream, none where that is not lower. The error is a *RangeError, or
// refrigerant.ErrNoRefrigerant.
func (c CapillaryTube) Flow(
	r *refrigerant.Refrigerant, upstream refrigerant.State, downstream quantity.Pressure,
) (quantity.MassFlow, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	in, err := inletOf(r, upstream)
	if err != nil {
		return 0, err
	}
	return quantity.MassFlow(c.flow(&in, float64(downstream))), nil
}

func (c CapillaryTube) check() error {
	if err := limit.Within(
		"bore of a capillary tube", c.Diameter, quantity.Millimeters(0.3), quantity.Millimeters(4),
		"it is the inside diameter",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"number of capillary tubes", quantity.Number(c.Count), 1, 100,
		"one per circuit of the evaporator",
	); err != nil {
		return err
	}
	return limit.Within(
		"length of a capillary tube", c.Length, c.Diameter*50, c.Diameter*1e4,
		"a tube of a few diameters is a ShortTube",
	)
}

// flow returns kg/s of all tubes.
func (c *CapillaryTube) flow(in *inlet, downstream float64) float64 {
	if !(downstream < in.pressure) {
		return 0
	}
	d, l := float64(c.Diameter), float64(c.Length)
	vl := 1 / in.liquid
	v0, start := vl, in.bubble
	if in.quality > 0 {
		v0 = in.volume
	}
	// v = a + b/p from where vapor begins.
	b := vl * 2.62e5 * math.Pow(start, 0.25)
	a := v0 - b/start

	// tooLong is how much longer than l the tube is that passes g.
	tooLong := func(logG float64) float64 {
		g2 := math.Exp(2 * logG)
		first := in.pressure - entrance/2*g2*v0
		length := (first - start) / (g2 * vl) // in units of 2D/f
		from, vFrom := start, v0
		if length < 0 || in.quality > 0 {
			length, from = 0, first
			vFrom = a + b/from
		}
		end := max(downstream, math.Sqrt(g2*b)) // chokes where g² = −dp/dv
		if end < from && from > 0 {
			vEnd := a + b/end
			length += overVolume(a, b, end, from)/g2 - math.Log(vEnd/vFrom)
		} else {
			length = math.Min(length, 0) + (first-end)/(g2*vl)
		}
		return length*2*d/capillaryFriction - l
	}
	low, high := math.Log(1.0), math.Log(2e5)
	fl, fh := tooLong(low), tooLong(high)
	if !(fl > 0 && fh < 0) {
		return 0
	}
	g := math.Exp(root.Find(tooLong, low, high, fl, fh, 1e-11, 0))
	return g * math.Pi / 4 * d * d * float64(c.Count)
}

// overVolume integrates dp/v with v = a + b/p.
func overVolume(a, b, from, to float64) float64 {
	if math.Abs(a)*to < 1e-4*b {
		return (to*to - from*from) / (2 * b)
	}
	return (to-from)/a - b/(a*a)*math.Log((a*to+b)/(a*from+b))
}
