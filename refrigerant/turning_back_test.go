package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// The bubble line of these turns back before the critical point. On the way up every
// pressure leads back to its temperature, above the critical pressure too, and above the
// line's highest nothing boils.
func TestBubbleLineThatTurnsBack(t *testing.T) {
	for _, designation := range []string{"R-445A", "R-454C", "R-455A", "R-470A", "R-470B"} {
		r := mustLookup(t, designation)
		q, err := r.equation()
		if err != nil {
			t.Fatal(err)
		}
		c, top := r.Critical(), q.highestBubble()
		if top < 1.0005*c.Pressure {
			t.Errorf("%v boils at most at %v of its critical pressure", r, float64(top/c.Pressure))
		}
		if _, err := r.BubbleTemperature(top * 1.001); err == nil {
			t.Errorf("%v boils above its highest bubble pressure", r)
		}
		last, above := quantity.Pressure(0), 0
		for i := range 300 {
			at := c.Temperature * quantity.Temperature(0.97+0.0001*float64(i))
			p, err := r.BubblePressure(at)
			if err != nil {
				t.Fatal(err)
			}
			if p < last || p > top*(1-1e-5) {
				break
			}
			last = p
			back, err := r.BubbleTemperature(p)
			if err != nil || math.Abs(float64(back-at)) > 1e-3 {
				t.Errorf("%v: %v K boils at %v of the critical pressure, which leads to %v K, %v",
					r, float64(at), float64(p/c.Pressure), float64(back), err)
			}
			if p > c.Pressure {
				above++
			}
		}
		if above == 0 {
			t.Errorf("%v: no bubble point above the critical pressure was tried", r)
		}
	}
}

// Between its two bubble points at a pressure above the critical one such a blend is two
// phases, and just outside of them it is one.
func TestTwoPhasesAboveTheCriticalPressure(t *testing.T) {
	for _, designation := range []string{"R-445A", "R-470A", "R-470B"} {
		r := mustLookup(t, designation)
		c := r.Critical()
		p := 1.002 * c.Pressure
		cold, err := r.BubbleTemperature(p)
		if err != nil {
			t.Fatal(err)
		}
		inside, err := r.State(p, cold+0.3)
		if err != nil || inside.Phase != TwoPhase || !(inside.Quality > 0) {
			t.Errorf("%v above its bubble point: %+v, %v", r, inside, err)
		}
		if outside, err := r.State(p, cold-0.3); err != nil || outside.Phase != Liquid {
			t.Errorf("%v below its bubble point: %+v, %v", r, outside, err)
		}
		again, err := r.StateAtEnthalpy(p, inside.Enthalpy)
		if err != nil || math.Abs(float64(again.Temperature-inside.Temperature)) > 1e-6 {
			t.Errorf("%v: %+v leads back to %+v, %v", r, inside, again, err)
		}
	}
}

// At the critical pressure a quality is a place between the two edges.
func TestQualityAtTheCriticalPressure(t *testing.T) {
	for _, r := range sample(All()) {
		p := r.Critical().Pressure
		last := quantity.SpecificEnthalpy(math.Inf(-1))
		for _, x := range []float64{0.1, 0.5, 0.9} {
			s, err := r.StateAtQuality(p, x)
			if err != nil || s.Quality != x || s.Pressure != p || s.Enthalpy < last {
				t.Errorf("%v at its critical pressure and quality %v: %+v, %v", r, x, s, err)
			}
			last = s.Enthalpy
		}
	}
}
