package vle_test

import (
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
)

func TestNoSaturationAboveCriticalPressure(t *testing.T) {
	for _, f := range fluiddata.All() {
		s := pureSystem(t, f.Designation)
		for _, k := range []float64{1.005, 1.02, 2, 1e6} {
			if _, err := s.BubbleP(k * f.CriticalP); err != vle.ErrAboveCritical {
				t.Errorf("%s at %g of its critical pressure: %v", f.Designation, k, err)
			}
		}
		if _, err := s.BubbleP(1e-30); err != vle.ErrBelowRange {
			t.Errorf("%s at next to no pressure: %v", f.Designation, err)
		}
	}
}
