package psychro

import "math"

// A curve is a smooth function of one argument kept as one polynomial of
// degree 6 per cell of equal width. It is evaluated in a fifth of the time of
// the logarithm and exponential that a saturation equation takes.
type curve struct {
	start, perWidth float64
	cells           []cell
}

// cell holds the coefficients in s, which runs from −1 to 1 across the cell.
type cell [7]float64

// newCurve interpolates f at the Chebyshev nodes of n cells from start. A kink
// of f does no harm on a cell boundary, for no node lies on one.
func newCurve(f func(float64) float64, start, width float64, n int) curve {
	c := curve{start: start, perWidth: 1 / width, cells: make([]cell, n)}
	var s [7]float64
	for i := range s {
		s[i] = -math.Cos(math.Pi * (2*float64(i) + 1) / 14)
	}
	for i := range c.cells {
		middle := start + (float64(i)+0.5)*width
		var d [7]float64
		for j := range d {
			d[j] = f(middle + 0.5*width*s[j])
		}
		for order := 1; order < 7; order++ {
			for j := 6; j >= order; j-- {
				d[j] = (d[j] - d[j-1]) / (s[j] - s[j-order])
			}
		}
		// Newton's form to powers of s.
		var a cell
		a[0] = d[6]
		for j := 5; j >= 0; j-- {
			for k := 6; k > 0; k-- {
				a[k] = a[k-1] - s[j]*a[k]
			}
			a[0] = d[j] - s[j]*a[0]
		}
		c.cells[i] = a
	}
	return c
}

// locate returns the cell of x and where in it x is. An x beyond the ends
// belongs to the end cells.
func (c *curve) locate(x float64) (*cell, float64) {
	u := (x - c.start) * c.perWidth
	i := int(u)
	if i < 0 {
		i = 0
	} else if i >= len(c.cells) {
		i = len(c.cells) - 1
	}
	return &c.cells[i], 2*(u-float64(i)) - 1
}

func (c *curve) at(x float64) float64 {
	a, s := c.locate(x)
	s2 := s * s
	return a[0] + a[1]*s + s2*(a[2]+a[3]*s+s2*(a[4]+a[5]*s+s2*a[6]))
}

// withSlopes returns the value at x and the first two derivatives.
func (c *curve) withSlopes(x float64) (y, first, second float64) {
	a, s := c.locate(x)
	s2 := s * s
	y = a[0] + a[1]*s + s2*(a[2]+a[3]*s+s2*(a[4]+a[5]*s+s2*a[6]))
	first = a[1] + 2*a[2]*s + s2*(3*a[3]+4*a[4]*s+s2*(5*a[5]+6*a[6]*s))
	second = 2*a[2] + 6*a[3]*s + s2*(12*a[4]+20*a[5]*s+s2*30*a[6])
	w := 2 * c.perWidth
	return y, first * w, second * w * w
}
