package psychro

import (
	"math"
	"sync"

	"github.com/satline/satline/internal/base/root"
)

// if97Ln returns ln(p/Pa) of saturation over water at t kelvin, and its slope per
// kelvin: equation 30 of the industrial formulation IAPWS-IF97, R7-97(2012), from
// 273.15 to 647.096 K.
func if97Ln(t float64) (ln, slope float64) {
	const (
		n1, n2     = 0.11670521452767e4, -0.72421316703206e6
		n3, n4, n5 = -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7
		n6, n7, n8 = 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6
		n9, n10    = -0.23855557567849, 0.65017534844798e3
	)
	u := 1 / (t - n10)
	x := t + n9*u
	dx := 1 - n9*u*u
	a, da := x*(x+n1)+n2, 2*x+n1
	b, db := x*(n3*x+n4)+n5, 2*n3*x+n4
	c, dc := x*(n6*x+n7)+n8, 2*n6*x+n7
	root := math.Sqrt(b*b - 4*a*c)
	dRoot := (b*db - 2*(da*c+a*dc)) / root
	beta := 2 * c / (root - b)
	ln = 4*math.Log(beta) + math.Log(1e6)
	slope = 4 * (dc/c - (dRoot-db)/(root-b)) * dx
	return ln, slope
}

// if97Boundary is the saturation of RP-1485: IF97 over water, R14-08 over ice. Both
// take 611.657 Pa for the triple point, and cross within a microkelvin of it.
var if97Boundary = sync.OnceValue(func() *boundary { return joined(if97Ln) })

// joined is the boundary of an equation over water and R14-08 over ice, which meet
// where the two curves cross.
func joined(water func(t float64) (ln, slope float64)) *boundary {
	join := root.Rising(func(t float64) float64 {
		ice, _ := sublimationLn(t)
		liquid, _ := water(t)
		return ice - liquid
	}, triplePoint-0.01, triplePoint+0.01)
	return newBoundary(func(t float64) (ln, slope float64) {
		if t < join {
			return sublimationLn(t)
		}
		return water(t)
	}, join)
}
