package satline

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/thin"
	"github.com/satline/satline/quantity"
)

// takeSettled judges whether the value that the charge is read from has come to
// rest since the last move of refrigerant, and replaces the readings by their means
// over the one stretch that this value is taken from: the last in which it stood
// still, or the last half minute. What is derived from them was read, then, and belongs
// together.
func (j *job) takeSettled() error {
	log := thinned(j.sinceLastMove())
	if len(log) == 0 {
		return nil
	}
	course, of, err := j.course(log)
	if err != nil {
		return err
	}
	if err := j.followValve(log); err != nil {
		return err
	}
	var hunt deltaCourse
	if j.valve != nil {
		hunt = j.valve.Course
	}
	still := takeStretch(&j.readings, log, course, hunt)
	if of == "" {
		j.settled = still
		return nil
	}
	if course.Steady() {
		j.settled = still
	}
	j.steadiness = j.steadinessOf(of, course)
	return nil
}

// takeStretch takes the readings from the stretch of a course, in whole cycles of
// what hunts beside it, or from the last minutes of a log that has no course, and
// says which of them stood still.
func takeStretch(r *Readings, log []LogEntry, course, hunt deltaCourse) map[string]bool {
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
	stood := map[string]bool{}
	for _, f := range readingFields {
		still, ok := f.over(r, log, from, to)
		stood[f.name] = ok && still
	}
	return stood
}

// lastStretch is what a reading is taken from where the log says nothing of the
// superheat or the subcooling: the five minutes that steadiness is judged by.
const lastStretch = 5 * time.Minute

// thinned is the log with the readings of each slot made one. It changes nothing in
// a log that is thinned already.
func thinned(log []LogEntry) []LogEntry {
	slots := 0
	for i := range log {
		if i == 0 || thin.Slot(log[i].At) != thin.Slot(log[i-1].At) {
			slots++
		}
	}
	if slots == len(log) {
		return log
	}
	out := make([]LogEntry, 0, slots)
	for from := 0; from < len(log); {
		var clock thin.Clock
		to := from
		for to < len(log) && thin.Slot(log[to].At) == thin.Slot(log[from].At) {
			clock.Add(log[to].At)
			to++
		}
		e := LogEntry{At: clock.At()}
		for _, f := range readingFields {
			f.thin(&e.Readings, log[from:to])
		}
		out, from = append(out, e), to
	}
	return out
}

func (j *job) sinceLastMove() []LogEntry {
	if len(j.visit.Moves) == 0 {
		return j.log
	}
	last := j.visit.Moves[len(j.visit.Moves)-1].At
	for i := range j.log {
		if j.log[i].At > last {
			return j.log[i:]
		}
	}
	return nil
}

// course follows the superheat of a fixed restrictor, or the subcooling of a
// valve, over the log.
func (j *job) course(log []LogEntry) (deltaCourse, string, error) {
	if j.visit.Equipment.Metering == FixedRestrictor {
		return j.follow(log, "superheat", j.superheatAt)
	}
	return j.follow(log, "subcooling", j.subcoolingAt)
}

// followValve sees whether a valve hunts: its superheat swings while the
// subcooling, which the charge is judged by, stands still.
func (j *job) followValve(log []LogEntry) error {
	if j.visit.Equipment.Metering == FixedRestrictor {
		return nil
	}
	course, of, err := j.follow(log, "superheat", j.superheatAt)
	if err != nil || of == "" || course.State != charge.Hunting {
		return err
	}
	j.valve = j.steadinessOf(of, course)
	return nil
}

// follow makes a course of one value over the log; of is empty where the log
// does not hold it.
func (j *job) follow(
	log []LogEntry, of string, at func(*Readings) (quantity.TemperatureDelta, bool),
) (deltaCourse, string, error) {
	samples := make([]charge.Sample[quantity.TemperatureDelta], 0, len(log))
	for i := range log {
		if v, ok := at(&log[i].Readings); ok {
			samples = append(samples, charge.Sample[quantity.TemperatureDelta]{At: log[i].At, Value: v})
		}
	}
	if len(samples) == 0 {
		return deltaCourse{}, "", nil
	}
	course, err := charge.Settle(samples, quantity.TemperatureDelta(steadyWithin))
	if err != nil {
		return course, of, rangeProblem("log", err)
	}
	return course, of, nil
}

// superheatAt is that of one moment; a gauge at rest or a hose that is shut may have
// none.
func (j *job) superheatAt(r *Readings) (quantity.TemperatureDelta, bool) {
	if r.SuctionPressure == nil || r.SuctionLine == nil {
		return 0, false
	}
	v, err := j.fluid.Superheat(j.absolute(*r.SuctionPressure).Value, r.SuctionLine.Value)
	return v, err == nil
}

func (j *job) subcoolingAt(r *Readings) (quantity.TemperatureDelta, bool) {
	if r.LiquidPressure == nil || r.LiquidLine == nil {
		return 0, false
	}
	v, err := j.fluid.Subcooling(j.absolute(*r.LiquidPressure).Value, r.LiquidLine.Value)
	return v, err == nil
}

// deltaCourse is that of a superheat or a subcooling.
type deltaCourse = charge.Steadiness[quantity.TemperatureDelta]

func (j *job) steadinessOf(of string, c deltaCourse) *SteadinessVerdict {
	return &SteadinessVerdict{Of: of, Course: c, Text: steadinessText(of, c, j.visit.Units)}
}

// steadinessText says what was read, and marks an estimate as one.
func steadinessText(of string, c deltaCourse, sys quantity.System) string {
	value, low, high := c.Value.Value.Format(sys), c.Low.Format(sys), c.High.Format(sys)
	minutes := max(math.Ceil(c.Wait.Minutes()), 1)
	switch c.State {
	case charge.Settled:
		return fmt.Sprintf("the %s has settled at %s, within %s to %s over the last %.0f min",
			of, value, low, high, (c.To - c.From).Minutes())
	case charge.Hunting:
		return fmt.Sprintf("the %s hunts between %s and %s with a period of about %.0f s",
			of, low, high, c.Period.Seconds())
	case charge.Settling:
		return fmt.Sprintf("the %s is still moving, %s at last; by estimate it ends near %s in about %.0f min",
			of, value, c.Estimate.Format(sys), minutes)
	case charge.Drifting:
		return fmt.Sprintf("the %s is still moving, %s at last, and shows no end yet; "+
			"keep the machine running and log on", of, value)
	}
	return fmt.Sprintf("the log is too short to say whether the %s has settled, %s at last; "+
		"log on for %.0f min", of, value, minutes)
}

// unsettled says why the charge may not be judged yet; empty where it may.
func (j *job) unsettled() string {
	if s := j.steadiness; s != nil && !s.Course.Steady() {
		return s.Text
	}
	return ""
}

// showDerived puts the value that the readings of the stretch give in place of the
// mean of the values of each moment, which differs from it in the last digit: the
// value shown is the one that is judged.
func (j *job) showDerived() {
	s := j.steadiness
	if s == nil {
		return
	}
	value := j.derived.Subcooling
	if s.Of == "superheat" {
		value = j.derived.Superheat
	}
	if value != nil {
		s.Course.Value.Value = value.Value
		s.Text = steadinessText(s.Of, s.Course, j.visit.Units)
	}
}
