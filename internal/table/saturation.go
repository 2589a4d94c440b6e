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

// expand undoes Compress with three multiplications.
func (c Curve) expand(y float64) float64 {
	if c.steep() {
		y *= y
		y *= y
		y *= y
	}
	return y
}

func (c Curve) steep() bool { return c <= DewPressure || c == DewDensity }

// An Edge is one side of the two-phase region where temperature is asked for by
// pressure.
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
	// LowPressure and HighPressure bound the pressures of each edge, in pascals.
	LowPressure, HighPressure [Edges]float64

	byTemperature Root
	curves        [Curves][]Cubic
	byPressure    [Edges]Octaves
	temperature   [Edges][]Cubic
}

// At returns curve c at the temperature t, and false outside the table.
func (s *Saturation) At(c Curve, t float64) (float64, bool) {
	cell, x := s.byTemperature.Locate(t)
	if cells := s.curves[c]; cell < uint64(len(cells)) {
		return c.expand(cells[cell].At(x)), true
	}
	return 0, false
}

// Temperature returns the temperature of the edge e at the pressure p, and false
// outside the table.
func (s *Saturation) Temperature(e Edge, p float64) (float64, bool) {
	cell, x := s.byPressure[e].Locate(p)
	if cells := s.temperature[e]; cell < uint64(len(cells)) && p >= s.LowPressure[e] {
		return cells[cell].At(x), true
	}
	return 0, false
}
