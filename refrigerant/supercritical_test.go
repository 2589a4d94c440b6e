package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// Above every pressure and temperature at which it boils a blend has one density, the one
// that is found where nothing is known beforehand, and no boiling is looked for.
func TestSupercriticalStatesOfBlends(t *testing.T) {
	for _, designation := range []string{"R-410A", "R-448A", "R-454B", "R-469A", "R-744", "R-718"} {
		r := mustLookup(t, designation)
		q, err := r.equation()
		if err != nil {
			t.Fatal(err)
		}
		hottest, highest, err := q.system.Extremes()
		if err != nil {
			t.Fatal(err)
		}
		l := r.Limits()
		for i := range 10 {
			for j := range 10 {
				p := highest*1.001 + (float64(l.MaxPressure)-highest*1.001)*math.Pow(
					float64(i)/9, 2,
				)
				at := hottest*1.001 + (float64(l.MaxTemperature)-hottest*1.001)*math.Pow(
					float64(j)/9, 2,
				)
				s, err := r.State(quantity.Pressure(p), quantity.Temperature(at))
				if err != nil || s.Phase != Supercritical || s.Quality != 1 {
					t.Errorf("%v at %v Pa, %v K: %+v, %v", r, p, at, s, err)
					continue
				}
				rho, err := q.system.Density(at, p, vle.Stable)
				if err != nil || math.Abs(float64(s.Density)*q.perMass/rho-1) > 1e-8 {
					t.Errorf(
						"%v at %v Pa, %v K: density %v, want %v, %v", r, p, at,
						float64(s.Density)*q.perMass, rho, err,
					)
				}
				back, err := r.StateAtEnthalpy(s.Pressure, s.Enthalpy)
				if err != nil || math.Abs(float64(back.Temperature)-at) > 1e-6 {
					t.Errorf(
						"%v at %v Pa: %v K at the enthalpy of %v K, %v", r, p,
						float64(back.Temperature), at, err,
					)
				}
			}
		}
	}
}
