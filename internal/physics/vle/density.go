package vle

import (
	"errors"
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// Phase says which density is meant where a temperature and pressure have two.
type Phase uint8

const (
	// Stable is the density with the lower Gibbs energy.
	Stable Phase = iota
	// Vapor is the lower density, up to the limit of stability past the dew
	// point; above the critical point it is the only one.
	Vapor
	// Liquid is the higher density, down to the limit of stability past the
	// bubble point; above the critical point it is the only one.
	Liquid
	// TwoPhase is liquid and vapor together. It has no single density to solve
	// for.
	TwoPhase
	// Supercritical is above the critical temperature and pressure. It has one
	// density.
	Supercritical
)

// ErrNoPhase says that the phase asked for does not exist, not even for a
// moment, at the temperature and pressure.
var ErrNoPhase = errors.New("vle: the phase does not exist at this temperature and pressure")

// evaluator is one of the model at a temperature, for the caller to release,
// where the temperature and the pressure can be asked about.
func (s *System) evaluator(t, p float64) (*helmholtz.Evaluator, error) {
	if !valid(p) {
		return nil, ErrInput
	}
	if err := s.ranged(t); err != nil {
		return nil, err
	}
	e := s.m.Evaluator()
	e.SetT(t)
	return e, nil
}

// Density is the molar density at a temperature and pressure, at the overall
// composition and as one phase.
func (s *System) Density(t, p float64, phase Phase) (float64, error) {
	e, err := s.evaluator(t, p)
	if err != nil {
		return 0, err
	}
	defer e.Release()
	return density(e, p, phase)
}

// State is the state at a temperature and pressure as one phase, at the overall
// composition.
func (s *System) State(t, p float64, phase Phase) (helmholtz.State, error) {
	e, err := s.evaluator(t, p)
	if err != nil {
		return helmholtz.State{}, err
	}
	defer e.Release()
	rho, err := density(e, p, phase)
	if err != nil {
		return helmholtz.State{}, err
	}
	return finiteState(e.StateAt(rho))
}

// finiteState turns a state outside of everything an equation was made for into
// an error.
func finiteState(st helmholtz.State) (helmholtz.State, error) {
	sum := st.P + st.H + st.S + st.Cv + st.Cp + st.SoundSpeed + st.DpDrho + st.DpDT + st.DhDrho
	if math.IsNaN(sum) || math.IsInf(sum, 0) {
		return helmholtz.State{}, ErrNoPhase
	}
	return st, nil
}

func valid(v float64) bool { return v > 0 && v <= math.MaxFloat64 }

// density is Density for an evaluator whose temperature and composition are set.
func density(e *helmholtz.Evaluator, p float64, phase Phase) (float64, error) {
	switch phase {
	case Vapor:
		return vaporDensity(e, p)
	case Liquid:
		return liquidDensity(e, p)
	}
	v, errV := vaporDensity(e, p)
	l, errL := liquidDensity(e, p)
	switch {
	case errV != nil:
		return l, errL
	case errL != nil:
		return v, nil
	case l <= v*(1+1e-9):
		return v, nil
	}
	a, b := e.ResidualAt(v), e.ResidualAt(l)
	if a.Alpha+a.D1-b.Alpha-b.D1+math.Log(v/l) <= 0 {
		return v, nil
	}
	return l, nil
}

// vaporDensity starts from the virial equation Z = 1 + Bρ + Cρ². Each step then
// fits such a curve to the value and slope of Z at the last density; the pressure
// of a vapor is so close to it that one or two are enough.
func vaporDensity(e *helmholtz.Evaluator, p float64) (float64, error) {
	ideal := p / (e.Model().GasConstant() * e.T)
	limit := 0.9 * e.ReducingRho()
	if ideal < limit {
		b, c := e.Virial()
		rho := virialStart(b, c, ideal)
		for range 12 {
			if !(rho > 0 && rho < limit) {
				break
			}
			r := e.ResidualAt(rho)
			slope := 1 + r.D1 + r.D2
			if !(slope > 0.02 && slope < 3) {
				break // near a spinodal, or where an equation is no longer a vapor's
			}
			// Chebyshev's method on y (1 + b y + c y²), y = ρ over the last ρ, with
			// b = 2 Dα - D²α and c = D²α - Dα.
			step := (1 + r.D1 - ideal/rho) / slope
			curve := (2*r.D2 - r.D1) / slope
			step *= 1 + step*curve
			if !(math.Abs(step) < 0.5) {
				break
			}
			rho -= rho * step
			if math.Abs(step) < 1e-5 {
				return rho, nil // the curve's error is of second order in the step
			}
		}
	}
	return vaporBracket(e, ideal)
}

// virialStart is the density without C, corrected once for it.
func virialStart(b, c, ideal float64) float64 {
	root := 1 + 4*b*ideal
	if !(root > 0) {
		return ideal
	}
	rho := 2 * ideal / (1 + math.Sqrt(root))
	return rho - c*rho*rho*rho/(1+rho*(2*b+3*c*rho))
}

// vaporBracket walks up the isotherm from low density to the first crossing of
// the pressure, or to the spinodal.
func vaporBracket(e *helmholtz.Evaluator, ideal float64) (float64, error) {
	rr := e.ReducingRho()
	low := math.Min(0.1*ideal, 1e-3*rr)
	for range 4000 {
		factor := 1.1
		if low > 0.05*rr {
			factor = 1.01
		}
		high := low * factor
		r := e.ResidualAt(high)
		if high*(1+r.D1) >= ideal {
			return refineRoot(e, ideal, low, high)
		}
		if 1+r.D1+r.D2 <= 0 || high > 6*rr {
			return spinodalRoot(e, ideal, low, high)
		}
		low = high
	}
	return 0, ErrNoPhase
}

// spinodalRoot looks for a crossing between a stable density and an unstable
// one: the pressure peaks, or has its valley, between them.
func spinodalRoot(e *helmholtz.Evaluator, ideal, stable, unstable float64) (float64, error) {
	rising := unstable > stable // vapor: the peak must reach the pressure
	for range 60 {
		mid := 0.5 * (stable + unstable)
		if mid == stable || mid == unstable {
			break
		}
		r := e.ResidualAt(mid)
		if q := mid * (1 + r.D1); rising && q >= ideal || !rising && q <= ideal {
			if 1+r.D1+r.D2 > 0 {
				return refineRoot(e, ideal, math.Min(stable, mid), math.Max(stable, mid))
			}
			unstable = mid
			continue
		}
		if 1+r.D1+r.D2 > 0 {
			stable = mid
		} else {
			unstable = mid
		}
	}
	return 0, ErrNoPhase
}

// liquidDensity starts on the dense side, from which Newton's method converges
// without passing the root: the pressure of a liquid is a convex function.
func liquidDensity(e *helmholtz.Evaluator, p float64) (float64, error) {
	ideal := p / (e.Model().GasConstant() * e.T)
	rho := denseGuess(e)
	for range 25 {
		r := e.ResidualAt(rho)
		a := 1 + r.D1 + r.D2
		if !(a > 0) {
			break
		}
		step := (ideal - rho*(1+r.D1)) / a
		if math.Abs(step) < 3e-7*rho {
			return rho + step, nil
		}
		if math.Abs(step) > 0.1*rho {
			step = math.Copysign(0.1*rho, step)
		}
		rho += step
	}
	return liquidBracket(e, ideal)
}

// denseGuess is a liquid density a little above saturation at the reduced
// temperature, of the shape of Rackett's equation.
func denseGuess(e *helmholtz.Evaluator) float64 {
	theta := 1 - e.T/e.ReducingT()
	if theta < 0 {
		return 1.5 * e.ReducingRho()
	}
	return e.ReducingRho() * (1 + 1.9*math.Cbrt(theta) + 0.8*theta)
}

// liquidBracket walks down the isotherm from high density.
func liquidBracket(e *helmholtz.Evaluator, ideal float64) (float64, error) {
	high := 1.1 * denseGuess(e)
	for range 60 {
		r := e.ResidualAt(high)
		if high*(1+r.D1) > ideal {
			break
		}
		high *= 1.05
	}
	for range 4000 {
		low := high * 0.99
		r := e.ResidualAt(low)
		if low*(1+r.D1) <= ideal {
			return refineRoot(e, ideal, low, high)
		}
		if 1+r.D1+r.D2 <= 0 {
			return spinodalRoot(e, ideal, high, low)
		}
		if low < 1e-9*e.ReducingRho() {
			break
		}
		high = low
	}
	return 0, ErrNoPhase
}

// refineRoot is Newton's method kept inside a bracket of ρ Z(ρ) = ideal.
func refineRoot(e *helmholtz.Evaluator, ideal, low, high float64) (float64, error) {
	rho := 0.5 * (low + high)
	for range 200 {
		r := e.ResidualAt(rho)
		f, a := rho*(1+r.D1)-ideal, 1+r.D1+r.D2
		if f > 0 {
			high = rho
		} else {
			low = rho
		}
		next := inside(rho-f/a, low, high)
		if math.Abs(next-rho) <= 1e-13*rho {
			return next, nil
		}
		rho = next
	}
	return rho, nil
}

// densityFrom is the molar density near a known one, by Newton's method alone.
func densityFrom(e *helmholtz.Evaluator, p, rho float64) (float64, error) {
	ideal := p / (e.Model().GasConstant() * e.T)
	for range 30 {
		r := e.ResidualAt(rho)
		a := 1 + r.D1 + r.D2
		if !(a > 0) {
			return 0, ErrNoPhase
		}
		step := (ideal - rho*(1+r.D1)) / a
		if math.Abs(step) < 3e-7*rho {
			return rho + step, nil
		}
		if math.Abs(step) > 0.2*rho {
			step = math.Copysign(0.2*rho, step)
		}
		rho += step
	}
	return 0, ErrNotConverged
}
