package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// CriticalPoint is where a liquid and a vapor of the overall composition become
// one: K, Pa, mol/m³.
type CriticalPoint struct{ T, P, Rho float64 }

// Critical is the critical point. A pure fluid's is the published one. A
// blend's solves the criterion of R. A. Heidemann and A. M. Khalil, AIChE J. 26,
// 1980, pp. 769-779, in molar concentrations: the Hessian of the Helmholtz
// energy of a unit volume has an eigenvalue of 0 there, and the third derivative
// along its eigenvector is 0 too. The Hessian is analytic, the third derivative
// its central difference.
func (s *System) Critical() (CriticalPoint, error) {
	if s.pure() {
		f := s.m.Fluid(0)
		return CriticalPoint{f.CriticalT, f.CriticalP, f.CriticalRho}, nil
	}
	s.once.Do(s.trace)
	return s.envelope.critical, s.envelope.err
}

// A stability is the Hessian's smallest eigenvalue at a temperature and density,
// in units in which an ideal gas has 1, and its eigenvector.
type stability struct {
	lambda float64
	v      [helmholtz.MaxComponents]float64
}

func (s *System) stabilityAt(e *helmholtz.Evaluator, t, rho float64) stability {
	n := s.m.Components()
	z := s.m.MoleFractions()
	e.SetT(t)
	var p helmholtz.Potentials
	e.PotentialsAt(rho, &p)
	var a [helmholtz.MaxComponents][helmholtz.MaxComponents]float64
	for i := range n {
		for j := range n {
			a[i][j] = p.LnFLnRho[i][j] * math.Sqrt(z[i]/z[j])
		}
	}
	return smallestEigenvalue(&a, n)
}

// smallestEigenvalue is Jacobi's method of rotations for a symmetric matrix.
func smallestEigenvalue(a *square, n int) (s stability) {
	var v square
	for i := range n {
		v[i][i] = 1
	}
	for range 30 {
		off, diag := 0.0, 0.0
		for i := range n {
			diag += a[i][i] * a[i][i]
			for j := range i {
				off += a[i][j] * a[i][j]
			}
		}
		if !(off > 1e-32*diag) {
			break
		}
		for p := range n {
			for q := p + 1; q < n; q++ {
				if a[p][q] != 0 {
					rotate(a, &v, n, p, q)
				}
			}
		}
	}
	least := 0
	for i := range n {
		if a[i][i] < a[least][least] {
			least = i
		}
	}
	s.lambda = a[least][least]
	for i := range n {
		s.v[i] = v[i][least]
	}
	return s
}

type square = [helmholtz.MaxComponents][helmholtz.MaxComponents]float64

// rotate turns a in the plane of p and q so that what stands there off the diagonal is gone, and
// v with it.
func rotate(a, v *square, n, p, q int) {
	theta := (a[q][q] - a[p][p]) / (2 * a[p][q])
	t := 1 / (math.Abs(theta) + math.Sqrt(theta*theta+1))
	if theta < 0 {
		t = -t
	}
	c := 1 / math.Sqrt(t*t+1)
	sn := t * c
	for k := range n {
		x, y := a[k][p], a[k][q]
		a[k][p], a[k][q] = c*x-sn*y, sn*x+c*y
	}
	for k := range n {
		x, y := a[p][k], a[q][k]
		a[p][k], a[q][k] = c*x-sn*y, sn*x+c*y
	}
	for k := range n {
		x, y := v[k][p], v[k][q]
		v[k][p], v[k][q] = c*x-sn*y, sn*x+c*y
	}
}

// thirdAlong is the third derivative of the Helmholtz energy along the
// eigenvector, which is turned to point to higher density.
func (s *System) thirdAlong(e *helmholtz.Evaluator, t, rho float64, st *stability) float64 {
	n := s.m.Components()
	z := s.m.MoleFractions()
	sum := 0.0
	for i := range n {
		sum += math.Sqrt(z[i]) * st.v[i]
	}
	if sum < 0 {
		for i := range n {
			st.v[i] = -st.v[i]
		}
	}
	step := 1e-4
	for i := range n {
		step = math.Min(step, 0.1*math.Sqrt(z[i]))
	}
	curvature := func(step float64) float64 {
		var x Composition
		total := 0.0
		for i := range n {
			x[i] = z[i] + step*math.Sqrt(z[i])*st.v[i]
			total += x[i]
		}
		for i := range n {
			x[i] /= total
		}
		e.SetTX(t, &x)
		var p helmholtz.Potentials
		e.PotentialsAt(rho*total, &p)
		c := 0.0
		for i := range n {
			for j := range n {
				c += math.Sqrt(z[i]*z[j]) * st.v[i] * st.v[j] * p.LnFLnRho[i][j] / (x[j] * total)
			}
		}
		return c
	}
	return (curvature(step) - curvature(-step)) / (2 * step)
}

// spinodalT is the highest temperature at which the composition is unstable at
// a density, searched for near a guess.
func (s *System) spinodalT(e *helmholtz.Evaluator, rho, guess float64) (float64, stability, bool) {
	high := guess
	st := s.stabilityAt(e, high, rho)
	for k := 0; st.lambda <= 0 && k < 100; k++ {
		high *= 1.02
		st = s.stabilityAt(e, high, rho)
	}
	if !(st.lambda > 0) {
		return 0, st, false
	}
	// Down along the secant, which the eigenvalue's upward curvature keeps from
	// passing the zero by far. Long steps could: deep inside the dome some
	// equations have stable islands.
	atHigh := st.lambda
	low := high * 0.999
	st = s.stabilityAt(e, low, rho)
	for k := 0; st.lambda > 0 && k < 400; k++ {
		step := 0.01 * low
		if slope := (atHigh - st.lambda) / (high - low); slope > 0 {
			step = math.Min(step, st.lambda/slope)
		}
		step = math.Max(step, 1e-5*low)
		high, atHigh = low, st.lambda
		low -= step
		st = s.stabilityAt(e, low, rho)
	}
	atLow := st.lambda
	if !(atLow <= 0) {
		return 0, st, false
	}
	t, b := low, bracket{low: low, high: high, atLow: atLow, atHigh: atHigh}
	for range 60 {
		t = b.secant()
		st = s.stabilityAt(e, t, rho)
		if math.Abs(st.lambda) < 1e-13 || b.high-b.low < 1e-13*b.high {
			break
		}
		b.take(t, st.lambda)
	}
	return t, st, true
}

// solveCritical looks from the reducing density, which is near the critical one.
// Where the equations of some mixtures have a fold of their own making there, it
// looks again from the vapor's side, where they have none.
func (s *System) solveCritical() (c CriticalPoint, st stability, err error) {
	for _, start := range [...]float64{1, 0.6} {
		if c, st, err = s.solveCriticalFrom(start); err == nil {
			break
		}
	}
	return c, st, err
}

// solveCriticalFrom walks along the spinodal of the composition from a part of
// the reducing density: on its vapor side the third derivative is negative, on
// its liquid side positive.
func (s *System) solveCriticalFrom(start float64) (c CriticalPoint, st stability, err error) {
	e := s.m.Evaluator()
	defer e.Release()
	e.SetT(300)
	rho, guess := start*e.ReducingRho(), 1.1*e.ReducingT()
	third := func(rho float64) (float64, bool) {
		t, st, ok := s.spinodalT(e, rho, guess)
		if !ok {
			return 0, false
		}
		guess = math.Max(t*1.002, 0.97*guess)
		return s.thirdAlong(e, t, rho, &st), true
	}
	low, high := rho, rho
	atLow, ok := third(rho)
	atHigh := atLow
	for k := 0; ok && atLow > 0 && k < 30; k++ {
		high, atHigh = low, atLow
		low *= 0.95
		atLow, ok = third(low)
	}
	for k := 0; ok && atHigh <= 0 && k < 30; k++ {
		low, atLow = high, atHigh
		high *= 1.05
		atHigh, ok = third(high)
	}
	if !ok || !(atLow <= 0 && atHigh > 0) {
		return c, st, ErrNotConverged
	}
	b := bracket{low: low, high: high, atLow: atLow, atHigh: atHigh}
	for range 60 {
		rho = b.secant()
		at, ok := third(rho)
		if !ok {
			return c, st, ErrNotConverged
		}
		if math.Abs(at) < 1e-9 || b.high-b.low < 1e-11*b.high {
			break
		}
		b.take(rho, at)
	}
	t, st, ok := s.spinodalT(e, rho, guess)
	if !ok {
		return c, st, ErrNotConverged
	}
	s.thirdAlong(e, t, rho, &st)
	e.SetT(t)
	p, _ := e.PressureAt(rho)
	if !(p > 0) {
		return c, st, ErrNotConverged
	}
	return CriticalPoint{t, p, rho}, st, nil
}
