package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// A CriticalPoint is where liquid and vapor become one. Above its temperature
// no pressure makes liquid; above its pressure nothing boils.
type CriticalPoint struct {
	Temperature quantity.Temperature `json:"temperature"`
	Pressure    quantity.Pressure    `json:"pressure"`
	Density     quantity.Density     `json:"density"`
}

// Limits bound the states that a refrigerant can be asked for.
type Limits struct {
	// MinTemperature is the lowest: −73 °C, or colder for fluids that boil
	// colder, but not below the highest triple point of a component, nor where
	// the liquid of a blend parts in two.
	MinTemperature quantity.Temperature `json:"minTemperature"`
	// MaxTemperature is the lowest published limit of the components' equations,
	// but at least 150 °C: discharge vapor is that hot, and as dilute as it is
	// there the equations extrapolate well. It is at least the critical temperature,
	// up to which saturation is answered: in some of NewBlend a component with a low
	// limit is extrapolated to where another still boils.
	MaxTemperature quantity.Temperature `json:"maxTemperature"`
	// MaxPressure is the lowest published limit of the components' equations, but
	// at least twice the critical pressure.
	MaxPressure quantity.Pressure `json:"maxPressure"`
}

const (
	coldestNeeded = 200    // K
	coldestShare  = 0.55   // of the critical temperature
	hottestNeeded = 423.15 // K
)

// Critical returns the critical point of r. For a pure fluid temperature and
// density are the published ones and the pressure is that of its equation there,
// which differs from the published one by up to 0.3 %. For a blend it is that of
// its composition, found on the phase envelope.
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
		quantity.Temperature(s.CriticalTemperature), quantity.Pressure(s.CriticalPressure),
		quantity.Density(s.CriticalDensity),
	}
}

// criticalPoint takes the critical point from s or, where s is empty, solves it.
func (q *equation) criticalPoint(s *table.Saturation) (CriticalPoint, error) {
	if s.CriticalTemperature > 0 {
		return tabulatedCritical(s), nil
	}
	c, err := q.system.Critical()
	if q.model.Components() == 1 {
		c.P, _ = q.model.Pressure(c.T, c.Rho)
	}
	return CriticalPoint{
		quantity.Temperature(c.T), quantity.Pressure(c.P), quantity.Density(c.Rho / q.perMass),
	}, err
}

func (q *equation) findLimits(s *table.Saturation) Limits {
	triple, hot, high := 0.0, math.Inf(1), math.Inf(1)
	for i := range q.model.Components() {
		f := q.model.Fluid(i)
		triple = max(triple, f.TripleT)
		hot = min(hot, f.MaxT)
		high = min(high, f.MaxP)
	}
	cold := max(triple, min(coldestNeeded, coldestShare*float64(q.critical.Temperature)))
	if s.Low > 0 {
		cold = s.Low
	} else if q.model.Components() > 1 {
		cold = q.warmUntilMiscible(cold)
	}
	return Limits{
		MinTemperature: quantity.Temperature(cold),
		MaxTemperature: max(quantity.Temperature(max(hot, hottestNeeded)), q.critical.Temperature),
		MaxPressure:    max(quantity.Pressure(high), 2*q.critical.Pressure),
	}
}

// warmUntilMiscible goes up from t until the liquid of a blend is one liquid with
// a bubble point below the critical pressure: some, of R-22 with R-218 for one, part
// in two when very cold, and with water some keep a gas dissolved only at pressures
// beyond all others.
func (q *equation) warmUntilMiscible(t float64) float64 {
	for high := 0.9 * float64(q.critical.Temperature); t < high; t++ {
		if pt, err := q.system.BubbleT(t); err == nil && pt.P < float64(q.critical.Pressure) {
			break
		}
	}
	return t
}
