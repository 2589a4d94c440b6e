package vle_test

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
)

// The departure function of R-744 with R-134a folds the spinodal of this mixture
// near its reducing density. Its critical point moves little as the R-134a goes,
// and with it the fold.
func TestCriticalPointBesideAFold(t *testing.T) {
	last := math.NaN()
	for _, part := range []float64{0, 0.002, 0.005, 0.01, 0.015, 0.02} {
		m, err := fluiddata.NewModel(
			[]string{"R-744", "R-125", "R-134a", "R-32"}, []float64{0.125, 0.375, part, 1},
		)
		if part == 0 {
			m, err = fluiddata.NewModel(
				[]string{"R-744", "R-125", "R-32"}, []float64{0.125, 0.375, 1},
			)
		}
		if err != nil {
			t.Fatal(err)
		}
		c, err := vle.New(m).Critical()
		if err != nil {
			t.Errorf("with %g of R-134a: %v", part, err)
			continue
		}
		if math.Abs(c.T-last) > 0.5 {
			t.Errorf("with %g of R-134a: critical at %g K, %g K before", part, c.T, last)
		}
		last = c.T
	}
}
