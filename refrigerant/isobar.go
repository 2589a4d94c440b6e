package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// An Isobar is a StateTable at one pressure: the two edges of the two-phase region, and
// single-phase states by temperature, enthalpy or entropy. Get one from StateTable.Isobar.
// The zero Isobar is none: everything of it is zero. It does not change.
type Isobar struct {
	t       *StateTable
	p       float64
	row     int
	weights [4]float64
	edges   [table.Edges]float64 // K
}

// Isobar returns the isobar at p. It lies between the low end of Range and 0.97 of the
// critical pressure; beyond the high end of Range density is within 1e-4 of the equation,
// enthalpy within 50 J/kg and entropy within 0.1 J/(kg·K). The error is a *RangeError, or
// ErrNoRefrigerant.
func (t *StateTable) Isobar(p quantity.Pressure) (Isobar, error) {
	var b Isobar
	if !t.made() {
		return b, ErrNoRefrigerant
	}
	if last := quantity.Pressure(lastIsobar * t.critical); !(p >= t.low && p <= last) {
		return b, &RangeError{
			Quantity: "pressure of " + t.of.designation,
			Value:    p,
			Min:      t.low,
			Max:      last,
			Advice:   "outside the state table; Refrigerant.State goes further",
		}
	}
	b.set(t, float64(p))
	return b, nil
}

func (b *Isobar) set(t *StateTable, p float64) {
	x := (t.place(p) - t.logLow) * t.perStep
	b.t, b.p = t, p
	b.row = min(max(int(x), 0), isobars-2)
	b.weights = table.Weights(x - float64(b.row))
	for e := range t.sides {
		b.edges[e] = t.sides[e].edge.At(b.row, &b.weights)
	}
}

// made reports whether b is of a table.
func (b *Isobar) made() bool { return b != nil && b.t != nil }

// BubbleTemperature returns the bubble point.
func (b *Isobar) BubbleTemperature() quantity.Temperature {
	if !b.made() {
		return 0
	}
	return quantity.Temperature(b.edges[table.Bubble])
}

// DewTemperature returns the dew point.
func (b *Isobar) DewTemperature() quantity.Temperature {
	if !b.made() {
		return 0
	}
	return quantity.Temperature(b.edges[table.Dew])
}

// Bubble returns the saturated liquid.
func (b *Isobar) Bubble() TableState {
	return b.at(table.Bubble, float64(b.BubbleTemperature()))
}

// Dew returns the saturated vapor.
func (b *Isobar) Dew() TableState { return b.at(table.Dew, float64(b.DewTemperature())) }

// Coldest returns the coldest liquid of the table.
func (b *Isobar) Coldest() TableState { return b.at(table.Bubble, b.end(table.Bubble)) }

// Hottest returns the hottest vapor of the table.
func (b *Isobar) Hottest() TableState { return b.at(table.Dew, b.end(table.Dew)) }

func (b *Isobar) end(e table.Edge) float64 {
	if !b.made() {
		return 0
	}
	return b.t.sides[e].end
}

// AtTemperature returns the liquid or the vapor at temp. It lies between Coldest and Bubble
// or between Dew and Hottest; the error is a *RangeError, or ErrNoRefrigerant.
func (b *Isobar) AtTemperature(temp quantity.Temperature) (TableState, error) {
	if !b.made() {
		return TableState{}, ErrNoRefrigerant
	}
	e, ok := b.side(float64(temp))
	if !ok {
		return TableState{}, outsideTable(b, "temperature", temp, TableState.temperature)
	}
	return b.at(e, float64(temp)), nil
}

// AtEnthalpy returns the liquid or the vapor of enthalpy h, as AtTemperature does.
func (b *Isobar) AtEnthalpy(h quantity.SpecificEnthalpy) (TableState, error) {
	if !b.made() {
		return TableState{}, ErrNoRefrigerant
	}
	s, ok := b.where(enthalpyColumn, float64(h))
	if !ok {
		return TableState{}, outsideTable(b, "enthalpy", h, TableState.enthalpy)
	}
	return s, nil
}

// AtEntropy returns the liquid or the vapor of entropy s, as AtTemperature does.
func (b *Isobar) AtEntropy(s quantity.SpecificEntropy) (TableState, error) {
	if !b.made() {
		return TableState{}, ErrNoRefrigerant
	}
	v, ok := b.where(entropyColumn, float64(s))
	if !ok {
		return TableState{}, outsideTable(b, "entropy", s, TableState.entropy)
	}
	return v, nil
}

func (s TableState) temperature() quantity.Temperature   { return s.Temperature }
func (s TableState) enthalpy() quantity.SpecificEnthalpy { return s.Enthalpy }
func (s TableState) entropy() quantity.SpecificEntropy   { return s.Entropy }

func outsideTable[T interface {
	~float64
	String() string
}](b *Isobar, name string, value T, of func(TableState) T) error {
	e := &RangeError{
		Quantity: name + " of " + b.t.of.designation + " at " + quantity.Pressure(b.p).String(),
		Value:    value,
		Min:      of(b.Coldest()),
		Max:      of(b.Hottest()),
		Advice:   "outside the state table; the methods of Refrigerant go further",
	}
	if bubble, dew := of(b.Bubble()), of(b.Dew()); value > bubble && value < dew {
		e.Advice = "between bubble and dew point are two phases: " +
			"ask Refrigerant.StateAtEnthalpy, StateAtEntropy or StateAtQuality"
	}
	return e
}

// side returns the phase at temp, and false between the two and outside the table.
func (b *Isobar) side(temp float64) (table.Edge, bool) {
	t := b.t
	if temp >= b.edges[table.Dew] {
		return table.Dew, temp <= t.sides[table.Dew].end
	}
	return table.Bubble, temp <= b.edges[table.Bubble] && temp >= t.sides[table.Bubble].end
}

func (b *Isobar) at(e table.Edge, temp float64) (s TableState) {
	if b.made() {
		b.fill(&s, e, temp)
	}
	return s
}

func (b *Isobar) fill(s *TableState, e table.Edge, temp float64) {
	edge := b.edges[e]
	b.fillAt(s, e, temp, math.Sqrt((temp-edge)/(b.t.sides[e].end-edge))*(places-1))
}

// fillAt fills in the state of temperature temp at u places from the edge e.
func (b *Isobar) fillAt(s *TableState, e table.Edge, temp, u float64) {
	side := &b.t.sides[e]
	j := min(int(u), places-2)
	w := table.Weights(u - float64(j))
	rho, h, entropy := side.sheet.At(b.row, &b.weights, j, &w)
	if e == table.Dew {
		rho *= b.p
	}
	s.Phase = side.phase
	s.Temperature = quantity.Temperature(temp)
	s.Density = quantity.Density(rho)
	s.Enthalpy = quantity.SpecificEnthalpy(h)
	s.Entropy = quantity.SpecificEntropy(entropy)
}

// where returns the state at which a column has a value.
func (b *Isobar) where(column int, value float64) (s TableState, ok bool) {
	for _, e := range [...]table.Edge{table.Dew, table.Bubble} {
		start, _ := b.column(e, column, 0)
		end, _ := b.column(e, column, places-1)
		share := (value - start) / (end - start)
		const rounding = 1e-12
		if !(share >= -rounding && share <= 1+rounding) {
			continue
		}
		share = min(max(share, 0), 1)
		// Newton's method on the share of the way in temperature, of which the column is
		// a concave function: from the chord it overshoots once at most.
		u := math.Sqrt(share) * (places - 1)
		for range 12 {
			v, slope := b.column(e, column, u)
			step := (value - v) / slope
			share = min(max(share+step, 0), 1)
			u = math.Sqrt(share) * (places - 1)
			if math.Abs(step) < 1e-7 { // and the error about its square
				break
			}
		}
		edge := b.edges[e]
		b.fillAt(&s, e, edge+share*(b.t.sides[e].end-edge), u)
		return s, true
	}
	return s, false
}

// column returns the value of a column u places from the edge e, and its derivative by the
// share of the way in temperature.
func (b *Isobar) column(e table.Edge, column int, u float64) (v, slope float64) {
	const least = 1e-4 // at the edge itself the derivative by u is 0
	j := min(int(u), places-2)
	c := b.t.sides[e].sheet.Cell(column, b.row, &b.weights, j)
	x := u - float64(j)
	w := table.Weights(x)
	v = w[0]*c[0] + w[1]*c[1] + w[2]*c[2] + w[3]*c[3]
	u = max(u, least)
	w = table.SlopeWeights(u - float64(j))
	slope = w[0]*c[0] + w[1]*c[1] + w[2]*c[2] + w[3]*c[3]
	return v, slope * (places - 1) * (places - 1) / (2 * u)
}
