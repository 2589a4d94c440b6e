package satline

import (
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// settled is what a log says of the readings: where each comes to rest, and whether the
// value that the charge is judged by has.
type settled struct {
	readings Readings
	fromLog  fieldSet // readings that stood still in the stretch they are taken from
	// steadiness of what the charge is judged by, valve that of the superheat
	// behind a valve that hunts.
	steadiness, valve *SteadinessVerdict
	// later says that the readings are known to be later than every move of refrigerant;
	// since is for how long the last was over.
	later bool
	since time.Duration
}

// settle judges whether the value that the charge is read from has come to rest since the
// last move of refrigerant, and takes the readings as their means over the one stretch that
// this value is taken from: the last in which it stood still, or the last half minute. What
// is derived from them was read, then, and belongs together.
func settle(p *prepared) (settled, error) {
	s := settled{readings: p.readings}
	since := sinceLastMove(p)
	if n := len(p.visit.Moves); n > 0 && p.visit.Conditions.ReadAt <= p.visit.Moves[n-1].At {
		s.readings = p.lastOf(p.log[:len(p.log)-len(since)])
	}
	log := thinned(since)
	s.later, s.since = readLater(p, log)
	if len(log) == 0 {
		return s, nil
	}
	method := charge.MethodFor(p.visit.Equipment.Metering)
	course, err := follow(p, log, method)
	if err != nil {
		return s, err
	}
	waited := len(p.visit.Moves) == 0 || s.since >= charge.WaitAfterMove()
	if waited && seldom(log) && course.State == charge.TooShort && course.Wait == 0 {
		course = deltaCourse{} // as good as none
	}
	// A valve hunts where its superheat swings while the subcooling stands still.
	var hunt deltaCourse
	if method == charge.Subcooling {
		if hunt, err = follow(p, log, charge.Superheat); err != nil {
			return s, err
		}
		if hunt.State == charge.Hunting {
			s.valve = steadinessOf(charge.Superheat, hunt)
		}
	}
	still := p.takeStretch(&s.readings, log, course, hunt)
	if course.State == 0 || course.Steady() {
		s.fromLog = still
	}
	if course.State != 0 {
		// The value shown is the one that is judged, from the readings of the stretch; the
		// mean of the values of each moment differs from it in the last digit.
		if v, ok := valueOf(p, method, &s.readings); ok {
			course.Value.Value = v
		}
		s.steadiness = steadinessOf(method, course)
	}
	return s, nil
}

// seldom says that a log is written by hand, half a minute and more from one entry to the next. A
// few such entries that agree hold nothing up that would be judged without a log.
func seldom(log []LogEntry) bool {
	last := len(log) - 1
	return log[last].At-log[0].At >= time.Duration(last)*30*time.Second
}

// lastOf is the readings with those that a part of the log holds as it holds them last: what was
// read before a move, the air of the room above all, counts until it is read again.
func (p *prepared) lastOf(log []LogEntry) Readings {
	r := p.readings
	log = thinned(log)
	for j := range readingFields {
		f := &readingFields[j]
		for i := len(log) - 1; i >= 0 && p.logged.has(j); i-- {
			if f.has(&log[i].Readings) {
				f.copy(&r, &log[i].Readings)
				break
			}
		}
	}
	return r
}

// takeStretch takes the readings from the stretch of a course, in whole cycles of
// what hunts beside it, or from the last minutes of a log that has no course, and
// says which of them stood still.
func (p *prepared) takeStretch(
	r *Readings, log []LogEntry, course, hunt deltaCourse,
) (stood fieldSet) {
	from, to := course.From, course.To
	switch {
	case course.State == 0:
		to = log[len(log)-1].At
		from = to - lastStretch
	case course.Steady() && hunt.State == charge.Hunting:
		if n := (hunt.To - max(hunt.From, from)) / hunt.Period; n > 0 {
			from, to = hunt.To-n*hunt.Period, hunt.To
		}
	}
	for i := range readingFields {
		if p.logged.has(i) && readingFields[i].over(r, log, from, to) {
			stood |= 1 << i
		}
	}
	return stood
}

// lastStretch is what a reading is taken from where the log says nothing of the
// superheat or the subcooling: the five minutes that steadiness is judged by.
const lastStretch = 5 * time.Minute

// readLater tells whether readings are known to be later than the last move, and for how
// long that was over when the last of them was taken.
func readLater(p *prepared, log []LogEntry) (bool, time.Duration) {
	n := len(p.visit.Moves)
	if n == 0 {
		return true, 0
	}
	last := p.visit.Moves[n-1].At
	switch at := p.visit.Conditions.ReadAt; {
	case len(log) > 0:
		return true, log[len(log)-1].At - last
	case at > last:
		return true, at - last
	}
	return false, 0
}

func sinceLastMove(p *prepared) []LogEntry {
	if len(p.visit.Moves) == 0 {
		return p.log
	}
	last := p.visit.Moves[len(p.visit.Moves)-1].At
	for i := range p.log {
		if p.log[i].At > last {
			return p.log[i:]
		}
	}
	return nil
}

// follow makes a course of superheat or subcooling over the log; its State is zero where
// the log does not hold it.
func follow(p *prepared, log []LogEntry, method charge.Method) (deltaCourse, error) {
	var usual [thin.Kept + 1]charge.Sample[quantity.TemperatureDelta]
	samples := usual[:0]
	for i := range log {
		if v, ok := valueOf(p, method, &log[i].Readings); ok {
			samples = append(
				samples, charge.Sample[quantity.TemperatureDelta]{At: log[i].At, Value: v},
			)
		}
	}
	if len(samples) == 0 {
		return deltaCourse{}, nil
	}
	course, err := charge.SteadinessOf(samples, quantity.TemperatureDelta(steadyWithin))
	if err != nil {
		return course, rangeProblem("log", err)
	}
	return course, nil
}

// valueOf is the superheat or subcooling of a set of readings; false where one is missing, or
// where there is none, as with a gauge at rest or a hose that is shut.
func valueOf(p *prepared, method charge.Method, r *Readings) (quantity.TemperatureDelta, bool) {
	gauge, line, of := r.LiquidPressure.read(), r.LiquidLine.read(), p.fluid.Subcooling
	if method == charge.Superheat {
		gauge, line, of = r.SuctionPressure.read(), r.SuctionLine.read(), p.fluid.Superheat
	}
	if gauge == nil || line == nil {
		return 0, false
	}
	v, err := of(p.absolute(*gauge).Value, line.Value)
	return v, err == nil
}

// absolute turns a gauge reading into an absolute pressure; the uncertainties
// of gauge and atmosphere are independent.
func (p *prepared) absolute(g gaugeReading) quantity.Uncertain[quantity.Pressure] {
	atm := p.atmosphere.Pressure
	return quantity.Uncertain[quantity.Pressure]{
		Value: g.Value.Absolute(atm.Value),
		Std:   math.Hypot(g.Std, atm.Std),
	}
}

func steadinessOf(method charge.Method, c deltaCourse) *SteadinessVerdict {
	return &SteadinessVerdict{
		Method: method,
		Course: c,
		Says: fact.New(
			fact.Code("steadiness."+c.State.String()),
			fact.Of("method", term("method", method.String())), fact.Amount("value", c.Value.Value),
			fact.Amount("low", c.Low), fact.Amount("high", c.High),
			fact.Measured("estimate", c.Estimate), fact.Of("period", c.Period),
			fact.Of("wait", modes.Minutes(c.Wait)),
		),
	}
}

// moving says that what the charge is judged by has not come to rest.
func (s *settled) moving() bool { return s.steadiness != nil && !s.steadiness.Course.Steady() }
