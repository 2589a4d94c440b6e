package refrigerant

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// pressureNearCritical draws one within 5 % of the critical pressure, half of them
// within 1 % of it and closer the more often.
func pressureNearCritical(t *rapid.T, r *Refrigerant) quantity.Pressure {
	off := rapid.Float64Range(-0.05, 0.05).Draw(t, "off critical")
	if rapid.Bool().Draw(t, "close") {
		off = 0.01 * math.Pow(10, -80*math.Abs(off)) * math.Copysign(1, off)
	}
	return r.Critical().Pressure * quantity.Pressure(1+off)
}

// A state at a pressure and an enthalpy or an entropy has these, by its own word and by
// the equation of state at its temperature and density, also where the equation is so
// flat beside the critical point that enthalpy and entropy all but jump. Only past the
// critical pressure an equation may have no answer.
func TestStateHasWhatWasAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		q, err := r.equation()
		if err != nil {
			t.Fatal(err)
		}
		c, l := r.Critical(), r.Limits()
		p := pressureNearCritical(t, r)
		cold, hot := c.Temperature*0.93, min(c.Temperature*1.07, l.MaxTemperature)
		if rapid.Bool().Draw(t, "anywhere") {
			cold, hot = l.MinTemperature, l.MaxTemperature
			high := min(float64(l.MaxPressure), 3*float64(c.Pressure))
			p = quantity.Pressure(
				1e3 * math.Pow(high/1e3*(1-1e-9), rapid.Float64Range(0, 1).Draw(t, "p")),
			)
		}
		low, err1 := r.State(p, cold)
		high, err2 := r.State(p, hot)
		if err1 != nil || err2 != nil {
			t.Fatalf("%v at %v Pa: %v, %v", r, float64(p), err1, err2)
		}
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		for _, by := range [...]caloric{enthalpy, entropy} {
			reach := by.of(&high) - by.of(&low)
			want := min(by.of(&high), by.of(&low)+part*reach)
			s, err := r.stateAt(p, by, want)
			if errors.Is(err, ErrUnsolved) && p >= c.Pressure && p < 1.05*c.Pressure {
				continue
			}
			if err != nil {
				t.Fatalf("%v at %v Pa, %v: %v", r, float64(p), want, err)
			}
			checkState(t, r, s)
			if off := math.Abs(by.of(&s)-want) / reach; off > 1e-8 || s.Pressure != p {
				t.Fatalf("%v at %v Pa, %v: %.1e off: %+v", r, float64(p), want, off, s)
			}
			if s.Phase == TwoPhase {
				continue
			}
			at := q.model.At(float64(s.Temperature), float64(s.Density)*q.perMass)
			value, _, _ := by.at(&at)
			off := math.Abs(value*q.perMass-want) / reach
			// A liquid's pressure follows from the last digits of its density.
			within := 1e-6*float64(p) + 1e-10*at.Rho*at.DpDrho
			if offP := math.Abs(at.P - float64(p)); off > 1e-6 || offP > within {
				t.Fatalf("%v at %v Pa, %v: equation off by %.1e, pressure by %.1e Pa: %+v",
					r, float64(p), want, off, offP, s)
			}
		}
	})
}
