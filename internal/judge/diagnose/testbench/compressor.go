package testbench

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
)

// A compressor is a map of volumetric and isentropic efficiency over the pressure ratio.
type compressor struct {
	displacement float64 // m³/s
	scroll       bool
	tightness    float64 // factor on the volumetric efficiency
	peak         float64 // best overall isentropic efficiency, motor included
	clearance    float64 // of a piston
	shellLoss    float64 // share of the power that the shell gives to the air
	oil          float64 // kg
	shell        float64 // m³ at suction pressure
}

// builtIn is the pressure ratio at which a scroll does best, and the volumetric efficiency
// falls in a line from one at 1.3 to 0.83 at 9.7: Cuevas, Lebrun, Lemort and Winandy 2010,
// Applied Thermal Engineering 30:605-615, 118 tests (their best isentropic efficiency is
// 0.72).
const (
	builtIn    = 2.55
	scrollFall = (1.0 - 0.83) / (9.7 - 1.3)
)

// exponent of an isentropic compression of a refrigerant in the two laws below; a usual
// value, for their shape alone.
const exponent = 1.15

func (c *compressor) volumetric(ratio float64) float64 {
	if c.scroll {
		return c.tightness * (1 - scrollFall*(ratio-1.3))
	}
	// The clearance law of a piston, as in Jähnig, Reindl and Klein 2000, ASHRAE Transactions
	// 106(2).
	return c.tightness * (1 + c.clearance - c.clearance*math.Pow(ratio, 1/exponent))
}

func (c *compressor) isentropic(ratio float64) float64 {
	const e = (exponent - 1) / exponent
	ideal := (math.Pow(ratio, e) - 1) / e
	if !c.scroll {
		// Valve and motor losses of fixed size weigh more at a low ratio.
		return c.peak * ideal / (ideal + 0.06)
	}
	// A scroll compresses to its own ratio and then pushes out at the pressure it meets:
	// Winandy, Saavedra and Lebrun 2002, Applied Thermal Engineering 22:107-120.
	own := (math.Pow(builtIn, e)-1)/e + (ratio-builtIn)*math.Pow(builtIn, -1/exponent)
	const fixed = 0.03
	return c.peak * (1 + fixed) * ideal / (own + fixed)
}

// A compression is what a compressor makes of its suction.
type compression struct {
	flow, power, h float64 // kg/s, W, J/kg at discharge
}

// run compresses from p1 and h1 to p2; leak is the share of the gas moved that slips back
// through valves or tips and is moved again.
func (c *compressor) run(f *fluid, p1, h1, p2, leak float64) compression {
	var low, high cyclefluid.Isobar
	f.Set(&low, p1)
	f.Set(&high, p2)
	ratio := max(p2/p1, 1.05)
	h := h1
	var out compression
	for range 3 {
		s := low.AtEnthalpy(h)
		v := s.V
		if h < low.Bubble.H {
			v = low.Bubble.V
		}
		moved := c.displacement * max(0.1, c.volumetric(ratio)) / v
		work := max(high.AtEntropy(s.S).H-h, 0) / max(0.1, c.isentropic(ratio))
		out.power = moved * work
		out.flow = moved * (1 - leak)
		// What slipped back mixes with the suction.
		out.h = h + work*(1-c.shellLoss)
		if leak == 0 {
			return out
		}
		h = (1-leak)*h1 + leak*out.h
	}
	return out
}

// dissolved is the refrigerant in the oil: ideal solution after Raoult with an oil of
// 500 g/mol, at a sump some 15 K over the suction gas and never under its pressure.
func (c *compressor) dissolved(f *fluid, p1, t1 float64) float64 {
	sump := max(t1+15, 300)
	x := min(p1/f.DewPressure(min(sump, 0.95*f.tc)), 0.7)
	const oilMolar = 500
	return c.oil * x * f.molar / ((1 - x) * oilMolar)
}
