package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// maxUnknowns is the size of the largest system: two phases' concentrations,
// temperature and vapor fraction.
const maxUnknowns = 2*helmholtz.MaxComponents + 2

// A vector is the unknowns of a system, or a step of them.
type vector [maxUnknowns]float64

// A matrix is a system of equations with the right-hand side in the column
// after the last unknown.
type matrix [maxUnknowns][maxUnknowns + 1]float64

// solve is Gauss's elimination with row pivoting. It overwrites the matrix.
func (a *matrix) solve(n int, x *vector) bool {
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		if d := math.Abs(a[p][c]); !(d > 0) || math.IsInf(d, 0) {
			return false
		}
		if p != c {
			a[p], a[c] = a[c], a[p]
		}
		inv := 1 / a[c][c]
		for r := c + 1; r < n; r++ {
			f := a[r][c] * inv
			if f == 0 {
				continue
			}
			for k := c + 1; k <= n; k++ {
				a[r][k] -= f * a[c][k]
			}
		}
	}
	for r := n - 1; r >= 0; r-- {
		v := a[r][n]
		for k := r + 1; k < n; k++ {
			v -= a[r][k] * x[k]
		}
		x[r] = v / a[r][r]
		if math.IsNaN(x[r]) {
			return false
		}
	}
	return true
}
