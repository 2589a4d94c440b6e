package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A pressure of the standard atmosphere comes back as the elevation that it is of.
func TestElevationOf(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		z := Meters(rapid.Float64Range(-5000, 11000).Draw(rt, "elevation"))
		if back := ElevationOf(AtmosphereAt(z)); math.Abs(float64(back-z)) > 1e-6 {
			rt.Errorf("%v comes back as %v", z, back)
		}
	})
	for p, want := range map[Pressure]Length{
		0: Meters(11000), Pressure(math.Inf(1)): Meters(-5000),
		Pressure(math.Inf(-1)): Meters(11000),
	} {
		if got := ElevationOf(p); got != want {
			t.Errorf("%v: %v, want %v", p, got, want)
		}
	}
	if got := ElevationOf(Pressure(math.NaN())); got != 0 {
		t.Errorf("no number: %v", got)
	}
}
