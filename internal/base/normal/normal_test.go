package normal

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (from
// memory).
func TestBelow(t *testing.T) {
	for _, c := range []struct{ z, want float64 }{
		{0, 0.5}, {1, 0.8413447461}, {2, 0.9772498681}, {3, 0.9986501020}, {-1, 0.1586552539},
	} {
		if got := Below(c.z); math.Abs(got-c.want) > 5e-11 {
			t.Errorf("below %v: %.10f, want %.10f", c.z, got, c.want)
		}
	}
}

func TestChancesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(-20, 20).Draw(t, "deviation")
		s := rapid.Float64Range(0, 10).Draw(t, "std")
		below, within, above := Chances(d, s, 3)
		if below < 0 || within < 0 || above < 0 || math.Abs(below+within+above-1) > 1e-12 {
			t.Fatalf("%v %v %v", below, within, above)
		}
	})
}

// Without uncertainty the answer is certain, and the edges are within.
func TestChancesOfACertainValue(t *testing.T) {
	for d, want := range map[float64][3]float64{-4: {1, 0, 0}, -3: {0, 1, 0}, 0: {0, 1, 0},
		3: {0, 1, 0}, 4: {0, 0, 1}} {
		if below, within, above := Chances(d, 0, 3); [3]float64{below, within, above} != want {
			t.Errorf("%v: %v %v %v, want %v", d, below, within, above, want)
		}
	}
}

func TestNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.Float64Range(-8, 8).Draw(t, "z")
		if got, want := Near(z), Below(z); math.Abs(got-want) > 4e-6 {
			t.Errorf("%v below %v, want %v", got, z, want)
		}
	})
}
