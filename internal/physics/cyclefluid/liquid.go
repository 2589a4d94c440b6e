package cyclefluid

import "github.com/satline/satline/quantity"

// LiquidAt returns the liquid at temperature t, not above the bubble point.
func (b *Isobar) LiquidAt(t float64) State {
	if t >= b.Bubble.T {
		return State{b.Bubble.T, b.Bubble.H, b.Bubble.S, b.Bubble.V, 0}
	}
	if s, err := b.line.AtTemperature(quantity.Temperature(t)); err == nil {
		return b.state(s)
	}
	cold := b.state(b.line.Coldest())
	return b.colder(&cold, cold.H+b.heatCapacity(cold.T, 1)*(t-cold.T))
}

// LiquidAtEnthalpy returns the liquid of enthalpy h, not above the bubble point.
func (b *Isobar) LiquidAtEnthalpy(h float64) State {
	if h >= b.Bubble.H {
		return b.LiquidAt(b.Bubble.T)
	}
	if s, err := b.line.AtEnthalpy(quantity.SpecificEnthalpy(h)); err == nil {
		return b.state(s)
	}
	cold := b.state(b.line.Coldest())
	return b.colder(&cold, h)
}

// colder returns liquid of enthalpy h below the coldest of the table.
func (b *Isobar) colder(cold *State, h float64) State {
	t := cold.T + (h-cold.H)/b.heatCapacity(cold.T, 1)
	return State{t, h, cold.S + (h-cold.H)/cold.T, cold.V, b.Quality(h)}
}
