package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// locallyStable says that no small change of density or composition lowers the
// Helmholtz energy of a phase: its Hessian in molar concentrations is positive
// definite, which Cholesky's method finds out. A solution of the equilibrium
// equations that fails is no state of matter but lies inside a spinodal.
func locallyStable(p *helmholtz.Potentials, x *Composition, n int) bool {
	var l [helmholtz.MaxComponents][helmholtz.MaxComponents]float64
	for i := range n {
		for j := range i + 1 {
			v := p.LnFLnRho[i][j] * math.Sqrt(x[i]/x[j])
			for k := range j {
				v -= l[i][k] * l[j][k]
			}
			if i != j {
				l[i][j] = v / l[j][j]
				continue
			}
			if !(v > 0) {
				return false
			}
			l[i][i] = math.Sqrt(v)
		}
	}
	return true
}
