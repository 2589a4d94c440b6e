package airside

import "math"

// rising finds where a rising f comes within tolerance of want, between low and
// high. It is false where f does not pass want there.
func rising(f func(float64) float64, want, low, high, tolerance float64) (float64, bool) {
	fl, fh := f(low)-want, f(high)-want
	if !(fl <= 0 && fh >= 0) {
		return 0, false
	}
	return root(func(x float64) float64 { return f(x) - want }, low, fl, high, fh, tolerance), true
}

// root finds a zero of f between a and b, where f has values of opposite sign,
// by false position with the Illinois rule (Dowell and Jarratt, BIT 11, 1971).
func root(f func(float64) float64, a, fa, b, fb, tolerance float64) float64 {
	for range 100 {
		x := (a*fb - b*fa) / (fb - fa)
		if !(math.Min(a, b) < x && x < math.Max(a, b)) {
			x = a + (b-a)/2
		}
		y := f(x)
		if math.Abs(y) <= tolerance || math.Abs(b-a) <= 1e-14*(math.Abs(a)+math.Abs(b)) {
			return x
		}
		if (y < 0) == (fb < 0) {
			fa /= 2
		} else {
			a, fa = b, fb
		}
		b, fb = x, y
	}
	return b
}
