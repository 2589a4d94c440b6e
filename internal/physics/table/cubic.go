package table

import "math"

// A Cubic is one cell of a curve: c0 + c1 t + c2 t² + c3 t³ for t from 0 to 1
// across the cell. It fills half a cache line, so that a lookup touches one.
type Cubic [4]float64

// At evaluates the cell at t.
func (c *Cubic) At(t float64) float64 { return c[0] + t*(c[1]+t*(c[2]+t*c[3])) }

// Slope evaluates the derivative of the cell by t.
func (c *Cubic) Slope(t float64) float64 { return c[1] + t*(2*c[2]+t*3*c[3]) }

// Hermite joins nodes with cubics that have the given values and slopes at both
// ends, so the curve and its first derivative are continuous. Cell i lies between
// nodes i and i+1 and is width(i) wide, in the unit that slopes are per. There is
// one cell less than nodes.
//
// Where values and slopes rise all along, or fall, so does the curve: slopes are
// limited by the sufficient condition of Fritsch and Carlson, "Monotone Piecewise Cubic
// Interpolation", SIAM J. Numer. Anal. 17 (1980) 238-246: with α and β the slopes
// at the ends of a cell over its secant, α² + β² ≤ 9.
// Where nodes are dense enough for their curve the limit does not act, and the
// error is that of the Hermite cubic, |f⁗|/384 in cell widths. A curve that turns,
// as the enthalpy of saturated vapor does, and the density of water at 4 °C, is
// left as it is.
func Hermite(values, slopes []float64, width func(cell int) float64) []Cubic {
	if monotone(values, slopes) {
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

func monotone(values, slopes []float64) bool {
	rises, falls := true, true
	for i := range values {
		rises = rises && slopes[i] >= 0 && (i == 0 || values[i] >= values[i-1])
		falls = falls && slopes[i] <= 0 && (i == 0 || values[i] <= values[i-1])
	}
	return rises || falls
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
		a, b := m[i]/secant, m[i+1]/secant
		if r := math.Hypot(a, b); r > 3 {
			a, b = 3*a/r, 3*b/r
		}
		m[i], m[i+1] = a*secant, b*secant
	}
	return m
}
