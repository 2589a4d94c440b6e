package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// closing reports whether at p, below the critical pressure, bubble or dew point are so
// near the critical point that they are continued instead of solved. Two phases cannot
// always be solved there either, and then have edges of their own.
func (r *Refrigerant) closing(q *equation, p quantity.Pressure) bool {
	if p < q.critical.Pressure/2 {
		return false // no edge closes so early
	}
	for e := range table.Edges {
		if _, ok := r.table().Temperature(e, float64(p)); ok {
			continue
		}
		if ends, err := q.ends[e](); err == nil && float64(p) > ends.high.pressure {
			return true
		}
	}
	return false
}

// closingEdges returns the one phase at bubble and dew point where these are continued.
func (r *Refrigerant) closingEdges(
	q *equation, p quantity.Pressure,
) (liquid, vapor State, err error) {
	var point vle.Point
	bubble, err := r.edge(table.Bubble, p, &point)
	if err != nil {
		return
	}
	dew, err := r.edge(table.Dew, p, &point)
	if err != nil {
		return
	}
	liquid, err = r.single(
		q, p, quantity.Temperature(bubble.temperature), bubble.density*q.perMass, vle.Liquid,
	)
	if err != nil {
		return
	}
	vapor, err = r.single(
		q, p, quantity.Temperature(dew.temperature), dew.density*q.perMass, vle.Vapor,
	)
	return
}

// boilClosing returns the state of a blend at a temperature between bubble and dew point
// where these are continued. Where it cannot be solved it lies in a straight line from the
// one edge to the other. It reports false where t is not between the two.
func (r *Refrigerant) boilClosing(
	q *equation, p quantity.Pressure, t quantity.Temperature,
) (s State, ok bool) {
	liquid, vapor, err := r.closingEdges(q, p)
	if err != nil ||
		!(t >= liquid.Temperature && t <= vapor.Temperature &&
			liquid.Temperature < vapor.Temperature) {
		return State{}, false
	}
	if f, err := q.system.FlashPT(float64(p), float64(t)); err == nil && f.Phase == vle.TwoPhase {
		s = q.flashed(p, &f)
	} else {
		share := float64(t-liquid.Temperature) / float64(vapor.Temperature-liquid.Temperature)
		s = between(p, liquid.saturated(), vapor.saturated(), share)
	}
	s.Temperature = t
	return s, true
}

// boilClosingAtQuality returns the state at a quality there, solved for where that leads back
// from its enthalpy, or else in the same straight line, which at the critical pressure begins
// and ends at the edges themselves.
func (r *Refrigerant) boilClosingAtQuality(
	q *equation, p quantity.Pressure, x float64, bubble, dew *saturated,
) State {
	if p < q.critical.Pressure {
		from, err1 := q.system.BubbleP(float64(p))
		to, err2 := q.system.DewP(float64(p))
		if err1 == nil && err2 == nil {
			if f, err := q.system.FlashPQBetween(&from, &to, x); err == nil {
				s := q.flashed(p, &f)
				if again, err := r.StateAtEnthalpy(p, s.Enthalpy); err == nil &&
					math.Abs(again.Quality-x) < 1e-4 {
					return s
				}
			}
		}
		if liquid, vapor, err := r.closingEdges(q, p); err == nil {
			bubble, dew = liquid.saturated(), vapor.saturated()
		}
	}
	s := between(p, bubble, dew, x)
	s.Temperature += quantity.Temperature(x * (dew.temperature - bubble.temperature))
	return s
}

// atClosing returns the state at an enthalpy or entropy where bubble and dew point are
// continued. It reports false where the short ways to it lead nowhere.
func (r *Refrigerant) atClosing(
	q *equation, p quantity.Pressure, c caloric, value float64,
) (State, bool) {
	liquid, vapor, err := r.closingEdges(q, p)
	if err != nil {
		// Beside an azeotrope the continued edge may lie past the end of a phase.
		s, ok, err := r.belowCritical(q, p, c, value)
		return s, ok && err == nil
	}
	if value >= c.of(&vapor) {
		edge := vapor.saturated()
		s, ok := q.along(p, c, value, edge, *edge, Vapor)
		return s, ok && s.Temperature <= q.limits.MaxTemperature+slack
	}
	if value <= c.of(&liquid) {
		edge := liquid.saturated()
		s, ok := q.along(p, c, value, edge, *edge, Liquid)
		return s, ok && s.Temperature >= q.limits.MinTemperature-slack
	}
	var unknown vle.Point
	f, err := q.flash(p, c, value/q.perMass, &unknown, &unknown)
	if err != nil || f.Phase != vle.TwoPhase {
		return State{}, false
	}
	s := q.flashed(p, &f)
	return s, s.Temperature >= liquid.Temperature && s.Temperature <= vapor.Temperature
}

// saturated is a state as one edge of the two-phase region.
func (s *State) saturated() *saturated {
	return &saturated{
		float64(s.Temperature), float64(s.Pressure), float64(s.Density), float64(s.Enthalpy),
		float64(s.Entropy),
	}
}
