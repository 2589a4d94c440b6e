package refrigerant

import (
	"errors"
	"math"

	"github.com/satline/satline/internal/table"
	"github.com/satline/satline/quantity"
)

// A CriticalPoint is where liquid and vapor become one. Above its temperature
// no pressure makes liquid; above its pressure nothing boils.
type CriticalPoint struct {
	Temperature quantity.Temperature
	Pressure    quantity.Pressure
	Density     quantity.Density
}

// Limits bound the states that a refrigerant can be asked for.
type Limits struct {
	// MinTemperature is the lowest: −73 °C, or colder for fluids that boil
	// colder, but not below the highest triple point of a component.
	MinTemperature quantity.Temperature
	// MaxTemperature is the lowest published limit of the components' equations,
	// but at least 150 °C: discharge vapor is that hot, and as dilute as it is
	// there the equations extrapolate well.
	MaxTemperature quantity.Temperature
	// MaxPressure is the lowest published limit of the components' equations.
	MaxPressure quantity.Pressure
}

const (
	coldestNeeded = 200    // K
	coldestShare  = 0.55   // of the critical temperature
	hottestNeeded = 423.15 // K
)

// Critical returns the critical point of r: for a blend that of its composition,
// found on the phase envelope.
func (r *Refrigerant) Critical() CriticalPoint {
	if s := r.table(); s.CriticalTemperature > 0 {
		return tabulatedCritical(s)
	}
	// NewBlend has made the equation, or there would be no r.
	q, err := r.equation()
	if err != nil {
		return CriticalPoint{}
	}
	return q.critical
}

// Limits returns the range of r.
func (r *Refrigerant) Limits() Limits {
	q, err := r.equation()
	if err != nil {
		return Limits{}
	}
	return q.limits
}

func tabulatedCritical(s *table.Saturation) CriticalPoint {
	return CriticalPoint{
		quantity.Temperature(s.CriticalTemperature),
		quantity.Pressure(s.CriticalPressure),
		quantity.Density(s.CriticalDensity),
	}
}

// criticalPoint takes the critical point from s or, where s is empty, solves it.
func (q *equation) criticalPoint(s *table.Saturation) (CriticalPoint, error) {
	if s.CriticalTemperature > 0 {
		return tabulatedCritical(s), nil
	}
	if q.model.Components() > 1 {
		return CriticalPoint{}, errors.New("blends are not solved yet")
	}
	c := q.model.Fluid(0)
	return CriticalPoint{quantity.Temperature(c.CriticalT), quantity.Pressure(c.CriticalP), quantity.Density(c.CriticalRho / q.perMass)}, nil
}

func (q *equation) findLimits() Limits {
	triple, hot, high := 0.0, math.Inf(1), math.Inf(1)
	for i := range q.model.Components() {
		f := q.model.Fluid(i)
		triple = max(triple, f.TripleT)
		hot = min(hot, f.MaxT)
		high = min(high, f.MaxP)
	}
	cold := min(coldestNeeded, coldestShare*float64(q.critical.Temperature))
	return Limits{
		MinTemperature: quantity.Temperature(max(triple, cold)),
		MaxTemperature: quantity.Temperature(max(hot, hottestNeeded)),
		MaxPressure:    quantity.Pressure(high),
	}
}
