package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// tripleMargin is how far below its triple point a fluid is still computed, K.
// It lets water have its state at 0 °C, 0.01 K below.
const tripleMargin = 0.0101

// pureT is saturation of a pure fluid at a temperature: two densities of one
// isotherm with equal pressure and equal Gibbs energy.
func (s *System) pureT(t float64) (Point, error) {
	f := s.m.Fluid(0)
	switch {
	case !valid(t):
		return Point{}, ErrInput
	case t >= f.CriticalT:
		return Point{}, ErrAboveCritical
	case t < f.TripleT-tripleMargin:
		return Point{}, ErrBelowRange
	}
	e := s.m.Evaluator()
	defer e.Release()
	return s.pureGuess(e, t)
}

// pureGuess starts from the fluid's correlations.
func (s *System) pureGuess(e *helmholtz.Evaluator, t float64) (Point, error) {
	f := s.m.Fluid(0)
	rl, rv := f.LiquidDensity.At(t), f.VaporDensity.At(t)
	ideal := f.VaporPressure.At(t) / (f.GasConstant * t)
	if !(rv > 0.5*ideal && rv < f.CriticalRho) {
		rv = ideal // some vapor correlations leave sense behind at low temperature
	}
	return s.pureAt(e, t, rl, rv)
}

func (s *System) pureAt(e *helmholtz.Evaluator, t, rl, rv float64) (Point, error) {
	e.SetT(t)
	rl, rv, ok := maxwellNewton(e, rl, rv)
	if !ok {
		rl, rv, ok = maxwellBracket(e, s.m.Fluid(0))
	}
	if !ok && t > 0.9999*s.m.Fluid(0).CriticalT {
		// The published critical temperature is rounded, or that of the
		// experiment; the equation's own can lie a little below.
		return Point{}, ErrAboveCritical
	}
	if !ok {
		return Point{}, ErrNotConverged
	}
	r := e.ResidualAt(rv)
	p := rv * s.m.GasConstant() * t * (1 + r.D1)
	if !(p > 0) {
		return Point{}, ErrNotConverged
	}
	return Point{T: t, P: p, RhoLiquid: rl, RhoVapor: rv, X: Composition{1}, Y: Composition{1}}, nil
}

// pureP is saturation of a pure fluid at a pressure: Newton's method in
// temperature with the slope dp/dT = Δs/Δv of Clapeyron's equation, taken in
// ln p and ln T, kept inside a bracket.
func (s *System) pureP(p float64) (Point, error) {
	f := s.m.Fluid(0)
	if !valid(p) {
		return Point{}, ErrInput
	}
	if p > 1.01*f.CriticalP {
		return Point{}, ErrAboveCritical
	}
	b := pureBracket{p: p, low: f.TripleT - tripleMargin, high: f.CriticalT}
	t := ancillaryT(&f.VaporPressure, p, b.low, b.high)
	e := s.m.Evaluator()
	defer e.Release()
	for range 100 {
		pt, err := s.pureGuess(e, t)
		var next float64
		switch {
		case err == ErrAboveCritical:
			b.high = t
			next = 0.5 * (b.low + b.high)
		case err != nil:
			return Point{}, err
		default:
			var found bool
			if next, found, err = b.next(e, &pt); found {
				return pt, nil
			}
			if err != nil {
				return Point{}, err
			}
		}
		if b.high-b.low < 1e-14*b.high || next == t {
			break
		}
		t = next
	}
	if b.high > 0.9999*f.CriticalT {
		return Point{}, ErrAboveCritical
	}
	return Point{}, ErrNotConverged
}

// A pureBracket is between which temperatures a pure fluid has a saturation pressure.
type pureBracket struct {
	p, low, high float64
	reached      bool // the lower end has been computed
}

// next takes in a point of saturation and is the temperature to look at after it; found says
// that it is the one looked for.
func (b *pureBracket) next(e *helmholtz.Evaluator, pt *Point) (t float64, found bool, err error) {
	d := math.Log(pt.P / b.p)
	if math.Abs(d) < 1e-12 {
		return pt.T, true, nil
	}
	if d > 0 {
		b.high = pt.T
	} else {
		b.low, b.reached = pt.T, true
	}
	l, v := e.StateAt(pt.RhoLiquid), e.StateAt(pt.RhoVapor)
	slope := (v.S - l.S) / (1/v.Rho - 1/l.Rho) * pt.T / pt.P // d ln p/d ln T
	t = pt.T / (1 + d/slope)
	if t == pt.T || b.high-b.low < 1e-14*pt.T {
		if math.Abs(d) < 1e-9 {
			return pt.T, true, nil
		}
		t = pt.T
	}
	switch {
	case !(t <= b.low) || b.reached:
		return inside(t, b.low, b.high), false, nil
	case pt.T == b.low:
		return 0, false, ErrBelowRange
	}
	return b.low, false, nil
}

// ancillaryT inverts a vapor-pressure correlation by bisection in 1/T.
func ancillaryT(a *helmholtz.Ancillary, p, low, high float64) float64 {
	for range 12 {
		mid := 2 * low * high / (low + high)
		if a.At(mid) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return 2 * low * high / (low + high)
}

// maxwellNewton is Newton's method in both densities, the vapor's as a
// logarithm because far below the critical point it spans many decades. A step
// that leaves the stable part of the isotherm is halved.
func maxwellNewton(e *helmholtz.Evaluator, rl, rv float64) (float64, float64, bool) {
	l, v := e.ResidualAt(rl), e.ResidualAt(rv)
	for range 40 {
		al, av := 1+l.D1+l.D2, 1+v.D1+v.D2
		if !(al > 0 && av > 0 && rl > rv) {
			return rl, rv, false
		}
		e1 := rv*(1+v.D1) - rl*(1+l.D1)
		e2 := v.Alpha + v.D1 - l.Alpha - l.D1 + math.Log(rv/rl)
		y := (e2 - e1/rl) / (1/rl - 1/rv)
		dl, dv := (e1+y)/al, y/av/rv
		if math.Abs(dl) < 1e-8*rl && math.Abs(dv) < 1e-8 {
			return rl + dl, rv * math.Exp(dv), true
		}
		scale := 1.0
		if big := math.Max(math.Abs(dl)/(0.1*rl), math.Abs(dv)); big > 1 {
			scale = 1 / big
		}
		for try := 0; ; try++ {
			nl, nv := rl+scale*dl, rv*math.Exp(scale*dv)
			if nl > nv {
				l, v = e.ResidualAt(nl), e.ResidualAt(nv)
				if 1+l.D1+l.D2 > 0 && 1+v.D1+v.D2 > 0 {
					rl, rv = nl, nv
					break
				}
			}
			if try == 20 {
				return rl, rv, false
			}
			scale /= 2
		}
	}
	return rl, rv, false
}

// maxwellBracket is the method that needs no guess: it finds the outermost
// spinodals of the isotherm, between whose pressures that of saturation must
// lie, and halves that interval until Newton's method can finish.
func maxwellBracket(e *helmholtz.Evaluator, f *helmholtz.Fluid) (rl, rv float64, ok bool) {
	pressure := func(rho float64) float64 {
		r := e.ResidualAt(rho)
		return rho * (1 + r.D1)
	}
	theta := 1 - e.T/f.CriticalT
	dense := f.CriticalRho * (1 + 1.75*math.Cbrt(theta) + 0.75*theta) // Rackett's shape
	var sv, sl float64
	var ok1, ok2 bool
	if theta > 0.01 {
		sv, ok1 = spinodal(e, 1e-8*f.CriticalRho, 1.05)
		sl, ok2 = spinodal(e, 1.2*dense, 1/1.01)
	} else {
		sv, ok1 = spinodal(e, 0.5*f.CriticalRho, 1.0005)
		sl, ok2 = spinodal(e, 1.2*dense, 1/1.0005)
	}
	if !ok1 || !ok2 || sl <= sv {
		return 0, 0, false
	}

	high := pressure(sv)
	low := math.Max(pressure(sl), 0)
	if !(high > low) {
		return 0, 0, false
	}
	top := sl // a density above saturation
	for range 200 {
		top *= 1.02
		if pressure(top) > high {
			break
		}
	}
	for k := range 100 {
		p := 0.5 * (low + high)
		if low == 0 {
			p = high * 0.1
		}
		rv, rl = densityAt(p, 0, sv, pressure), densityAt(p, sl, top, pressure)
		l, v := e.ResidualAt(rl), e.ResidualAt(rv)
		if k >= 3 {
			if l, v, ok := maxwellNewton(e, rl, rv); ok && v < sv && l > sl {
				return l, v, true
			}
		}
		if v.Alpha+v.D1-l.Alpha-l.D1+math.Log(rv/rl) > 0 {
			high = p
		} else {
			low = p
		}
		if high-low < 1e-13*high {
			return rl, rv, true
		}
	}
	return 0, 0, false
}

// spinodal goes from a density by steps of a factor to where the pressure no longer rises with
// the density.
func spinodal(e *helmholtz.Evaluator, rho, factor float64) (float64, bool) {
	slope := func(rho float64) float64 {
		r := e.ResidualAt(rho)
		return 1 + r.D1 + r.D2
	}
	if slope(rho) <= 0 {
		return 0, false
	}
	for range 2000 {
		next := rho * factor
		if slope(next) > 0 {
			rho = next
			continue
		}
		for range 60 {
			mid := 0.5 * (rho + next)
			if slope(mid) > 0 {
				rho = mid
			} else {
				next = mid
			}
		}
		return rho, true
	}
	return 0, false
}

// densityAt halves the interval from a to b, over which pressure rises, down to where it is p.
func densityAt(p, a, b float64, pressure func(rho float64) float64) float64 {
	for range 200 {
		mid := 0.5 * (a + b)
		if mid == a || mid == b {
			break
		}
		if pressure(mid) < p {
			a = mid
		} else {
			b = mid
		}
	}
	return 0.5 * (a + b)
}
