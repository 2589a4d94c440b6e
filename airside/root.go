package airside

import (
	"math"

	"github.com/satline/satline/internal/base/root"
)

// rising finds where a rising f comes within tolerance of want, between low and
// high. It is false where f does not pass want there.
func rising(f func(float64) float64, want, low, high, tolerance float64) (float64, bool) {
	fl, fh := f(low)-want, f(high)-want
	if !(fl <= 0 && fh >= 0) {
		return 0, false
	}
	return root.Find(
		func(x float64) float64 { return f(x) - want }, low, high, fl, fh, 0, tolerance,
	), true
}

// risingFrom finds where a rising f comes within tolerance of zero, between low and high, by
// steps from a guess that grow until they pass it. It is false where f does not pass zero there.
func risingFrom(
	guess float64, f func(float64) float64, low, high, tolerance float64,
) (float64, bool) {
	a := min(max(guess, low), high)
	fa := f(a)
	switch {
	case math.IsNaN(fa):
		return rising(f, 0, low, high, tolerance)
	case math.Abs(fa) <= tolerance:
		return a, true
	}
	for step := (high - low) / 25; ; step *= 3 {
		b := min(a+step, high)
		if fa > 0 {
			b = max(a-step, low)
		}
		if b == a {
			return a, fa == 0
		}
		fb := f(b)
		if math.IsNaN(fb) {
			return 0, false
		}
		if (fa > 0) != (fb > 0) {
			return root.Find(f, a, b, fa, fb, 0, tolerance), true
		}
		a, fa = b, fb
	}
}
