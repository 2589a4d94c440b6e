package refrigerant

import (
	"errors"
	"fmt"
	"math"
	"sync"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// ErrUnsolved says that the equation of state gave no answer inside its range.
// States just above the critical pressure may do this, of R-114, whose equation
// boils on past its stated critical point, up to 4 %, and a NewBlend of components that
// hardly mix.
var ErrUnsolved = errors.New("the equation of state gave no answer here")

// An equation is the equation of state of one refrigerant at its composition,
// on the datum of the package. What it takes and gives is by mole; perMass turns
// joules per mole into joules per kilogram.
type equation struct {
	model   *helmholtz.Model
	system  *vle.System
	perMass float64 // mol/kg

	critical CriticalPoint
	limits   Limits
	// ends are where the solver works on each edge, found on first use.
	ends [table.Edges]func() (edgeEnds, error)
}

// equation returns the equation of r, building it on first use.
func (r *Refrigerant) equation() (*equation, error) {
	if len(r.components()) == 0 {
		return nil, ErrNoRefrigerant
	}
	if q := r.solver.Load(); q != nil {
		return q, nil
	}
	names := make([]string, len(r.parts))
	for i, c := range r.parts {
		names[i] = c.Designation
	}
	m, err := fluiddata.NewModel(names, r.MoleFractions())
	if err != nil {
		return nil, fmt.Errorf("%s: %w", r.designation, err)
	}
	if s := r.table(); s.CriticalTemperature > 0 {
		m = m.WithDatum(s.EnthalpyOffset*m.MolarMass(), s.EntropyOffset*m.MolarMass())
	} else if m, _, err = vle.IIR(m); err != nil {
		return nil, fmt.Errorf(
			"no bubble point at 0 °C or at one atmosphere that enthalpy can count from: %w: %w",
			ErrUnsolved, err,
		)
	}
	q := &equation{model: m, system: vle.New(m), perMass: 1 / m.MolarMass()}
	if q.critical, err = q.criticalPoint(r.table()); err != nil {
		return nil, r.unsolved("critical point", err)
	}
	q.limits = q.findLimits(r.table())
	for e := range table.Edges {
		q.ends[e] = sync.OnceValues(func() (edgeEnds, error) { return q.findEnds(e) })
	}
	r.solver.CompareAndSwap(nil, q)
	return r.solver.Load(), nil
}

// state turns a state by mole into one by mass.
func (q *equation) state(s *helmholtz.State, phase Phase, quality float64) State {
	return State{
		Phase:        phase,
		Pressure:     quantity.Pressure(s.P),
		Temperature:  quantity.Temperature(s.T),
		Density:      quantity.Density(s.Rho / q.perMass),
		Enthalpy:     quantity.SpecificEnthalpy(s.H * q.perMass),
		Entropy:      quantity.SpecificEntropy(s.S * q.perMass),
		Cp:           quantity.SpecificHeat(s.Cp * q.perMass),
		SpeedOfSound: quantity.Velocity(s.SoundSpeed),
		Quality:      quality,
	}
}

// idealDensity returns p/RT in mol/m³.
func (q *equation) idealDensity(t, p float64) float64 { return p / (q.model.GasConstant() * t) }

// supercriticalDensity returns about the density above the critical point, in mol/m³, by the
// equation of D.-Y. Peng and D. B. Robinson, Ind. Eng. Chem. Fundam. 15, 1976,
// pp. 59-64, with an acentric factor of 0.25, as most refrigerants have.
func (q *equation) supercriticalDensity(t, p float64) float64 {
	const omega = 0.25
	const kappa = 0.37464 + omega*(1.54226-omega*0.26992)
	reduced := t / float64(q.critical.Temperature)
	pressure := p / float64(q.critical.Pressure)
	root := 1 + kappa*(1-math.Sqrt(reduced))
	a := 0.45724 * root * root * pressure / (reduced * reduced)
	b := 0.07780 * pressure / reduced
	// Z³ + c2 Z² + c1 Z + c0 = 0, which has one real root there.
	c2, c1, c0 := b-1, a-b*(2+3*b), -b*(a-b*(1+b))
	z := math.Max(1, 1+2*b) // above every root
	for range 20 {
		step := (((z+c2)*z+c1)*z + c0) / ((3*z+2*c2)*z + c1)
		z -= step
		if !(math.Abs(step) > 1e-3*z) {
			break
		}
	}
	return q.idealDensity(t, p) / z
}

// phase returns the state of the one phase that has pressure p at the temperature
// set in e, from a near guess of its density. It reports false where that leaves
// the branch of the guess.
//
// It is Newton's method, whose error is about the square of the step. Where the
// density is low the pressure is so close to ρ + Bρ² + Cρ³ that the curvature of
// that makes the error about the cube. Either way the last digits are had from the
// derivatives of the state itself.
func (q *equation) phase(e *helmholtz.Evaluator, p, guess float64) (helmholtz.State, bool) {
	ideal := q.idealDensity(e.T, p)
	rho := guess
	dilute := guess < 0.6*e.ReducingRho()
	enough := 1e-4
	if dilute {
		enough = 2e-3
	}
	for range 12 {
		r := e.ResidualAt(rho)
		slope := 1 + r.D1 + r.D2
		newton := (ideal/rho - 1 - r.D1) / slope
		step := newton
		if dilute {
			step *= 1 - newton*(2*r.D2-r.D1)/slope
		}
		if !(slope > 0) || !(math.Abs(step) < 0.5) {
			break
		}
		rho += step * rho
		if math.Abs(newton) < enough { // the corrected step may also be 0 elsewhere
			s := e.StateAt(rho)
			d := (p - s.P) / s.DpDrho
			s.H += s.DhDrho * d
			s.S -= s.DpDT / (rho * rho) * d
			s.Rho += d
			s.P = p
			return s, true
		}
	}
	return helmholtz.State{}, false
}
