package cycle

import "math"

// root finds where f crosses zero between a and b, at which it has the values fa
// and fb of different sign, by the method of Chandrupatla, "A new hybrid
// quadratic/bisection algorithm for finding the zero of a nonlinear function
// without using derivatives", Advances in Engineering Software 28, 1997. It never
// leaves the bracket and never does worse than bisection by more than a factor.
func root(f func(float64) float64, a, b, fa, fb, tol float64) float64 {
	c, fc := a, fa
	t := 0.5
	for range 200 {
		x := a + t*(b-a)
		fx := f(x)
		if math.IsNaN(fx) {
			return x // there is no telling on which side of it the root is
		}
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, fc = b, fb
			b, fb = a, fa
		}
		a, fa = x, fx
		best, fbest := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, fbest = b, fb
		}
		limit := tol / math.Abs(b-c)
		if limit > 0.5 || fbest == 0 {
			return best
		}
		// Inverse quadratic interpolation where it is safe.
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if 1-math.Sqrt(1-xi) < phi && phi < math.Sqrt(xi) {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		} else {
			t = 0.5
		}
		t = min(max(t, limit), 1-limit)
	}
	return a
}
