package table

import "math"

// An inverse is temperature against pressure, the other way round from a pressure
// curve. Nothing of it is stored: it is made from the curve.
type inverse struct {
	curve []Cubic // eighth root of pressure
	low   float64 // pressure at the start of the curve
	// lowest is a little below low, so that a pressure that was computed for the
	// very start in another way is taken for it.
	lowest float64
	grid   Octaves
	// cells hold the temperature, or NaN where a cubic does not follow the inverse
	// closely enough: near a critical point, where some curves level out. There the
	// curve itself is searched. Nodes have the values and slopes of the inverse, so
	// both kinds of cells join smoothly.
	cells []Cubic
}

const (
	// closely is how near a cell's cubic is to the inverse, in kelvin.
	closely = 2e-5

	eighthRoot = BubblePressure // any curve that is stored as its eighth root
)

func newInverse(curve []Cubic, temperatures Root) inverse {
	v := inverse{curve: curve}
	n := len(curve)
	v.low = eighthRoot.Expand(curve[0].At(0))
	v.lowest = v.low * (1 - 1e-5)
	v.grid = NewOctaves(v.lowest, eighthRoot.Expand(curve[n-1].At(1)))
	nodes := v.grid.Cells() + 1
	values, slopes := make([]float64, nodes), make([]float64, nodes)
	u := 0.0
	for i := range nodes {
		p := v.grid.Node(i)
		u = v.refine(u, p)
		_, perPressure := v.step(u, p)
		values[i], slopes[i] = temperatures.At(u), temperatures.slope(u)*perPressure
		u += perPressure * v.grid.Width(i)
	}
	v.cells = Hermite(values, slopes, v.grid.Width)
	for i := range v.cells {
		for _, x := range [...]float64{0.25, 0.5, 0.75} {
			p := v.grid.Node(i) + x*v.grid.Width(i)
			u := temperatures.place(v.cells[i].At(x))
			if step, _ := v.step(u, p); p >= v.low &&
				!(math.Abs(step*temperatures.slope(u)) < closely) {
				v.cells[i][0] = math.NaN()
				break
			}
		}
	}
	return v
}

// step returns the step of Newton's method from place u toward the pressure p, and
// the places per pascal there.
func (v *inverse) step(u, p float64) (step, perPressure float64) {
	i := min(max(int(u), 0), len(v.curve)-1)
	c := &v.curve[i]
	x := u - float64(i)
	y := c.At(x)
	y2 := y * y
	y4 := y2 * y2
	perPressure = 1 / (8 * y4 * y2 * y * c.Slope(x))
	return (p - y4*y4) * perPressure, perPressure
}

// refine returns the place of the pressure p from a guess. It may lie before the
// start, where the first cell is continued.
func (v *inverse) refine(u, p float64) float64 {
	for range 8 {
		step, _ := v.step(u, p)
		if !(math.Abs(step) < 0.5) {
			break
		}
		if u += step; math.Abs(step) < 1e-8 {
			return u
		}
	}
	return v.search(p)
}

// search finds the place on the curve, counted in cells, at which it has the
// pressure p: the cell by halving, the place in it by Newton's method.
func (v *inverse) search(p float64) float64 {
	y := eighthRoot.Compress(p)
	low, high := 0, len(v.curve)
	for high-low > 1 {
		if mid := (low + high) / 2; v.curve[mid][0] <= y {
			low = mid
		} else {
			high = mid
		}
	}
	c := &v.curve[low]
	a, b := 0.0, 1.0
	x := 0.5
	for range 60 {
		f := c.At(x) - y
		if f > 0 {
			b = x
		} else {
			a = x
		}
		next := x - f/c.Slope(x)
		if !(next > a && next < b) {
			next = (a + b) / 2
		}
		if math.Abs(next-x) < 1e-12 {
			break
		}
		x = next
	}
	return float64(low) + x
}
