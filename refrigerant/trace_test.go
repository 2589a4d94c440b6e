package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// Whatever a refrigerant holds a trace of, be it a billionth, it boils and has states at
// a quality and at an enthalpy that lead back.
func TestTracesAreSolvedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := anyRefrigerant().Draw(t, "refrigerant")
		other := anyRefrigerant().Filter((*Refrigerant).Pure).Draw(t, "trace")
		share := math.Pow(10, rapid.Float64Range(-14, -6).Draw(t, "log share"))
		r, err := NewBlend("traces", []Component{
			{base.Designation(), 1 - share}, {other.Designation(), share},
		})
		if err != nil {
			t.Fatalf("%v and %.1e of %v: %v", base, share, other, err)
		}
		low, high := r.Limits().MinTemperature, 0.98*r.Critical().Temperature
		if low > high {
			t.Skip("freezes where it is critical")
		}
		at := low + quantity.Temperature(rapid.Float64Range(0, 1).Draw(t, "T"))*(high-low)
		fail := func(what string, err error) {
			t.Fatalf(
				"%v and %.1e of %v at %v K: %s, %v", base, share, other, float64(at), what, err,
			)
		}
		for _, edge := range []struct {
			pressure    func(quantity.Temperature) (quantity.Pressure, error)
			temperature func(quantity.Pressure) (quantity.Temperature, error)
		}{{r.BubblePressure, r.BubbleTemperature}, {r.DewPressure, r.DewTemperature}} {
			p, err := edge.pressure(at)
			if err != nil {
				fail("pressure", err)
			}
			if p > r.Critical().Pressure {
				continue // retrograde
			}
			if back, err := edge.temperature(p); err != nil || math.Abs(float64(back-at)) > 1e-3 {
				fail("temperature "+back.String(), err)
			}
		}
		p, err := r.BubblePressure(at)
		if err != nil || p > r.Critical().Pressure {
			return
		}
		x := rapid.Float64Range(0, 1).Draw(t, "quality")
		s, err := r.StateAtQuality(p, x)
		if err != nil {
			fail("state at quality", err)
		}
		checkState(t, r, s)
		again, err := r.StateAtEnthalpy(p, s.Enthalpy)
		if err != nil || math.Abs(again.Quality-x) > 1e-4 {
			fail("state at enthalpy", err)
		}
	})
}
