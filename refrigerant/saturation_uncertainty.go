package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// A saturationDoubt is what an estimate leaves open at the two edges, as standard
// uncertainties in kelvin.
type saturationDoubt struct{ bubble, dew float64 }

const (
	// besides is what estimates are off print when their pairs are as good as they can be, by
	// the root of the mean square: an estimate has that beside the doubt of its pairs.
	besides = 0.4 // K

	// hardlyMix is what the linear rule is off where ammonia has a published pair.
	hardlyMix = 20 // K

	// unsolvedDoubt is the most that a designated blend was off print by the linear rule.
	unsolvedDoubt = 4 // K
)

// SaturationUncertainty returns the standard uncertainties of the bubble and of the dew
// temperature of r that come of pairs of components without a published fit; see
// Estimated. Both are 0 where every pair is published: what is left there is small
// beside a gauge, 0.14 K in the median of 53 blends against the table of the ASHRAE
// Handbook. Of an estimate they are at least 0.4 K, of the designated ones 1 K at most
// but up to 4 K of those with R-1132a, and 20 K where ammonia or water meets what it was never
// measured with. Bubble and dew points are off together, by the same at all readings.
//
// They are found by moving each such pair by its own standard uncertainty, at
// three quarters of the critical temperature. That is done on first use and takes
// some milliseconds.
func (r *Refrigerant) SaturationUncertainty() (bubble, dew quantity.TemperatureDelta) {
	if r.Pure() || len(r.components()) == 0 {
		return 0, 0
	}
	d := r.doubt.Load()
	if d == nil {
		d = r.findDoubt()
		r.doubt.Store(d)
	}
	return quantity.TemperatureDelta(d.bubble), quantity.TemperatureDelta(d.dew)
}

// unfitted calls f for every pair of components that no paper has fitted.
func (r *Refrigerant) unfitted(f func(first, second string)) {
	for i, a := range r.components() {
		for _, b := range r.parts[:i] {
			if fluiddata.PairOf(b.Designation, a.Designation) == nil {
				f(b.Designation, a.Designation)
			}
		}
	}
}

func (r *Refrigerant) findDoubt() *saturationDoubt {
	d := &saturationDoubt{}
	var bubble, dew float64
	at, solved := r.usualPressure()
	found := false
	r.unfitted(func(first, second string) {
		found = true
		if mixesPoorly(first) || mixesPoorly(second) {
			d.bubble, d.dew = hardlyMix, hardlyMix
			return
		}
		b, w := float64(unsolvedDoubt), float64(unsolvedDoubt)
		if solved {
			b, w = r.movedBy(at, first, second)
		}
		bubble, dew = math.Hypot(bubble, b), math.Hypot(dew, w)
	})
	if found {
		d.bubble = max(d.bubble, math.Hypot(bubble, besides))
		d.dew = max(d.dew, math.Hypot(dew, besides))
	}
	return d
}

// usualPressure is the bubble pressure at three quarters of the critical temperature: that
// of an evaporator of an air conditioner.
func (r *Refrigerant) usualPressure() (quantity.Pressure, bool) {
	p, err := r.BubblePressure(max(0.75*r.Critical().Temperature, r.Limits().MinTemperature))
	return p, err == nil
}

// movedBy returns how far bubble and dew temperature at p move with a pair by its standard
// uncertainty.
func (r *Refrigerant) movedBy(p quantity.Pressure, first, second string) (bubble, dew float64) {
	names := make([]string, len(r.parts))
	for i, c := range r.parts {
		names[i] = c.Designation
	}
	by := fluiddata.EstimateOf(first, second).Doubt
	m, err := fluiddata.NewModelShifted(names, r.MoleFractions(), first, second, by)
	if err != nil {
		return unsolvedDoubt, unsolvedDoubt
	}
	s := vle.New(m)
	bubble, dew = unsolvedDoubt, unsolvedDoubt
	if t, err := r.BubbleTemperature(p); err == nil {
		if moved, err := s.BubbleP(float64(p)); err == nil {
			bubble = moved.T - float64(t)
		}
	}
	if t, err := r.DewTemperature(p); err == nil {
		if moved, err := s.DewP(float64(p)); err == nil {
			dew = moved.T - float64(t)
		}
	}
	return bubble, dew
}
