package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// A mixture is the state of the solver for a liquid and a vapor that together
// have the overall composition, at a pressure and a vapor fraction. The unknowns
// are the logarithms of both phases' molar concentrations and of temperature;
// the equations are equal fugacities, the pressure of each phase, and the
// balance of all components but the most plentiful.
type mixture struct {
	s             *System
	n             int
	p             float64
	z             Composition
	most          int // the component that there is most of
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
	q.most = 0
	for i := range q.n {
		if q.z[i] > q.z[q.most] {
			q.most = i
		}
	}
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
	size := 2*q.n + 1
	for range 30 {
		q.evaluate()
		q.equilibrium(beta, size)
		var step vector
		if !q.jac.solve(size, &step) {
			return false
		}
		last, scale := q.limit(&step)
		if scale == 0 {
			return false
		}
		for i := range size {
			q.u[i] += scale * step[i]
		}
		if last < 1e-8 {
			q.unpack()
			return q.holds()
		}
	}
	return false
}

// evaluate fills both phases' potentials at the unknowns.
func (q *mixture) evaluate() {
	q.unpack()
	q.liquid.PotentialsAt(q.rhoL, &q.pl)
	q.vapor.PotentialsAt(q.rhoV, &q.pv)
}

// equilibrium fills the first 2n+1 rows of the Jacobian, with the residuals in
// the column after size. Where size has room for it, the vapor fraction is the
// last unknown.
func (q *mixture) equilibrium(beta float64, size int) {
	n := q.n
	a := &q.jac
	t := q.liquid.T
	for i := range n {
		for j := range n {
			a[i][j] = -q.pl.LnFLnRho[i][j]
			a[i][n+j] = q.pv.LnFLnRho[i][j]
		}
		a[i][2*n] = t * (q.pv.LnFT[i] - q.pl.LnFT[i])
		a[i][2*n+1] = 0
		a[i][size] = q.pl.LnF[i] - q.pv.LnF[i]
	}
	for j := range n {
		a[n][j], a[n][n+j] = q.pl.PLnRho[j]/q.p, 0
		a[n+1][j], a[n+1][n+j] = 0, q.pv.PLnRho[j]/q.p
	}
	a[n][2*n], a[n][2*n+1] = t*q.pl.DPDT/q.p, 0
	a[n+1][2*n], a[n+1][2*n+1] = t*q.pv.DPDT/q.p, 0
	a[n][size], a[n+1][size] = 1-q.pl.P/q.p, 1-q.pv.P/q.p
	// Each balance is in shares of what there is of the component, or rounding would
	// leave nothing of a trace. The most plentiful one follows from the others.
	at := n + 2
	for i := range n {
		if i == q.most {
			continue
		}
		row := &a[at]
		at++
		x, y := q.x[i]/q.z[i], q.y[i]/q.z[i]
		for j := range n {
			row[j] = -(1 - beta) * x * q.x[j]
			row[n+j] = -beta * y * q.y[j]
		}
		row[i] += (1 - beta) * x
		row[n+i] += beta * y
		row[2*n] = 0
		row[2*n+1] = y - x
		row[size] = 1 - (1-beta)*x - beta*y
	}
}

// limit returns the largest part of a step, and by what to scale it so that it
// stays within the longest steps: 0 where it is no step at all.
func (q *mixture) limit(step *vector) (last, scale float64) {
	n := q.n
	liquid, vapor := 0.0, 0.0
	for i := range n {
		liquid += q.x[i] * step[i]
		vapor += q.y[i] * step[n+i]
	}
	for i := range 2*n + 1 {
		last = math.Max(last, math.Abs(step[i]))
	}
	big := math.Max(last/longestInConcentration, math.Abs(liquid)/longestInLiquid)
	big = math.Max(big, math.Abs(vapor)/longestInConcentration)
	big = math.Max(big, math.Abs(step[2*n])/longestInT)
	if !(big < 1e6) {
		return last, 0
	}
	return last, 1 / math.Max(1, big)
}

// holds reports whether the solution is two phases, each of them stable.
func (q *mixture) holds() bool {
	if !locallyStable(&q.pl, &q.x, q.n) || !locallyStable(&q.pv, &q.y, q.n) {
		q.unstable = true
		return false
	}
	return q.rhoL > q.rhoV*1.001
}

// splits reports whether a liquid between those of two solutions would separate
// into two.
func (q *mixture) splits(a, b *vector) bool {
	const parts = 16
	for i := 1; i < parts; i++ {
		q.between(a, b, float64(i)/parts)
		q.unpack()
		rho, err := density(q.liquid, q.p, Liquid)
		if err != nil {
			continue
		}
		if q.liquid.PotentialsAt(rho, &q.pl); !locallyStable(&q.pl, &q.x, q.n) {
			return true
		}
	}
	return false
}

// solveFor is Newton's method with the vapor fraction, which starts at beta, as
// one more unknown, and as one more equation that property k of the whole is the
// one wanted. reach is what k gains from the bubble to the dew point.
func (q *mixture) solveFor(k property, want, reach, beta float64) (Flash, bool) {
	size := 2*q.n + 2
	before := 0.0 // the last step
	for range 12 {
		q.evaluate()
		q.equilibrium(beta, size)
		l, v := q.liquid.StateAt(q.rhoL), q.vapor.StateAt(q.rhoV)
		f := q.s.combine(q.p, beta, l, v, q.x, q.y)
		row := q.jac[size-1][:size+1]
		q.derivatives(k, beta, &l, &v, row)
		row[size] = want - q.s.total(k, &f)
		for i := range row {
			row[i] /= reach
		}
		var step vector
		if !q.jac.solve(size, &step) {
			return Flash{}, false
		}
		last, scale := q.limit(&step)
		if scale == 0 {
			return Flash{}, false
		}
		// No phase loses more than half of what is there of it.
		change := step[size-1]
		least := beta
		if change > 0 {
			least = 1 - beta
		}
		if most := 0.5 * least; math.Abs(change)*scale > most {
			scale = most / math.Abs(change)
		}
		for i := range size - 1 {
			q.u[i] += scale * step[i]
		}
		beta += scale * change
		last = math.Max(last, math.Abs(change))
		rest := last * last / before // the next step, at the pace of this one
		before = last
		if scale == 1 && (rest < 1e-10 || last < 1e-8) {
			q.unpack()
			f = q.s.combine(q.p, beta, q.liquid.StateAt(q.rhoL), q.vapor.StateAt(q.rhoV), q.x, q.y)
			if math.Abs(q.s.total(k, &f)-want) < 1e-10*math.Abs(reach) {
				return f, q.holds()
			}
		}
	}
	return Flash{}, false
}

// derivatives fills row with those of property k of the whole.
//
// Partial molar enthalpies come from the fugacities, h = −RT² (∂ln f/∂T) at
// constant pressure and composition, without the ideal gas. What that adds, and
// to entropies the chemical potential, is equal in both phases and cancels where
// the components balance, as they do after a step or two.
func (q *mixture) derivatives(k property, beta float64, l, v *helmholtz.State, row []float64) {
	n := q.n
	clear(row)
	switch k {
	case temperature:
		row[2*n] = l.T
		return
	case quality:
		mean := q.s.m.MolarMassOf(&q.y)
		for j := range n {
			row[n+j] = beta * q.y[j] * (q.s.m.Fluid(j).MolarMass - mean)
		}
		row[2*n+1] = mean
		return
	}
	hL := q.phaseDerivatives(k, &q.pl, &q.x, l, 1-beta, row[:n], &row[2*n])
	hV := q.phaseDerivatives(k, &q.pv, &q.y, v, beta, row[n:2*n], &row[2*n])
	row[2*n+1] = hV - hL
	if k == entropy {
		for i := range row {
			row[i] /= l.T
		}
	}
}

// phaseDerivatives does that for one phase, of which there is so much, and for an
// entropy times T. It returns the phase's own enthalpy, as far as it counts.
func (q *mixture) phaseDerivatives(
	k property, pt *helmholtz.Potentials, x *Composition, s *helmholtz.State, much float64,
	byLnRho []float64, byLnT *float64,
) (mean float64) {
	stiffness := 0.0 // ∂p/∂ln ρ
	for _, v := range pt.PLnRho[:q.n] {
		stiffness += v
	}
	expansion := pt.DPDT / stiffness // −∂ln ρ/∂T at constant pressure
	var h Composition
	for i := range q.n {
		byDensity := 0.0
		for _, v := range pt.LnFLnRho[i][:q.n] {
			byDensity += v
		}
		h[i] = -q.s.m.GasConstant() * s.T * s.T * (pt.LnFT[i] - byDensity*expansion)
		mean += x[i] * h[i]
	}
	byP := -s.T * expansion / s.Rho
	if k == enthalpy {
		byP += 1 / s.Rho
	}
	for j := range byLnRho {
		byLnRho[j] = much * (x[j]*(h[j]-mean) + byP*pt.PLnRho[j])
	}
	*byLnT += much * s.T * (s.Cp + byP*pt.DPDT)
	return mean
}
