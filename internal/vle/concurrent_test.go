package vle_test

import (
	"sync"
	"testing"

	"github.com/satline/satline/internal/vle"
)

func TestNothingAllocates(t *testing.T) {
	systems, _ := blendSystems(t)
	for name, s := range map[string]*vle.System{"R-32": pureSystem(t, "R-32"), "R-438A": systems["R-438A"]} {
		st, err := s.State(295, 5e5, vle.Vapor)
		if err != nil {
			t.Fatal(err)
		}
		for what, f := range map[string]func(){
			"State":       func() { s.State(295, 5e5, vle.Vapor) },
			"BubbleT":     func() { s.BubbleT(280) },
			"DewP":        func() { s.DewP(6e5) },
			"FlashPH":     func() { s.FlashPH(6e5, 0.7*st.H) },
			"FlashPHFrom": func() { s.FlashPHFrom(5e5, st.H, 290, st.Rho) },
		} {
			if n := testing.AllocsPerRun(50, f); n > 0 {
				t.Errorf("%s of %s allocates %g times", what, name, n)
			}
		}
	}
}

// Many goroutines with one system get what one alone gets.
func TestConcurrentUse(t *testing.T) {
	systems, _ := blendSystems(t)
	s := systems["R-407C"]
	temps := make([]float64, 40)
	want := make([]vle.Point, len(temps))
	alone := vle.New(s.Model())
	for i := range temps {
		temps[i] = 230 + 3.2*float64(i) // to 0.99 of critical, where the envelope is needed
		var err error
		if want[i], err = alone.DewT(temps[i]); err != nil {
			t.Fatalf("%g K: %v", temps[i], err)
		}
	}
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for i, temp := range temps {
				if got, err := s.DewT(temp); err != nil || got != want[i] {
					t.Errorf("%g K: %+v, alone %+v, %v", temp, got, want[i], err)
				}
			}
		})
	}
	wait.Wait()
}
