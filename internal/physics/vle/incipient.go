package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// An incipient is the state of the solver for bubble and dew points: the bulk
// phase, which has the overall composition, and the first trace of another.
//
// The unknowns are logarithms: of the n molar concentrations of the trace, of
// the bulk density and of temperature. The equations are n equal fugacities,
// equal pressure, and what is specified. Densities are unknowns like the others,
// so that an iteration evaluates each phase once.
type incipient struct {
	s       *System
	n       int
	vapor   bool // the trace is vapor: a bubble point
	bulk    *helmholtz.Evaluator
	trace   *helmholtz.Evaluator
	z       Composition
	u       vector
	pb, pt  helmholtz.Potentials
	y       Composition // composition of the trace
	rhoB    float64
	rhoT    float64
	jac     matrix
	bulkSet float64 // temperature for which bulk is prepared
	// unstable remembers that a solution inside a spinodal was turned down.
	unstable bool
}

// What a solution is asked to have.
type specification struct {
	kind  specKind
	value float64 // ln T, p or σ
}

type specKind uint8

const (
	specT specKind = iota
	specP
	specSigma // ln of the trace's density over the bulk's
)

func (q *incipient) release() {
	q.bulk.Release()
	q.trace.Release()
}

// start makes a solver. Its memory is the caller's.
func (s *System) start(q *incipient, vapor bool) {
	q.s, q.n, q.vapor = s, s.m.Components(), vapor
	q.z = s.m.MoleFractions()
	q.bulk, q.trace = s.m.Evaluator(), s.m.Evaluator()
	q.bulkSet, q.unstable = 0, false
}

// unpack turns the unknowns into densities, the trace's composition and
// temperature, to which it sets both evaluators.
func (q *incipient) unpack() (t float64) {
	n := q.n
	t = math.Exp(q.u[n+1])
	q.rhoB = math.Exp(q.u[n])
	q.rhoT = 0
	for i := range n {
		q.y[i] = math.Exp(q.u[i])
		q.rhoT += q.y[i]
	}
	for i := range n {
		q.y[i] /= q.rhoT
	}
	if q.bulkSet != t {
		q.bulk.SetT(t)
		q.bulkSet = t
	}
	q.trace.SetTX(t, &q.y)
	return t
}

// evaluate fills both phases' potentials at the unknowns.
func (q *incipient) evaluate() {
	q.unpack()
	q.bulk.PotentialsAt(q.rhoB, &q.pb)
	q.trace.PotentialsAt(q.rhoT, &q.pt)
}

// system fills the Jacobian with the residuals in its last column. The size is
// returned: temperature is no unknown where it is specified.
func (q *incipient) system(spec specification) int {
	n := q.n
	t := q.bulk.T
	a := &q.jac
	scale := 1 / (math.Min(q.rhoB, q.rhoT) * q.s.m.GasConstant() * t)
	size := n + 2
	if spec.kind == specT {
		size = n + 1
	}
	var bulkP float64 // ∂p/∂ln ρ of the bulk
	for j := range n {
		bulkP += q.pb.PLnRho[j]
		a[n][j] = scale * q.pt.PLnRho[j]
	}
	for i := range n {
		sum := 0.0
		for j := range n {
			a[i][j] = q.pt.LnFLnRho[i][j]
			sum += q.pb.LnFLnRho[i][j]
		}
		a[i][n] = -sum
		a[i][n+1] = t * (q.pt.LnFT[i] - q.pb.LnFT[i])
		a[i][size] = q.pb.LnF[i] - q.pt.LnF[i]
	}
	a[n][n] = -scale * bulkP
	a[n][n+1] = scale * t * (q.pt.DPDT - q.pb.DPDT)
	a[n][size] = scale * (q.pb.P - q.pt.P)
	if size == n+1 {
		return size
	}
	last := &a[n+1]
	switch spec.kind {
	case specP:
		w := 1 / spec.value
		if q.vapor {
			for j := range n {
				last[j] = w * q.pt.PLnRho[j]
			}
			last[n] = 0
			last[n+1] = w * t * q.pt.DPDT
			last[size] = 1 - w*q.pt.P
		} else {
			clear(last[:n])
			last[n] = w * bulkP
			last[n+1] = w * t * q.pb.DPDT
			last[size] = 1 - w*q.pb.P
		}
	case specSigma:
		for j := range n {
			last[j] = q.y[j]
		}
		last[n], last[n+1] = -1, 0
		last[size] = spec.value - math.Log(q.rhoT/q.rhoB)
	}
	return size
}

// The longest steps of Newton's method in the logarithms of the unknowns, beyond
// which the equations are no longer as good as straight; longer ones are scaled
// down.
const (
	longestInConcentration = 0.7  // a factor of two, of a component in a phase or of a vapor
	longestInLiquid        = 0.1  // the density of a liquid, whose pressure is steep
	longestInT             = 0.04 // by which the pressure of saturation changes by a third or so
)

// newton iterates from the unknowns. It says whether it came to a solution in
// which the two phases differ.
func (q *incipient) newton(spec specification, iterations int) bool {
	n := q.n
	if spec.kind == specT {
		q.u[n+1] = spec.value
	}
	for k := range iterations {
		q.evaluate()
		size := q.system(spec)
		var step vector
		if !q.jac.solve(size, &step) {
			return false
		}
		big, total := 0.0, 0.0
		for i := range n {
			big = math.Max(big, math.Abs(step[i]))
			total += q.y[i] * step[i]
		}
		last := big
		big /= longestInConcentration
		liquidStep, vaporStep := step[n], total
		if !q.vapor {
			liquidStep, vaporStep = total, step[n]
		}
		big = math.Max(big, math.Abs(liquidStep)/longestInLiquid)
		big = math.Max(big, math.Abs(vaporStep)/longestInConcentration)
		last = math.Max(last, math.Abs(step[n]))
		if size > n+1 {
			big = math.Max(big, math.Abs(step[n+1])/longestInT)
			last = math.Max(last, math.Abs(step[n+1]))
		}
		if !(big < 1e6) {
			return false
		}
		scale := 1.0
		if big > 1 {
			scale = 1 / big
		}
		for i := range size {
			q.u[i] += scale * step[i]
		}
		// Next to a critical point the matrix is all but singular, and rounding
		// leaves steps that do not shrink further.
		if last < 1e-8 {
			return q.apart() > 1e-3 && q.stable()
		}
		if k > 8 && last < 1e-7 {
			return q.apart() > 0.02 && q.stable()
		}
	}
	return false
}

func (q *incipient) stable() bool {
	ok := locallyStable(&q.pb, &q.z, q.n) && locallyStable(&q.pt, &q.y, q.n)
	if !ok {
		q.unstable = true
	}
	return ok
}

// apart is how far the trace is from being the bulk over again, which satisfies
// all equations too: the largest ratio of a component's concentrations, as a
// logarithm.
func (q *incipient) apart() float64 {
	far := 0.0
	for i := range q.n {
		far = math.Max(far, math.Abs(q.u[i]-q.u[q.n]-math.Log(q.z[i])))
	}
	return far
}

// point is the solution.
func (q *incipient) point() (Point, error) {
	pt := Point{T: q.unpack()}
	if q.vapor {
		pt.X, pt.Y = q.z, q.y
		pt.RhoLiquid, pt.RhoVapor = q.rhoB, q.rhoT
		pt.P, _ = q.trace.PressureAt(q.rhoT)
	} else {
		pt.X, pt.Y = q.y, q.z
		pt.RhoLiquid, pt.RhoVapor = q.rhoT, q.rhoB
		pt.P, _ = q.bulk.PressureAt(q.rhoB)
	}
	if !(pt.P > 0 && pt.RhoLiquid > pt.RhoVapor) || math.IsInf(pt.P, 0) {
		return Point{}, ErrNotConverged
	}
	return pt, nil
}
