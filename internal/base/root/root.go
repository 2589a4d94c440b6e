// Package root finds where a function of one variable crosses zero.
package root

import "math"

// Find returns where f crosses zero between a and b, at which it has the values
// fa and fb of different sign: to within x of the argument and its rounding, or
// where f is within y of zero. A jump across zero is as good as a zero. Where f is
// not a number it ends, for there is no telling on which side of that the zero is.
//
// The method is that of Chandrupatla, "A new hybrid quadratic/bisection algorithm
// for finding the zero of a nonlinear function without using derivatives",
// Advances in Engineering Software 28, 1997, pp. 145-149: inverse quadratic
// interpolation where the function lets it and bisection where it does not. It
// never leaves the bracket and always ends.
func Find(f func(float64) float64, a, b, fa, fb, x, y float64) float64 {
	c, fc := a, fa
	t := 0.5
	for range 200 {
		at := a + t*(b-a)
		value := f(at)
		if math.IsNaN(value) {
			return at
		}
		if (value > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, fc = b, fb
			b, fb = a, fa
		}
		a, fa = at, value
		best, fbest := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, fbest = b, fb
		}
		share := (x + 2e-16*math.Abs(best) + math.SmallestNonzeroFloat64) / math.Abs(b-a)
		if share > 0.5 || math.Abs(fbest) <= y {
			return best
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		} else {
			t = 0.5
		}
		t = min(1-share, max(share, t))
	}
	return a + (b-a)/2
}

// Rising returns where f, which never falls, passes from negative to positive
// between low and high, to the rounding of the argument: low where it is not
// negative there, high where it is not positive there.
func Rising(f func(float64) float64, low, high float64) float64 {
	fl, fh := f(low), f(high)
	switch {
	case fl >= 0:
		return low
	case fh <= 0:
		return high
	}
	return Find(f, high, low, fh, fl, 0, 0)
}
