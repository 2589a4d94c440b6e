package vle

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"pgregory.net/rapid"
)

// Filled and then partly emptied, a vessel holds exactly what is in it, in two
// phases of equal pressure and fugacities, or dry below the dew point's density.
func TestVesselIsInEquilibrium(t *testing.T) {
	m, err := fluiddata.NewModel([]string{"R-32", "R-125", "R-134a"}, []float64{0.38, 0.18, 0.44})
	if err != nil {
		t.Fatal(err)
	}
	s := New(m)
	n := m.Components()
	rapid.Check(t, func(t *rapid.T) {
		temp := rapid.Float64Range(230, 330).Draw(t, "T")
		v, err := s.FillVessel(temp, rapid.Float64Range(0.02, 0.95).Draw(t, "share"))
		if err != nil {
			t.Fatal(err)
		}
		var contents Composition
		for i := range n {
			contents[i] = v.LiquidShare*v.Liquid[i] + (1-v.LiquidShare)*v.Vapor[i]
		}
		rho, z := phase(&contents, n)
		for i := range n {
			if math.Abs(z[i]-m.MoleFraction(i)) > 1e-9 {
				t.Errorf("component %d: %v of the contents, want %v", i, z[i], m.MoleFraction(i))
			}
		}
		for range 40 {
			for i := range n {
				contents[i] -= 0.03 * rho * v.Vapor[i] / sum(&v.Vapor, n)
				if contents[i] <= 0 {
					return
				}
			}
			if v, err = s.SettleVessel(temp, contents, v); err != nil {
				t.Fatal(err)
			}
			var held Composition
			for i := range n {
				held[i] = v.LiquidShare*v.Liquid[i] + (1-v.LiquidShare)*v.Vapor[i]
				if math.Abs(held[i]/contents[i]-1) > 1e-8 {
					t.Fatalf("component %d: %v held of %v", i, held[i], contents[i])
				}
			}
			if v.LiquidShare == 0 {
				return
			}
			pt := Point{T: temp, P: v.P}
			pt.RhoLiquid, pt.X = phase(&v.Liquid, n)
			pt.RhoVapor, pt.Y = phase(&v.Vapor, n)
			if e := s.Imbalance(pt); e > 1e-8 {
				t.Fatalf("phases are %v from equilibrium", e)
			}
		}
	})
}

func sum(c *Composition, n int) float64 {
	rho, _ := phase(c, n)
	return rho
}
