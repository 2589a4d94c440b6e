package table

// A cubic B-spline on equal cells passes through its nodes and is continuous with its
// first and second derivative. Every node has one coefficient, and there is one more at
// either end; the value in a cell is the sum of four coefficients, weighted. See C. de Boor,
// "A Practical Guide to Splines", Springer 1978, chapters IX and X.

// Weights returns the weights of the four coefficients of a cell at place t, 0 to 1 in it.
func Weights(t float64) [4]float64 {
	r := 1 - t
	t2, r2 := t*t, r*r
	return [4]float64{r2 * r * (1. / 6), 2./3 - t2*(1-t/2), 2./3 - r2*(1-r/2), t2 * t * (1. / 6)}
}

// SlopeWeights returns those of the derivative by t.
func SlopeWeights(t float64) [4]float64 {
	r := 1 - t
	return [4]float64{-r * r / 2, t * (1.5*t - 2), r * (2 - 1.5*r), t * t / 2}
}

// spline replaces the values v, which lie stride apart from first on, by coefficients. v has
// n values with room for one more before and after. The slope at an end is that of the
// quartic through the five values there (Abramowitz and Stegun, table 25.2), and at the start
// of a curve that is even there 0.
func spline(v []float64, first, n, stride int, even bool, scratch []float64) {
	at := func(i int) *float64 { return &v[first+i*stride] }
	slope := func(i, step int) float64 {
		return (-25**at(i) + 48**at(i + step) - 36**at(i + 2*step) +
			16**at(i + 3*step) - 3**at(i + 4*step)) / 12
	}
	start, end := 0.0, -slope(n-1, -1)
	if !even {
		start = slope(0, 1)
	}
	// (c[i-1] + 4 c[i] + c[i+1])/6 = v[i], and (c[1] − c[−1])/2 the slope at the start, so
	// that 4 c[0] + 2 c[1] = 6 v[0] + 2 start; likewise at the end. Eliminate downward,
	// then upward.
	for i := range n {
		right, pivot, above := 6**at(i), 4.0, 1.0
		switch i {
		case 0:
			right += 2 * start
			above = 2
		case n - 1:
			right -= 2 * end
			pivot -= 2 * scratch[i-1]
			right -= 2 * *at(i - 1)
		default:
			pivot -= scratch[i-1]
			right -= *at(i - 1)
		}
		scratch[i], *at(i) = above/pivot, right/pivot
	}
	for i := n - 2; i >= 0; i-- {
		*at(i) -= scratch[i] * *at(i + 1)
	}
	*at(-1) = *at(1) - 2*start
	*at(n) = *at(n - 2) + 2*end
}
