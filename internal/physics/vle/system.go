package vle

import (
	"errors"
	"math"
	"sync"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// The reasons why there is no answer.
var (
	ErrInput = errors.New(
		"vle: temperature, pressure, enthalpy and entropy must be finite, and the first two " +
			"positive",
	)
	ErrAboveCritical = errors.New(
		"vle: no liquid and vapor exist together at this temperature or pressure, it is above " +
			"the critical point",
	)
	ErrBelowRange = errors.New("vle: below the range of the equation of state")
	ErrAboveRange = errors.New("vle: above the range of the equation of state")
	ErrTwoLiquids = errors.New(
		"vle: the liquid of this composition is not stable here, it separates into two",
	)
	ErrNotConverged = errors.New("vle: the solver found no answer")
)

// A System solves for one [helmholtz.Model].
type System struct {
	m     *helmholtz.Model
	lines [helmholtz.MaxComponents]line
	// low and high are the temperatures between which states are searched for, K.
	low, high float64

	once     sync.Once
	envelope envelope
}

// New makes a System.
func New(m *helmholtz.Model) *System {
	s := &System{m: m, low: math.Inf(1)}
	for i := range m.Components() {
		f := m.Fluid(i)
		s.lines[i] = newLine(f)
		s.low = math.Min(s.low, f.TripleT-tripleMargin)
		s.high = math.Max(s.high, 2*f.MaxT)
	}
	return s
}

// ranged says whether a temperature is one that the equations have a meaning
// for, or nearly so.
func (s *System) ranged(t float64) error {
	switch {
	case !valid(t):
		return ErrInput
	case t < 0.5*s.low:
		return ErrBelowRange
	case t > 2*s.high:
		return ErrAboveRange
	}
	return nil
}

// Model is the model that the system solves for.
func (s *System) Model() *helmholtz.Model { return s.m }

// A Point is a liquid and a vapor in equilibrium. For a bubble point X is the
// overall composition and Y that of the first bubble; for a dew point Y is the
// overall composition and X that of the first drop.
type Point struct {
	T, P                float64 // K, Pa
	RhoLiquid, RhoVapor float64 // mol/m³
	X, Y                Composition
}

// Composition is mole fractions; entries past the number of components are 0.
type Composition = [helmholtz.MaxComponents]float64

func (s *System) pure() bool { return s.m.Components() == 1 }
