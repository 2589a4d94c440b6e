package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// Up to the critical temperature every blend has a state between bubble and dew pressure
// and beside them, and its enthalpy leads back to it.
func TestStatesOfBlendsUpToTheCriticalPoint(t *testing.T) {
	for i, r := range sample(All()) {
		if r.Pure() || i%3 != 0 && !wideOrOdd[r.designation] {
			continue
		}
		c := r.Critical()
		for _, share := range []quantity.Temperature{0.99, 0.998, 0.9995, 0.9997, 0.9999, 0.99999} {
			at := c.Temperature * share
			bubble, err := r.BubblePressure(at)
			if err != nil {
				t.Errorf("%v: %v", r, err)
				continue
			}
			for _, part := range []quantity.Pressure{0.98, 0.99, 0.9999, 0.999999, 1.0001, 1.01} {
				p := part * bubble
				s, err := r.State(p, at)
				if err != nil {
					t.Error(err)
					continue
				}
				back, err := r.StateAtEnthalpy(p, s.Enthalpy)
				if err != nil || math.Abs(float64(back.Temperature-at)) > tableKelvin {
					t.Errorf(
						"%v at %v of its critical temperature and %v of its bubble pressure: "+
							"off by %v K, %v",
						r, share, part, float64(back.Temperature-at), err,
					)
				}
				if p < c.Pressure && part == 0.99 {
					if half, err := r.StateAtQuality(p, 0.5); err != nil ||
						half.Phase != TwoPhase ||
						math.Abs(half.Quality-0.5) > 1e-6 {
						t.Errorf(
							"%v at %v of its critical pressure and half vapor: %+v, %v", r,
							p/c.Pressure, half, err,
						)
					}
				}
				// At the edge itself rounding decides.
				if part != 0.999999 && back.Phase != s.Phase {
					t.Errorf(
						"%v at %v of its critical temperature and %v of its bubble pressure: "+
							"%v, and %v at its enthalpy",
						r, share, part, s.Phase, back.Phase,
					)
				}
			}
		}
	}
}

// So has it at the critical pressure, from the critical temperature on.
func TestStatesOfBlendsAtTheCriticalPressure(t *testing.T) {
	for _, r := range sample(All()) {
		if r.Pure() {
			continue
		}
		c := r.Critical()
		for _, over := range []quantity.Pressure{1, 1.00001, 1.0001} {
			last := math.Inf(1)
			for _, share := range []quantity.Temperature{1, 1.00001, 1.0001, 1.001, 1.02} {
				s, err := r.State(over*c.Pressure, share*c.Temperature)
				if err != nil || !(float64(s.Density) < last) ||
					share == 1 && math.Abs(float64(s.Density/c.Density)-1) > 0.2 {
					t.Errorf(
						"%v at %v of its critical pressure and %v of its critical temperature: "+
							"%+v after %v, %v",
						r, over, share, s, last, err,
					)
				}
				last = float64(s.Density)
			}
		}
	}
}

// wideOrOdd are blends for which these states were hard to find.
var wideOrOdd = map[string]bool{
	"R-406A": true,
	"R-407E": true,
	"R-441A": true,
	"R-445A": true,
	"R-453A": true,
	"R-472B": true,
}

// Beside an azeotrope, whose edges are all but one, enthalpy and quality find a state too.
func TestAzeotropesBesideTheCriticalPoint(t *testing.T) {
	for _, designation := range []string{"R-515A", "R-515B"} {
		r := mustLookup(t, designation)
		for _, below := range []quantity.Temperature{1e-4, 2e-5, 6e-6, 2e-6} {
			p, err := r.DewPressure(r.Critical().Temperature * (1 - below))
			if err != nil {
				t.Fatal(err)
			}
			half, err := r.StateAtQuality(p, 0.5)
			if err != nil {
				t.Error(err)
				continue
			}
			if _, err := r.StateAtEnthalpy(p, half.Enthalpy); err != nil {
				t.Error(err)
			}
		}
	}
}
