package table

import "math"

// A Cubic is one cell of a curve: c0 + c1 t + c2 t² + c3 t³ for t from 0 to 1
// across the cell. It fills half a cache line, so that a lookup touches one.
type Cubic [4]float64

// At evaluates the cell at t.
func (c *Cubic) At(t float64) float64 { return c[0] + t*(c[1]+t*(c[2]+t*c[3])) }

// Slope evaluates the derivative of the cell by t.
func (c *Cubic) Slope(t float64) float64 { return c[1] + t*(2*c[2]+t*3*c[3]) }

// Shape says what is known of a curve beyond its nodes.
type Shape uint8

const (
	// Free curves may turn, as the enthalpy of saturated vapor does.
	Free Shape = iota
	// Monotone curves may not: slopes are limited so that no cell overshoots
	// its nodes.
	Monotone
)

// Hermite joins nodes with cubics that have the given values and slopes at both
// ends, so the curve and its first derivative are continuous. Cell i lies between
// nodes i and i+1 and is width(i) wide, in the unit that slopes are per. There is
// one cell less than nodes.
//
// For a Monotone curve slopes are limited by the sufficient condition of Fritsch
// and Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J. Numer. Anal. 17
// (1980) 238-246: with α and β the slopes at the ends of a cell over its secant,
// both are at least 0 and α² + β² ≤ 9. Where nodes are dense enough for their
// curve the limit does not act, and the error is that of the Hermite cubic,
// |f⁗|/384 in cell widths.
func Hermite(values, slopes []float64, width func(cell int) float64, shape Shape) []Cubic {
	if shape == Monotone {
		slopes = limited(values, slopes, width)
	}
	cells := make([]Cubic, max(len(values)-1, 0))
	for i := range cells {
		w := width(i)
		y0, m0, m1 := values[i], slopes[i]*w, slopes[i+1]*w
		d := values[i+1] - y0
		cells[i] = Cubic{y0, m0, 3*d - 2*m0 - m1, m0 + m1 - 2*d}
	}
	return cells
}

// limited returns slopes cut to the Fritsch-Carlson region. A slope shared by two
// cells is cut by the stricter, so the derivative stays continuous.
func limited(values, slopes []float64, width func(cell int) float64) []float64 {
	m := append([]float64(nil), slopes...)
	for i := 0; i+1 < len(values); i++ {
		secant := (values[i+1] - values[i]) / width(i)
		if secant == 0 {
			m[i], m[i+1] = 0, 0
			continue
		}
		a, b := max(m[i]/secant, 0), max(m[i+1]/secant, 0)
		if r := math.Hypot(a, b); r > 3 {
			a, b = 3*a/r, 3*b/r
		}
		m[i], m[i+1] = a*secant, b*secant
	}
	return m
}
