package diagnose

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// A triangle is the lower Cholesky factor of a covariance, kept on the stack of
// the caller so that weighing an explanation allocates nothing.
type triangle struct {
	n int
	l [features][features]float64
}

// factor computes the factor of the n×n matrix a in place; false where a is not
// positive definite.
func (t *triangle) factor(n int) bool {
	t.n = n
	for i := range n {
		li := &t.l[i]
		for j := range i + 1 {
			lj := &t.l[j]
			sum := li[j]
			for k, x := range lj[:j] {
				sum -= li[k] * x
			}
			if i > j {
				li[j] = sum / lj[j]
				continue
			}
			if !(sum > 0) {
				return false
			}
			li[i] = math.Sqrt(sum)
		}
	}
	return true
}

// whiten replaces x by L⁻¹x.
func (t *triangle) whiten(x []float64) {
	for i := range t.n {
		sum := x[i]
		for k := range i {
			sum -= t.l[i][k] * x[k]
		}
		x[i] = sum / t.l[i][i]
	}
}

// tails is the degrees of freedom of the Student t that stands for the Gaussian:
// few enough that one odd reading does not settle the matter, enough that
// a clear picture does (Lange, Little and Taylor 1989, JASA 84:881-896).
const tails = 10

// logStudent is the log density, up to a constant that depends on n alone, of
// a multivariate Student t whose covariance was factored, at a point whose
// squared Mahalanobis distance by that covariance is d2.
func logStudent(n int, logDet, d2 float64) float64 {
	return -0.5*logDet - 0.5*(tails+float64(n))*helmholtz.Log(1+d2/(tails-2))
}
