package refrigerant

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
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
	q, err := r.equation()
	if err != nil {
		return saturated{}, err
	}
	if err := r.checkSaturationTemperature(t); err != nil {
		return saturated{}, err
	}
	s, err := q.edge(e, t)
	if err != nil {
		return saturated{}, r.unsolved(fmt.Sprint("saturation at ", t), err)
	}
	return s, nil
}

// solveSaturationAt solves the edge e at the pressure p.
func (r *Refrigerant) solveSaturationAt(e table.Edge, p quantity.Pressure) (saturated, error) {
	var point vle.Point
	return r.solvePoint(e, p, &point)
}

// solvePoint does that and leaves the solution in point, which stays as it is
// where the edge is closed.
func (r *Refrigerant) solvePoint(
	e table.Edge, p quantity.Pressure, point *vle.Point,
) (saturated, error) {
	q, err := r.equation()
	if err != nil {
		return saturated{}, err
	}
	ends, err := q.ends[e]()
	if err != nil {
		return saturated{}, r.unsolved("saturation", err)
	}
	high := q.critical.Pressure
	if e == table.Bubble && p > high {
		high = q.highestBubble()
	}
	if err := r.checkSaturationPressure(
		q, quantity.Pressure(ends.low.pressure), high, p,
	); err != nil {
		return saturated{}, err
	}
	var s saturated
	c := &q.critical
	continuedTo := func(from *saturated) saturated {
		gap := (float64(c.Pressure) - float64(p)) / (float64(c.Pressure) - from.pressure)
		return q.continued(
			from,
			c.Temperature-quantity.Temperature(
				gap,
			)*(c.Temperature-quantity.Temperature(from.temperature)),
		)
	}
	if ends.high.pressure < float64(p) && p <= c.Pressure {
		s = continuedTo(&ends.high)
	} else if s, err = q.solvedAt(e, p, point); err != nil {
		if from, ok := q.lastSafe(e); ok && from.pressure < float64(p) {
			s, err = continuedTo(&from), nil
		}
	}
	if err != nil {
		return saturated{}, r.unsolved(fmt.Sprint("saturation at ", p), err)
	}
	return s, nil
}

// highestBubble is the highest pressure at which liquid boils, a little above the critical
// pressure where the bubble line turns back before the critical point.
func (q *equation) highestBubble() quantity.Pressure {
	const rounding = 5e-5 // of the critical pressure, in which both are found
	high, err := q.system.HighestBubble()
	if high := quantity.Pressure(high); err == nil && q.model.Components() > 1 &&
		high > q.critical.Pressure*(1+rounding) {
		return high
	}
	return q.critical.Pressure
}

// edge is the edge e at the temperature t.
func (q *equation) edge(e table.Edge, t quantity.Temperature) (saturated, error) {
	if q.isClosed(e, t) {
		return q.closed(e, t)
	}
	s, err := q.solved(e, t)
	if err != nil && q.nearClosing(t) {
		if from, ok := q.lastSafe(e); ok {
			return q.continued(&from, t), nil
		}
	}
	return s, err
}

// solved is the edge e at the temperature t by the solver.
func (q *equation) solved(e table.Edge, t quantity.Temperature) (saturated, error) {
	solve := q.system.BubbleT
	if e == table.Dew {
		solve = q.system.DewT
	}
	p, err := solve(float64(t))
	if err != nil {
		return saturated{}, err
	}
	return q.saturated(e, p), nil
}

// solvedAt is the edge e at the pressure p by the solver.
func (q *equation) solvedAt(
	e table.Edge, p quantity.Pressure, point *vle.Point,
) (s saturated, err error) {
	solve := q.system.BubbleP
	if e == table.Dew {
		solve = q.system.DewP
	}
	if *point, err = solve(float64(p)); err != nil {
		return saturated{}, err
	}
	return q.saturated(e, *point), nil
}

func (q *equation) saturated(e table.Edge, p vle.Point) saturated {
	rho := p.RhoLiquid
	if e == table.Dew {
		rho = p.RhoVapor
	}
	s := q.model.At(p.T, rho)
	return saturated{p.T, p.P, rho / q.perMass, s.H * q.perMass, s.S * q.perMass}
}

// closings are the temperatures, in shares below the critical one, above which the two
// phases are too alike to be told apart by a solver: the first for all but some blends
// that boil over so wide a range that the bubble line bends back there. From the first
// that is solved to the critical point the edges are continued by the law that every
// analytic equation of state approaches: pressure in a straight line with temperature,
// density, enthalpy and entropy with the root of the distance.
var closings = [...]quantity.Temperature{1e-5, 1e-4, 5e-4, 1e-3, 2e-3}

// nearClosing says whether t is above the coldest of them, where the solver, though it
// finds the hottest point, may miss one in between.
func (q *equation) nearClosing(t quantity.Temperature) bool {
	return t > q.critical.Temperature*(1-closings[len(closings)-1])
}

// lastSafe is the point there, from which the edge is continued where that happens.
func (q *equation) lastSafe(e table.Edge) (saturated, bool) {
	s, err := q.solved(e, q.critical.Temperature*(1-closings[len(closings)-1]))
	return s, err == nil
}

// isClosed says whether t is above the hottest point that is solved.
func (q *equation) isClosed(e table.Edge, t quantity.Temperature) bool {
	if !q.nearClosing(t) {
		return false
	}
	ends, err := q.ends[e]()
	return err != nil || float64(t) > ends.high.temperature
}

func (q *equation) closed(e table.Edge, t quantity.Temperature) (saturated, error) {
	ends, err := q.ends[e]()
	if err != nil {
		return saturated{}, err
	}
	return q.continued(&ends.high, t), nil
}

// continued is the edge at t by that law, from a point on it.
func (q *equation) continued(from *saturated, t quantity.Temperature) saturated {
	c := &q.critical
	at := q.model.At(float64(c.Temperature), float64(c.Density)*q.perMass)
	gap := float64(c.Temperature-t) / (float64(c.Temperature) - from.temperature)
	root := math.Sqrt(max(gap, 0))
	toward := func(critical, edge, share float64) float64 {
		return critical + share*(edge-critical)
	}
	return saturated{
		temperature: float64(t),
		pressure:    toward(float64(c.Pressure), from.pressure, gap),
		density:     toward(float64(c.Density), from.density, root),
		enthalpy:    toward(at.H*q.perMass, from.enthalpy, root),
		entropy:     toward(at.S*q.perMass, from.entropy, root),
	}
}

// edgeEnds are the coldest and the hottest point of an edge that are solved.
type edgeEnds struct{ low, high saturated }

func (q *equation) findEnds(e table.Edge) (ends edgeEnds, err error) {
	if ends.low, err = q.solved(e, q.limits.MinTemperature); err != nil {
		return
	}
	// A pressure computed for this very temperature in another way, as from
	// a table, is let in.
	ends.low.pressure *= 1 - 1e-5
	tried := closings[:]
	if q.model.Components() > 1 {
		tried = closings[2:]
	}
	for _, share := range tried {
		if ends.high, err = q.solved(e, q.critical.Temperature*(1-share)); err == nil {
			break
		}
	}
	return
}

func (r *Refrigerant) unsolved(what string, cause error) error {
	return fmt.Errorf("%s of %s: %w: %w", what, cut(r.designation, 40), ErrUnsolved, cause)
}

func (r *Refrigerant) checkSaturationTemperature(t quantity.Temperature) error {
	low, high := r.Limits().MinTemperature, r.Critical().Temperature
	if t >= low && t <= high {
		return nil
	}
	e := &RangeError{
		Quantity: "saturation temperature of " + r.designation,
		Value:    t,
		Min:      low,
		Max:      high,
	}
	switch {
	case t > high:
		e.Advice = "above the critical temperature it is gas at every pressure and nothing boils " +
			"or condenses"
	case t < low:
		e.Advice = "colder than the equation of state is used for"
	default:
		e.Advice = "not a number"
	}
	return e
}

func (r *Refrigerant) checkSaturationPressure(q *equation, low, high, p quantity.Pressure) error {
	if p >= low && p <= high {
		return nil
	}
	e := &RangeError{
		Quantity: "saturation pressure of " + r.designation,
		Value:    p,
		Min:      low,
		Max:      high,
	}
	switch {
	case p > high:
		e.Advice = "above the critical pressure nothing boils or condenses, " +
			"and there is no subcooling or superheat: " +
			"judge by the gas cooler outlet temperature and the unit's chart"
	case math.IsNaN(float64(p)):
		e.Advice = "not a number"
	default:
		e.Advice = "saturated only below " + q.limits.MinTemperature.String() +
			", colder than the equation of state is used for; " +
			"pressures are absolute: add the atmosphere to a gauge reading"
	}
	return e
}
