package vle

import (
	"math"

	"github.com/satline/satline/internal/helmholtz"
)

// A mixture is the state of the solver for a liquid and a vapor that together
// have the overall composition, at a pressure and a vapor fraction. The unknowns
// are the logarithms of both phases' molar concentrations and of temperature;
// the equations are equal fugacities, the pressure of each phase, and the
// balance of all components but the last.
type mixture struct {
	s             *System
	n             int
	p             float64
	z             Composition
	liquid, vapor *helmholtz.Evaluator
	u             vector // liquid, vapor, ln T
	pl, pv        helmholtz.Potentials
	x, y          Composition
	rhoL, rhoV    float64
	jac           matrix
	unstable      bool // a solution inside a spinodal was turned down
}

func (q *mixture) release() {
	q.liquid.Release()
	q.vapor.Release()
}

func (s *System) startMixture(q *mixture, p float64) {
	q.s, q.n, q.p, q.unstable = s, s.m.Components(), p, false
	q.z = s.m.MoleFractions()
	q.liquid, q.vapor = s.m.Evaluator(), s.m.Evaluator()
}

// between puts a guess for a vapor fraction into the unknowns: it lies on the
// straight line between two solutions.
func (q *mixture) between(a, b *vector, part float64) {
	for i := range 2*q.n + 1 {
		q.u[i] = a[i] + part*(b[i]-a[i])
	}
}

// unknownsOf is a point as the solver's unknowns.
func (q *mixture) unknownsOf(pt *Point) (u vector) {
	for i := range q.n {
		u[i] = math.Log(pt.RhoLiquid * pt.X[i])
		u[q.n+i] = math.Log(pt.RhoVapor * pt.Y[i])
	}
	u[2*q.n] = math.Log(pt.T)
	return u
}

// unpack turns the unknowns into compositions and densities and sets both
// evaluators.
func (q *mixture) unpack() {
	n := q.n
	t := math.Exp(q.u[2*n])
	q.rhoL, q.rhoV = 0, 0
	for i := range n {
		q.x[i], q.y[i] = math.Exp(q.u[i]), math.Exp(q.u[n+i])
		q.rhoL += q.x[i]
		q.rhoV += q.y[i]
	}
	for i := range n {
		q.x[i] /= q.rhoL
		q.y[i] /= q.rhoV
	}
	q.liquid.SetTX(t, &q.x)
	q.vapor.SetTX(t, &q.y)
}

// solve is Newton's method at a vapor fraction in moles.
func (q *mixture) solve(beta float64) bool {
	n := q.n
	size := 2*n + 1
	a := &q.jac
	for range 30 {
		q.unpack()
		q.liquid.PotentialsAt(q.rhoL, &q.pl)
		q.vapor.PotentialsAt(q.rhoV, &q.pv)
		t := q.liquid.T
		for i := range n {
			for j := range n {
				a[i][j] = -q.pl.LnFLnRho[i][j]
				a[i][n+j] = q.pv.LnFLnRho[i][j]
			}
			a[i][2*n] = t * (q.pv.LnFT[i] - q.pl.LnFT[i])
			a[i][size] = q.pl.LnF[i] - q.pv.LnF[i]
		}
		for j := range n {
			a[n][j], a[n][n+j] = q.pl.PLnRho[j]/q.p, 0
			a[n+1][j], a[n+1][n+j] = 0, q.pv.PLnRho[j]/q.p
		}
		a[n][2*n], a[n][size] = t*q.pl.DPDT/q.p, 1-q.pl.P/q.p
		a[n+1][2*n], a[n+1][size] = t*q.pv.DPDT/q.p, 1-q.pv.P/q.p
		for i := range n - 1 {
			row := &a[n+2+i]
			for j := range n {
				row[j] = -(1 - beta) * q.x[i] * q.x[j]
				row[n+j] = -beta * q.y[i] * q.y[j]
			}
			row[i] += (1 - beta) * q.x[i]
			row[n+i] += beta * q.y[i]
			row[2*n] = 0
			row[size] = q.z[i] - (1-beta)*q.x[i] - beta*q.y[i]
		}
		var step vector
		if !a.solve(size, &step) {
			return false
		}
		big, last, liquid, vapor := 0.0, 0.0, 0.0, 0.0
		for i := range n {
			liquid += q.x[i] * step[i]
			vapor += q.y[i] * step[n+i]
		}
		for i := range size {
			last = math.Max(last, math.Abs(step[i]))
		}
		big = math.Max(last/0.7, math.Abs(liquid)/0.1)
		big = math.Max(big, math.Abs(vapor)/0.7)
		big = math.Max(big, math.Abs(step[2*n])/0.04)
		if !(big < 1e6) {
			return false
		}
		scale := 1 / math.Max(1, big)
		for i := range size {
			q.u[i] += scale * step[i]
		}
		if last < 1e-8 {
			q.unpack()
			if !locallyStable(&q.pl, &q.x, n) || !locallyStable(&q.pv, &q.y, n) {
				q.unstable = true
				return false
			}
			return q.rhoL > q.rhoV*1.001
		}
	}
	return false
}
