package cyclefluid

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// An Edge is a saturated state: the bubble or the dew point.
type Edge struct {
	T, H, S, V float64 // K, J/kg, J/(kg K), m³/kg
}

// An Isobar is the fluid at one pressure.
type Isobar struct {
	P           float64
	Bubble, Dew Edge

	line refrigerant.Isobar
}

// At returns the isobar at p, in Pa, or the nearest there is.
func (f *Fluid) At(p float64) Isobar {
	var b Isobar
	f.Set(&b, p)
	return b
}

// Set is At without the copy.
func (f *Fluid) Set(b *Isobar, p float64) {
	b.P = p
	b.line = f.line(p)
	b.Bubble, b.Dew = edge(b.line.Bubble()), edge(b.line.Dew())
}

func edge(s refrigerant.TableState) Edge {
	return Edge{
		T: float64(s.Temperature), H: float64(s.Enthalpy), S: float64(s.Entropy),
		V: 1 / float64(s.Density),
	}
}

// A State is a point on an isobar.
type State struct {
	T, H, S, V float64
	X          float64 // quality; below 0 for liquid, above 1 for vapor, by enthalpy
}

func (b *Isobar) state(s refrigerant.TableState) State {
	e := edge(s)
	return State{e.T, e.H, e.S, e.V, b.Quality(e.H)}
}

// Quality returns the place of h between the bubble and the dew point, 0 to 1
// there and beyond 0 and 1 outside.
func (b *Isobar) Quality(h float64) float64 {
	return (h - b.Bubble.H) / (b.Dew.H - b.Bubble.H)
}

// AtEnthalpy returns the two-phase or vapor state at h. Of a blend, temperature
// and the volumes of the phases are taken in a straight line between the bubble
// and the dew point. Liquid is taken at the bubble point.
func (b *Isobar) AtEnthalpy(h float64) State {
	if h > b.Dew.H {
		return b.vapor(h)
	}
	x := b.Quality(h)
	if x <= 0 {
		return State{b.Bubble.T, h, b.Bubble.S + (h-b.Bubble.H)/b.Bubble.T, b.Bubble.V, x}
	}
	return State{
		T: b.Bubble.T + x*(b.Dew.T-b.Bubble.T),
		H: h,
		S: b.Bubble.S + x*(b.Dew.S-b.Bubble.S),
		V: b.Bubble.V + x*(b.Dew.V-b.Bubble.V),
		X: x,
	}
}

func (b *Isobar) vapor(h float64) State {
	if s, err := b.line.AtEnthalpy(quantity.SpecificEnthalpy(h)); err == nil {
		return b.state(s)
	}
	end, cp := b.end()
	return b.past(&end, cp, end.T+(h-end.H)/cp)
}

// end returns the hottest vapor of the table and its heat capacity.
func (b *Isobar) end() (State, float64) {
	end := b.state(b.line.Hottest())
	return end, b.heatCapacity(end.T, -1)
}

// past returns vapor at t beyond the end, with the heat capacity and the
// compressibility factor there.
func (b *Isobar) past(end *State, cp, t float64) State {
	h := end.H + cp*(t-end.T)
	return State{t, h, end.S + cp*math.Log(t/end.T), end.V * t / end.T, b.Quality(h)}
}

// heatCapacity returns that of the phase at t, J/(kg K), by the difference to one side.
func (b *Isobar) heatCapacity(t, side float64) float64 {
	const near = 0.05 // K
	here, err := b.line.AtTemperature(quantity.Temperature(t))
	beside, err2 := b.line.AtTemperature(quantity.Temperature(t + side*near))
	if err != nil || err2 != nil {
		return (b.Dew.H - b.Bubble.H) / b.Dew.T // no phase is so short
	}
	return float64(beside.Enthalpy-here.Enthalpy) / (side * near)
}

// End returns the enthalpy of the hottest vapor that was sampled.
func (b *Isobar) End() float64 { return float64(b.line.Hottest().Enthalpy) }

// AtEntropy returns the state of entropy s: where an ideal compression to the
// pressure of b ends.
func (b *Isobar) AtEntropy(s float64) State {
	if s <= b.Dew.S {
		return b.AtEnthalpy(b.Bubble.H + (s-b.Bubble.S)*(b.Dew.H-b.Bubble.H)/(b.Dew.S-b.Bubble.S))
	}
	if v, err := b.line.AtEntropy(quantity.SpecificEntropy(s)); err == nil {
		return b.state(v)
	}
	end, cp := b.end()
	return b.past(&end, cp, end.T*math.Exp((s-end.S)/cp))
}

// VaporAt returns the vapor at temperature t, not below the dew point.
func (b *Isobar) VaporAt(t float64) State {
	if t <= b.Dew.T {
		return State{b.Dew.T, b.Dew.H, b.Dew.S, b.Dew.V, 1}
	}
	if s, err := b.line.AtTemperature(quantity.Temperature(t)); err == nil {
		return b.state(s)
	}
	end, cp := b.end()
	return b.past(&end, cp, t)
}

// DewHeatCapacity returns the heat capacity of vapor at the dew point, J/(kg K).
func (b *Isobar) DewHeatCapacity() float64 { return b.heatCapacity(b.Dew.T, 1) }
