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
	p := q.raoultT(t)
	spec := specification{kind: specT, value: math.Log(t)}
	if q.substitute(t, p, true, 3) && q.newton(spec, 30) {
		if pt, err := q.point(); err == nil {
			return pt, nil
		}
	}
	return Point{}, ErrNotConverged
}

// blendP is the bubble or dew point at a pressure.
func (s *System) blendP(p float64, vapor bool) (Point, error) {
	if !valid(p) {
		return Point{}, ErrInput
	}
	var q incipient
	s.start(&q, vapor)
	defer q.release()
	t := q.raoultP(p)
	spec := specification{kind: specP, value: p}
	if q.substitute(t, p, false, 3) && q.newton(spec, 30) {
		if pt, err := q.point(); err == nil {
			return pt, nil
		}
	}
	return Point{}, ErrNotConverged
}
