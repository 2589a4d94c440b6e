package table

import "math"

// A Curve names one of the curves that a Saturation keeps against temperature.
type Curve uint8

// The curves, in SI units by mass. Bubble is the saturated liquid, dew the
// saturated vapor; for a pure fluid the two pressures are one.
const (
	BubblePressure Curve = iota
	DewPressure
	BubbleDensity
	DewDensity
	BubbleEnthalpy
	DewEnthalpy
	BubbleEntropy
	DewEntropy
	Curves // how many there are
)

// Compress maps a value of c to the one that is interpolated. A vapor pressure
// and a vapor density grow as an exponential does, tenfold in 40 K, which
// a cubic follows poorly; their eighth root it follows well.
func (c Curve) Compress(v float64) float64 {
	if c.steep() {
		return math.Sqrt(math.Sqrt(math.Sqrt(v)))
	}
	return v
}

// Expand undoes Compress with three multiplications.
func (c Curve) Expand(y float64) float64 {
	if c.steep() {
		y *= y
		y *= y
		y *= y
	}
	return y
}

func (c Curve) steep() bool { return c <= DewPressure || c == DewDensity }

// An Edge is one side of the two-phase region.
type Edge uint8

// The two edges.
const (
	Bubble Edge = iota
	Dew
	Edges // how many there are
)

// A Saturation is the saturation curves of one refrigerant, ready for lookups.
// It does not change and may be shared.
type Saturation struct {
	// The critical point, in kelvin, pascals and kilograms per cubic meter.
	CriticalTemperature, CriticalPressure, CriticalDensity float64
	// EnthalpyOffset and EntropyOffset are added to what the equation gives.
	EnthalpyOffset, EntropyOffset float64
	// Low and High bound the temperatures of the table, in kelvin.
	Low, High float64

	grid    Root
	curves  [Curves][]Cubic
	inverse [Edges]inverse
}

// At returns curve c at the temperature t, and false outside the table.
func (s *Saturation) At(c Curve, t float64) (float64, bool) {
	cell, x := s.grid.Locate(t)
	if cells := s.curves[c]; cell < uint64(len(cells)) {
		return c.Expand(cells[cell].At(x)), true
	}
	return 0, false
}

// LowPressure returns the pressure of the edge e at Low, in pascals.
func (s *Saturation) LowPressure(e Edge) float64 { return s.inverse[e].low }

// Temperature returns the temperature of the edge e at the pressure p, and false
// outside the table. It is the inverse of At for the same edge's pressure, within
// a fiftieth of a millikelvin, and rises with p and is smooth as that is.
func (s *Saturation) Temperature(e Edge, p float64) (float64, bool) {
	v := &s.inverse[e]
	cell, x := v.grid.Locate(p)
	if cell >= uint64(len(v.cells)) || !(p >= v.lowest) {
		return 0, false
	}
	if t := v.cells[cell].At(x); t == t {
		return t, true
	}
	return s.grid.At(v.search(p)), true
}
