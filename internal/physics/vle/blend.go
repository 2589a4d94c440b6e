package vle

import "math"

// blendT is the bubble (vapor trace) or dew point at a temperature.
func (s *System) blendT(t float64, vapor bool) (Point, error) {
	if !valid(t) {
		return Point{}, ErrInput
	}
	var q incipient
	s.start(&q, vapor)
	defer q.release()
	spec := specification{kind: specT, value: math.Log(t)}
	if pt, ok := q.direct(spec, t, q.raoultT(t)); ok {
		return pt, nil
	}
	pt, err := q.alongEnvelope(spec, spec.value)
	if q.mayBeBetween(err) {
		return q.fromBetween(spec, t, q.raoultT(t), err)
	}
	return pt, err
}

// blendP is the bubble or dew point at a pressure.
func (s *System) blendP(p float64, vapor bool) (Point, error) {
	if !valid(p) {
		return Point{}, ErrInput
	}
	var q incipient
	s.start(&q, vapor)
	defer q.release()
	spec := specification{kind: specP, value: p}
	if vapor && s.mayTurnBack(p) {
		// Of the two bubble points at such a pressure the colder is meant.
		if pt, err := q.alongEnvelope(spec, math.Log(p)); err == nil || err == ErrAboveCritical {
			return pt, err
		}
	}
	if pt, ok := q.direct(spec, q.raoultP(p), p); ok {
		return pt, nil
	}
	pt, err := q.alongEnvelope(spec, math.Log(p))
	if q.mayBeBetween(err) {
		return q.fromBetween(spec, q.raoultP(p), p, err)
	}
	return pt, err
}

// mayTurnBack reports whether a pressure is so near the critical one that the bubble line
// may have it twice.
func (s *System) mayTurnBack(p float64) bool {
	mean := 0.0 // critical pressure of the components
	z := s.m.MoleFractions()
	for i := range s.m.Components() {
		mean += z[i] * s.m.Fluid(i).CriticalP
	}
	if p < 0.7*mean {
		return false // far below, and no envelope need be traced to know it
	}
	c, err := s.Critical()
	return err == nil && p > 0.99*c.P
}

// direct solves from Raoult's law, which is enough except near the critical
// point.
func (q *incipient) direct(spec specification, t, p float64) (Point, bool) {
	if !q.substitute(t, p, spec.kind == specT, 3) || !q.newton(spec, 30) {
		return Point{}, false
	}
	pt, err := q.point()
	// A solution far from where it was looked for may be a second one, in the
	// cold where some equations have liquids of their own making.
	if err != nil || math.Abs(math.Log(pt.T/t)) > 0.1 || math.Abs(math.Log(pt.P/p)) > 1.5 {
		return Point{}, false
	}
	return pt, true
}

// alongEnvelope solves from the traced phase envelope.
func (q *incipient) alongEnvelope(spec specification, value float64) (Point, error) {
	q.s.once.Do(q.s.trace)
	env := &q.s.envelope
	if env.err != nil {
		return Point{}, env.err
	}
	nodes := env.dew
	if q.vapor {
		nodes = env.bubble
	}
	if sigma, ok := q.fromEnvelope(nodes, value, spec.kind == specP); ok {
		guess := q.u
		ok = q.newton(spec, 30)
		if !ok {
			q.u = guess
			ok = q.atSigma(spec, sigma)
		}
		if ok {
			if pt, err := q.point(); err == nil {
				return pt, nil
			}
		}
	} else {
		last := &nodes[len(nodes)-1]
		coldest := last.u[q.n+1]
		if spec.kind == specP {
			coldest = last.lnP
		}
		if value > coldest {
			return Point{}, ErrAboveCritical
		}
	}
	if q.unstable {
		return Point{}, ErrTwoLiquids
	}
	return Point{}, ErrNotConverged
}

// mayBeBetween says that a dew point was missed which fromBetween may find. A
// bubble point has the liquid's composition given: where that splits there is none.
func (q *incipient) mayBeBetween(err error) bool {
	return !q.vapor && (err == ErrNotConverged || err == ErrTwoLiquids)
}

// between are the shares of the bulk in the compositions that fromBetween tries.
var between = [...]float64{1, 0.5, 0.75, 0.25, 0}

// fromBetween solves for a dew point from compositions of the first drop between
// Raoult's and the vapor's own, each improved for long: near a splitting liquid the
// drop runs through most of its range while the vapor hardly moves. Of several
// solutions the one at the lowest pressure, or highest temperature, is met first and
// is the stable one. The error is the one given where there is none.
func (q *incipient) fromBetween(
	spec specification, t, p float64, none error,
) (best Point, err error) {
	raoult, found := q.y, false
	for _, share := range between {
		sum := 0.0
		for i := range q.n {
			q.y[i] = math.Exp(share*math.Log(q.z[i]) + (1-share)*math.Log(raoult[i]))
			sum += q.y[i]
		}
		for i := range q.n {
			q.y[i] /= sum
		}
		if !q.substitute(t, p, spec.kind == specT, 60) || !q.newton(spec, 60) {
			continue
		}
		pt, err := q.point()
		first := pt.P < best.P
		if spec.kind == specP {
			first = pt.T > best.T
		}
		if err == nil && (!found || first) {
			best, found = pt, true
		}
	}
	if !found {
		return Point{}, none
	}
	return best, nil
}
