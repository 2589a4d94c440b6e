package airside

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/coil"
)

// outdoorAt is the outdoor temperature at which the coldest surface is at 32 °F, with all else
// as at a condition that the line runs at: coil and air know nothing of it, and capacity is
// a line. It is false where no evaporating temperature does that.
func (l CapacityLine) outdoorAt(at Conditions, now Running) (float64, bool) {
	m := l.matchIn(at)
	var last coil.Result
	warmer := func(t float64) float64 {
		last, _ = m.at(t)
		return last.Surface - float64(Freezing)
	}
	near := float64(now.Evaporating + Freezing - now.Surface)
	t, ok := risingFrom(near, warmer, float64(coldest), float64(at.Return.DryBulb()), 1e-9)
	if warmer(t); !ok || !(last.Heat > 0) {
		return 0, false
	}
	perEvaporating, perOutdoor := l.slopes()
	share := last.Heat / float64(l.Capacity)
	return float64(l.Outdoor) +
		(share-1-perEvaporating*(t-float64(l.Evaporating)))/perOutdoor, true
}

// crossing is look, for a change with which the coldest surface of a line only rises: there is
// none where at the end it is on the side of 32 °F that it is on now, and what is changed and
// the evaporating temperature are looked for at once.
func (s *freezeSearch) crossing(
	x, low, high float64, at func(float64) (Conditions, error),
) (float64, bool) {
	if !s.isLine {
		return s.look(x, low, high, at)
	}
	end := s.end(low, high)
	evaporating := float64(s.now.Evaporating + Freezing - s.now.Surface) // about, at 32 °F
	there, ok := s.freezesAt(end, evaporating, at)
	switch {
	case !ok:
		return s.look(x, low, high, at)
	case there == (s.now.Surface < Freezing):
		return 0, false
	}
	off := func(x, t float64) (surface, heat float64) {
		c, err := at(x)
		if err != nil {
			return math.NaN(), math.NaN()
		}
		m := s.line.matchIn(c)
		r, excess := m.at(t)
		const within, share = 1e-6, 1e-8 // K, and of the capacity
		return (r.Surface - float64(Freezing)) / within,
			excess / (share * float64(s.line.Capacity))
	}
	v, _, ok := root.Pair(off, (x+end)/2, evaporating, (end-x)/50, 0.2)
	if !ok || v < min(x, end) || v > max(x, end) {
		return s.look(x, low, high, at)
	}
	return v, true
}

// freezesAt says on which side of 32 °F the surface is, if the line runs there.
func (s *freezeSearch) freezesAt(
	x, evaporating float64, at func(float64) (Conditions, error),
) (freezes, ok bool) {
	c, err := at(x)
	if err != nil || checkPass(c.Return, c.Airflow, coldest) != nil {
		return false, false
	}
	m := s.line.matchIn(c)
	r, excess := m.at(evaporating)
	freezes = r.Surface < float64(Freezing)
	if colder := excess > 0; colder == freezes && !math.IsNaN(excess) {
		return freezes, true // it settles further on that side
	}
	running, err := s.line.Run(c)
	return running.Surface < Freezing, err == nil
}
