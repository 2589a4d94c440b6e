// Package thin keeps a log of readings small: those of one slot of time become one.
//
// Slots are counted from the zero of the log's own clock, and a slot that holds one
// reading gives back that reading and its time. To thin a log that was thinned
// changes nothing, then, and it makes no difference whether a log is thinned at once
// or while it is taken.
package thin

import "time"

// width of a slot. A valve swings in 45 s to some minutes: four readings to a cycle
// and more are left.
const width = 10 * time.Second

// Kept is how many slots a judgement of steadiness looks back: half an hour of
// gauges that send every second, three hours of somebody who writes every minute.
const Kept = 180

// Slot returns the number of the slot that a time lies in.
func Slot(at time.Duration) int64 {
	n := int64(at / width)
	if at%width < 0 {
		n--
	}
	return n
}

// A Mean is that of the readings of one slot, without the lowest and the highest
// where there are three or more: one freak among them counts for nothing. The
// zero value holds no reading.
type Mean struct {
	n              int
	sum, low, high float64
}

// Add takes a reading.
func (m *Mean) Add(v float64) {
	if m.n == 0 {
		m.low, m.high = v, v
	}
	m.n++
	m.sum += v
	m.low, m.high = min(m.low, v), max(m.high, v)
}

// Value returns the mean; ok is false where there is no reading.
func (m *Mean) Value() (v float64, ok bool) {
	switch {
	case m.n == 0:
		return 0, false
	case m.n < 3:
		return m.sum / float64(m.n), true
	}
	inner := (m.sum - (m.low + m.high)) / float64(m.n-2)
	return min(max(inner, m.low), m.high), true
}

// A Clock is the mean time of the readings of one slot. The zero value holds none.
type Clock struct {
	n     int64
	first time.Duration
	since time.Duration // sum over the readings after the first
}

// Add takes the time of a reading.
func (c *Clock) Add(at time.Duration) {
	if c.n == 0 {
		c.first = at
	}
	c.n++
	c.since += at - c.first
}

// At returns the mean time; 0 without readings.
func (c *Clock) At() time.Duration {
	if c.n == 0 {
		return 0
	}
	return c.first + c.since/time.Duration(c.n)
}
