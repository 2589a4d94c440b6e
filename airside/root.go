package airside

import "github.com/satline/satline/internal/base/root"

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
