package root

import "math"

// Pair returns where two functions of x and y are both within 1 of zero, from a place close to that
// and the slopes that a step of each shows there: Broyden's method (C. G. Broyden, "A class of
// methods for solving nonlinear simultaneous equations", Mathematics of Computation 19, 1965,
// pp. 577-593). It is false where that has not come to rest after a few steps, or the functions
// are not numbers.
func Pair(
	f func(x, y float64) (u, v float64), x, y, stepX, stepY float64,
) (_, _ float64, ok bool) {
	u, v := f(x, y)
	slope := func(x, y, step float64) (float64, float64) {
		atU, atV := f(x, y)
		return (atU - u) / step, (atV - v) / step
	}
	ux, vx := slope(x+stepX, y, stepX)
	uy, vy := slope(x, y+stepY, stepY)
	for range 12 {
		if math.Abs(u) <= 1 && math.Abs(v) <= 1 {
			return x, y, true
		}
		det := ux*vy - uy*vx
		dx, dy := (uy*v-vy*u)/det, (vx*u-ux*v)/det
		x, y = x+dx, y+dy
		u, v = f(x, y)
		// What is left of u and v is what the slopes were wrong by along the step.
		length := dx*dx + dy*dy
		ux, uy = ux+u*dx/length, uy+u*dy/length
		vx, vy = vx+v*dx/length, vy+v*dy/length
	}
	return x, y, false
}
