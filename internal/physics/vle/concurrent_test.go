package vle_test

import (
	"sync"
	"testing"

	"github.com/satline/satline/internal/physics/vle"
)

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
