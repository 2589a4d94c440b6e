package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// A Flash is the equilibrium state of the overall composition: one phase or two.
type Flash struct {
	Phase Phase // Vapor, Liquid, TwoPhase or Supercritical
	T, P  float64
	Rho   float64 // mol/m³, overall
	H, S  float64 // J/mol, J/(mol K), overall
	// VaporFraction is the vapor's part of the moles: 0 for Liquid, 1 for Vapor
	// and Supercritical.
	VaporFraction float64
	// Liquid and Vapor are the phases that are there; a supercritical state is
	// in Vapor. X and Y are their mole fractions.
	Liquid, Vapor helmholtz.State
	X, Y          Composition
}

// A boundary is where a blend, or a pure fluid, begins and ends to boil at a
// pressure.
type boundary struct {
	bubble, dew *Point
	liquid      helmholtz.State // at the bubble point
	vapor       helmholtz.State // at the dew point
}

func (s *System) boundaryAt(p float64, bubble, dew *Point) (b boundary, err error) {
	if *bubble, err = s.BubbleP(p); err != nil {
		return b, err
	}
	*dew = *bubble
	if !s.pure() {
		if *dew, err = s.DewP(p); err != nil {
			return b, err
		}
	}
	return s.between(bubble, dew), nil
}

func (s *System) between(bubble, dew *Point) boundary {
	return boundary{bubble, dew, s.m.At(bubble.T, bubble.RhoLiquid), s.m.At(dew.T, dew.RhoVapor)}
}

// FlashPT is the state at a pressure and temperature. A pure fluid exactly at
// saturation counts as vapor.
func (s *System) FlashPT(p, t float64) (Flash, error) {
	if !valid(p) {
		return Flash{}, ErrInput
	}
	if err := s.ranged(t); err != nil {
		return Flash{}, err
	}
	var bubble, dew Point
	b, err := s.boundaryAt(p, &bubble, &dew)
	switch {
	case err == ErrAboveCritical || err == ErrBelowRange:
		if f, ok := s.boilsAbove(p, t); ok {
			return f, nil
		}
		return s.homogeneous(p, t, Stable)
	case err != nil:
		return Flash{}, err
	case t >= b.dew.T:
		return s.homogeneous(p, t, Vapor)
	case t <= b.bubble.T:
		return s.homogeneous(p, t, Liquid)
	}
	return s.split(&b, p, temperature, t, b.bubble.T, b.dew.T)
}

// boilsAbove is the state of two phases at a pressure above the critical one, which a bubble
// line encloses that turns back before the critical point. It starts from the bubble point
// at the temperature.
func (s *System) boilsAbove(p, t float64) (Flash, bool) {
	c, err := s.Critical()
	if err != nil || s.pure() || !(p >= c.P && t < c.T) {
		return Flash{}, false
	}
	bubble, err := s.BubbleT(t)
	if err != nil || !(bubble.P > p) {
		return Flash{}, false
	}
	var q mixture
	s.startMixture(&q, p)
	defer q.release()
	from := q.unknownsOf(&bubble)
	for _, beta := range [...]float64{0.02, 0.1, 0.3} {
		q.u = from
		if f, ok := q.solveFor(temperature, t, 1, beta); ok {
			return f, true
		}
	}
	return Flash{}, false
}

// homogeneous is the state as one phase.
func (s *System) homogeneous(p, t float64, phase Phase) (Flash, error) {
	st, err := s.State(t, p, phase)
	if err != nil {
		return Flash{}, err
	}
	return s.classify(st, phase), nil
}

// FlashPH is the state at a pressure and molar enthalpy.
func (s *System) FlashPH(p, h float64) (Flash, error) { return s.flashP(p, h, enthalpy) }

// FlashPS is the state at a pressure and molar entropy.
func (s *System) FlashPS(p, sMolar float64) (Flash, error) { return s.flashP(p, sMolar, entropy) }

// FlashPHBetween is the two-phase state at a molar enthalpy between those of
// a bubble and a dew point that have been found at one pressure.
func (s *System) FlashPHBetween(bubble, dew *Point, h float64) (Flash, error) {
	b := s.between(bubble, dew)
	return s.split(&b, bubble.P, enthalpy, h, b.liquid.H, b.vapor.H)
}

// FlashPSBetween is the same at a molar entropy.
func (s *System) FlashPSBetween(bubble, dew *Point, sMolar float64) (Flash, error) {
	b := s.between(bubble, dew)
	return s.split(&b, bubble.P, entropy, sMolar, b.liquid.S, b.vapor.S)
}

// FlashPQBetween is the same at the vapor's part of the mass, 0 to 1.
func (s *System) FlashPQBetween(bubble, dew *Point, part float64) (Flash, error) {
	b := s.between(bubble, dew)
	whole := s.m.MolarMass()
	return s.split(&b, bubble.P, quality, part*whole, 0, whole)
}

// A property rises with temperature along an isobar.
type property uint8

const (
	temperature property = iota
	enthalpy
	entropy
	quality // the mass of vapor in a mole of the whole, kg/mol
)

// of is the property of a phase and its slope along the isobar.
func (k property) of(st *helmholtz.State) (v, dT float64) {
	if k == enthalpy {
		return st.H, st.Cp
	}
	return st.S, st.Cp / st.T
}

// total is the property of a whole state.
func (s *System) total(k property, f *Flash) float64 {
	switch k {
	case temperature:
		return f.T
	case enthalpy:
		return f.H
	case entropy:
		return f.S
	}
	return f.VaporFraction * s.m.MolarMassOf(&f.Y)
}

// flashP solves for a property along an isobar.
func (s *System) flashP(p, want float64, k property) (Flash, error) {
	if !valid(p) || math.IsNaN(want) || math.IsInf(want, 0) {
		return Flash{}, ErrInput
	}
	var bubble, dew Point
	b, err := s.boundaryAt(p, &bubble, &dew)
	low, high := s.low, s.high
	if err == ErrAboveCritical || err == ErrBelowRange {
		return s.alongIsobar(p, want, low, high, math.Sqrt(low*high), Stable, k)
	}
	if err != nil {
		return Flash{}, err
	}
	l, _ := k.of(&b.liquid)
	v, slope := k.of(&b.vapor)
	switch {
	case want >= v:
		return s.alongIsobar(p, want, b.dew.T, high, b.dew.T+(want-v)/slope, Vapor, k)
	case want <= l:
		_, slope := k.of(&b.liquid)
		return s.alongIsobar(p, want, low, b.bubble.T, b.bubble.T+(want-l)/slope, Liquid, k)
	}
	return s.split(&b, p, k, want, l, v)
}

// alongIsobar is Newton's method in temperature inside a bracket.
func (s *System) alongIsobar(
	p, want, low, high, t float64, phase Phase, k property,
) (Flash, error) {
	e := s.m.Evaluator()
	defer e.Release()
	bottom, top := low, high
	if !(t > low && t < high) {
		t = 0.5 * (low + math.Min(high, 2*low))
	}
	rho := 0.0
	for range 100 {
		e.SetT(t)
		next, err := nextDensity(e, p, rho, phase)
		if err != nil {
			// Past the stable part of the isobar: towards the boundary again.
			if phase == Liquid {
				high = t
			} else {
				low = t
			}
			if high-low < 1e-12*high {
				return Flash{}, err
			}
			t = 0.5 * (low + high)
			continue
		}
		rho = next
		st := e.StateAt(rho)
		v, slope := k.of(&st)
		d := want - v
		if d > 0 {
			low = t
		} else {
			high = t
		}
		step := d / slope
		if math.Abs(step) < 1e-10*t {
			// The last step in first order, so that the state is that of want.
			e.SetT(t + step)
			if rho, err = densityFrom(e, p, rho); err != nil {
				return Flash{}, err
			}
			return s.classify(e.StateAt(rho), phase), nil
		}
		if high-low < 1e-13*high {
			switch {
			case low >= top*(1-1e-9):
				return Flash{}, ErrAboveRange
			case high <= bottom*(1+1e-9):
				return Flash{}, ErrBelowRange
			}
			return s.classify(st, phase), nil
		}
		t = inside(t+step, low, high)
	}
	return Flash{}, ErrNotConverged
}

// nextDensity is that of a phase at the next temperature of an isobar: from the last one, which
// is 0 at first.
func nextDensity(e *helmholtz.Evaluator, p, last float64, phase Phase) (float64, error) {
	if last > 0 && phase != Stable {
		if rho, err := densityFrom(e, p, last); rho != 0 && err == nil {
			return rho, nil
		}
	}
	return density(e, p, phase)
}

// classify is a state of one phase; where nothing boils the critical point
// tells which.
func (s *System) classify(st helmholtz.State, phase Phase) Flash {
	if phase == Stable {
		c, err := s.Critical()
		switch {
		case err == nil && st.T >= c.T && st.P >= c.P:
			phase = Supercritical
		case err == nil && st.Rho > c.Rho:
			phase = Liquid
		default:
			phase = Vapor
		}
	}
	f := Flash{Phase: phase, T: st.T, P: st.P, Rho: st.Rho, H: st.H, S: st.S}
	if phase == Liquid {
		f.Liquid, f.X = st, s.m.MoleFractions()
	} else {
		f.Vapor, f.Y, f.VaporFraction = st, s.m.MoleFractions(), 1
	}
	return f
}

// split is the two-phase state in which a property that rises from the bubble
// to the dew point has a value between the two.
func (s *System) split(
	b *boundary, p float64, k property, want, atBubble, atDew float64,
) (Flash, error) {
	beta := (want - atBubble) / (atDew - atBubble)
	if s.pure() {
		pt := b.bubble
		return s.combine(p, beta, b.liquid, b.vapor, pt.X, pt.Y), nil
	}
	var q mixture
	s.startMixture(&q, p)
	defer q.release()
	uLow, uHigh := q.unknownsOf(b.bubble), q.unknownsOf(b.dew)
	for _, start := range [...]float64{beta, 0.9, 0.5, 0.1} {
		q.between(&uLow, &uHigh, start)
		if f, ok := q.solveFor(k, want, atDew-atBubble, start); ok {
			return f, nil
		}
	}
	around := bracket{high: 1, atLow: atBubble - want, atHigh: atDew - want}
	return q.closeIn(&around, uLow, uHigh, beta, k, want, atDew-atBubble)
}

// closeIn closes in on the vapor fraction, from a first guess, between two solutions that are
// known: the neighbors of those where property k of the whole is the one wanted.
func (q *mixture) closeIn(
	b *bracket, uLow, uHigh vector, beta float64, k property, want, reach float64,
) (Flash, error) {
	q.unstable = false
	for range 80 {
		q.between(&uLow, &uHigh, (beta-b.low)/(b.high-b.low))
		if !q.solve(beta) {
			// Nearer to a solution that is known.
			if next := b.low + 0.5*(beta-b.low); next-b.low > 1e-6 {
				beta = next
				continue
			}
			if q.unstable {
				return Flash{}, ErrTwoLiquids
			}
			return Flash{}, ErrNotConverged
		}
		f := q.s.combine(q.p, beta, q.liquid.StateAt(q.rhoL), q.vapor.StateAt(q.rhoV), q.x, q.y)
		d := q.s.total(k, &f) - want
		if math.Abs(d) < 1e-10*math.Abs(reach) || b.high-b.low < 1e-14 {
			return f, nil
		}
		if b.take(beta, d); d > 0 {
			uHigh = q.u
		} else {
			uLow = q.u
		}
		beta = inside(b.secant(), b.low, b.high)
	}
	// From one neighbor to the next the liquid jumps.
	if q.splits(&uLow, &uHigh) {
		return Flash{}, ErrTwoLiquids
	}
	return Flash{}, ErrNotConverged
}

func (s *System) combine(p, beta float64, l, v helmholtz.State, x, y Composition) Flash {
	return Flash{
		Phase: TwoPhase, T: l.T, P: p, VaporFraction: beta,
		Rho:    1 / ((1-beta)/l.Rho + beta/v.Rho),
		H:      (1-beta)*l.H + beta*v.H,
		S:      (1-beta)*l.S + beta*v.S,
		Liquid: l, Vapor: v, X: x, Y: y,
	}
}
