package refrigerant

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/table"
	"github.com/satline/satline/internal/vle"
	"github.com/satline/satline/quantity"
)

// Tables end a little below the critical point, and a NewBlend has none. There
// the equation is solved on the spot.

// A saturated is one edge of the two-phase region.
type saturated struct {
	temperature, pressure      float64 // K, Pa
	density, enthalpy, entropy float64 // by mass
}

// solveSaturation solves the edge e at the temperature t.
func (r *Refrigerant) solveSaturation(e table.Edge, t quantity.Temperature) (saturated, error) {
	if err := r.checkSaturationTemperature(t); err != nil {
		return saturated{}, err
	}
	q, err := r.equation()
	if err != nil {
		return saturated{}, err
	}
	if t == q.critical.Temperature {
		return q.atCritical(), nil
	}
	var p vle.Point
	if e == table.Bubble {
		p, err = q.system.BubbleT(float64(t))
	} else {
		p, err = q.system.DewT(float64(t))
	}
	if err != nil {
		return saturated{}, r.unsolved(fmt.Sprint("saturation at ", t), err)
	}
	return q.saturated(e, p), nil
}

// solveSaturationAt solves the edge e at the pressure p.
func (r *Refrigerant) solveSaturationAt(e table.Edge, p quantity.Pressure) (saturated, error) {
	if err := r.checkSaturationPressure(e, p); err != nil {
		return saturated{}, err
	}
	q, err := r.equation()
	if err != nil {
		return saturated{}, err
	}
	if p == q.critical.Pressure {
		return q.atCritical(), nil
	}
	var v vle.Point
	if e == table.Bubble {
		v, err = q.system.BubbleP(float64(p))
	} else {
		v, err = q.system.DewP(float64(p))
	}
	if err != nil {
		return saturated{}, r.unsolved(fmt.Sprint("saturation at ", p), err)
	}
	return q.saturated(e, v), nil
}

func (q *equation) saturated(e table.Edge, p vle.Point) saturated {
	rho := p.RhoLiquid
	if e == table.Dew {
		rho = p.RhoVapor
	}
	s := q.model.At(p.T, rho)
	return saturated{p.T, p.P, rho / q.perMass, s.H * q.perMass, s.S * q.perMass}
}

// atCritical returns the critical point, which is on both edges.
func (q *equation) atCritical() saturated {
	c := &q.critical
	s := q.model.At(float64(c.Temperature), float64(c.Density)*q.perMass)
	return saturated{float64(c.Temperature), float64(c.Pressure), float64(c.Density), s.H * q.perMass, s.S * q.perMass}
}

func (r *Refrigerant) unsolved(what string, cause error) error {
	return fmt.Errorf("%s of %s: %w: %w", what, r.designation, ErrUnsolved, cause)
}

func (r *Refrigerant) checkSaturationTemperature(t quantity.Temperature) error {
	low, high := r.Limits().MinTemperature, r.Critical().Temperature
	if t >= low && t <= high {
		return nil
	}
	e := &RangeError{Quantity: "saturation temperature of " + r.designation, Value: t, Min: low, Max: high}
	switch {
	case t > high:
		e.Advice = "above the critical temperature it is gas at every pressure and nothing boils or condenses"
	case t < low:
		e.Advice = "colder than the equation of state is used for"
	default:
		e.Advice = "not a number"
	}
	return e
}

func (r *Refrigerant) checkSaturationPressure(edge table.Edge, p quantity.Pressure) error {
	high := r.Critical().Pressure
	low, err := r.pressureAtMinTemperature(edge)
	if err != nil {
		return err
	}
	if p >= low && p <= high {
		return nil
	}
	e := &RangeError{Quantity: "saturation pressure of " + r.designation, Value: p, Min: low, Max: high}
	switch {
	case p > high:
		e.Advice = "above the critical pressure nothing boils or condenses, and there is no subcooling or superheat: judge by the gas cooler outlet temperature and the unit's chart"
	case math.IsNaN(float64(p)):
		e.Advice = "not a number"
	default:
		e.Advice = "saturated only below " + r.Limits().MinTemperature.String() + ", colder than the equation of state is used for; pressures are absolute: add the atmosphere to a gauge reading"
	}
	return e
}

func (r *Refrigerant) pressureAtMinTemperature(e table.Edge) (quantity.Pressure, error) {
	if s := r.table(); s.Low > 0 {
		return quantity.Pressure(s.LowPressure(e)), nil
	}
	s, err := r.solveSaturation(e, r.Limits().MinTemperature)
	return quantity.Pressure(s.pressure), err
}
