package psychro

import "math"

// rising returns where f, which never falls, passes from negative to positive
// between low and high: Chandrupatla's method (Advances in Engineering Software
// 28, 1997, pp. 145-149), inverse quadratic interpolation where the function
// lets it and bisection where it does not. It always ends, to the rounding of
// the argument. A jump of f is as good as a zero.
func rising(f func(float64) float64, low, high float64) float64 {
	a, b := high, low // b is the newer end
	fa, fb := f(a), f(b)
	if fb >= 0 {
		return low
	}
	if fa <= 0 {
		return high
	}
	c, fc := a, fa
	t := 0.5
	for range 200 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx < 0) == (fa < 0) {
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
		tolerance := 2e-16*math.Abs(best) + 1e-300
		share := tolerance / math.Abs(b-a)
		if share > 0.5 || fbest == 0 {
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
	return 0.5 * (a + b)
}
