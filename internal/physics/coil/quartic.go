package coil

import "math"

// quartic is the enthalpy of saturated air as a polynomial in z; see wet.
type quartic [5]float64

// saturation interpolates the enthalpy of saturated air at five equal steps
// from t to t+span.
func saturation(t, span, p, hw float64) (q quartic) {
	var y [5]float64
	for i := range y {
		ti := t + span*float64(i)/4
		w, _ := saturatedAt(ti, p)
		y[i] = enthalpy(ti, w, hw)
	}
	// Newton's forward differences in u = 4z, expanded.
	d1 := y[1] - y[0]
	d2 := y[2] - 2*y[1] + y[0]
	d3 := y[3] - 3*y[2] + 3*y[1] - y[0]
	d4 := y[4] - 4*y[3] + 6*y[2] - 4*y[1] + y[0]
	return quartic{
		y[0], 4 * (d1 - d2/2 + d3/3 - d4/4), 16 * (d2/2 - d3/2 + d4*11/24), 64 * (d3/6 - d4/4),
		256 * (d4 / 24),
	}
}

func (q *quartic) at(z float64) float64 {
	return q[0] + z*(q[1]+z*(q[2]+z*(q[3]+z*q[4])))
}

func (q *quartic) slope(z float64) float64 {
	return q[1] + z*(2*q[2]+z*(3*q[3]+z*4*q[4]))
}

// e is E of wet.
func (q *quartic) e(z float64) float64 {
	return z * (2*q[2] + z*(1.5*q[3]+z*4/3*q[4]))
}

// under returns the z of the surface under air of enthalpy h. The left side of
// H(z) + ry·z = h rises and bends upward, so Newton's method from z = 1 comes
// down to the root without passing it.
func (q *quartic) under(h, ry float64) float64 {
	z := 1.0
	for range 20 {
		step := (q.at(z) + ry*z - h) / (q.slope(z) + ry)
		z -= step
		if math.Abs(step) < quadratic {
			break
		}
	}
	return min(max(z, 0), 1)
}

// decay returns s = ln(z1/z2) over a length x of coil. The left side of the
// integrated equation rises and bends downward in s, so Newton's method comes up
// to the root from below after its first step.
func (q *quartic) decay(z1, x, ry float64) float64 {
	a, e1 := q[1]+ry, q.e(z1)
	// The slope falls along the coil; halfway is a fair mean of it.
	s := x / (q.slope(z1) + ry)
	s = x / (q.slope(z1*max(0, 1-s/2)) + ry)
	for range 20 {
		z := z1 * math.Exp(-s)
		step := (x - a*s - e1 + q.e(z)) / (q.slope(z) + ry)
		s += step
		if math.Abs(step) < quadratic*(1+s) {
			break
		}
	}
	return max(s, 0)
}

// quadratic is a step of Newton's method after which the next is below rounding.
const quadratic = 1e-7
