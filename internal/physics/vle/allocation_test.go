//go:build !race

package vle_test

import (
	"testing"

	"github.com/satline/satline/internal/physics/vle"
)

// The race detector empties pools at random, so this holds without it.

func TestNothingAllocates(t *testing.T) {
	systems, _ := blendSystems(t)
	for name, s := range map[string]*vle.System{"R-32": pureSystem(t, "R-32"),
		"R-438A": systems["R-438A"]} {
		st, err := s.State(295, 5e5, vle.Vapor)
		if err != nil {
			t.Fatal(err)
		}
		for what, f := range map[string]func(){
			"State":   func() { s.State(295, 5e5, vle.Vapor) },
			"BubbleT": func() { s.BubbleT(280) },
			"DewP":    func() { s.DewP(6e5) },
			"FlashPH": func() { s.FlashPH(6e5, 0.7*st.H) },
		} {
			// Pools may be emptied by the collector between runs, so the mean counts.
			if n := testing.AllocsPerRun(200, f); n >= 1 {
				t.Errorf("%s of %s allocates %g times", what, name, n)
			}
		}
	}
}
