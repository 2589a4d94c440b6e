package satline

import (
	"fmt"
	"math"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// takeSettled replaces the readings by where the log, since the last move of
// refrigerant, says that they settle, and judges whether the value that the
// charge is read from has come to rest.
func (j *job) takeSettled() error {
	log := j.sinceLastMove()
	if len(log) == 0 {
		return nil
	}
	for _, f := range readingFields {
		steady, ok, err := f.settle(&j.readings, log)
		if err != nil {
			return rangeProblem("log", err)
		}
		j.settled[f.name] = ok && steady
	}
	if err := j.followValve(log); err != nil {
		return err
	}
	course, of, err := j.course(log)
	if err != nil || of == "" {
		return err
	}
	j.steadiness = &SteadinessVerdict{Of: of, Course: course, Text: steadinessText(of, course, j.visit.Units)}
	return nil
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
func (j *job) course(log []LogEntry) (charge.Steadiness[quantity.TemperatureDelta], string, error) {
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
	j.valve = &SteadinessVerdict{Of: of, Course: course, Text: steadinessText(of, course, j.visit.Units)}
	return nil
}

// follow makes a course of one value over the log; of is empty where the log
// does not hold it.
func (j *job) follow(log []LogEntry, of string, at func(*Readings) (quantity.TemperatureDelta, bool, error)) (charge.Steadiness[quantity.TemperatureDelta], string, error) {
	var samples []charge.Sample[quantity.TemperatureDelta]
	for i := range log {
		v, ok, err := at(&log[i].Readings)
		if err != nil {
			return charge.Steadiness[quantity.TemperatureDelta]{}, of, rangeProblem("log", err)
		}
		if ok {
			samples = append(samples, charge.Sample[quantity.TemperatureDelta]{At: log[i].At, Value: v})
		}
	}
	if len(samples) == 0 {
		return charge.Steadiness[quantity.TemperatureDelta]{}, "", nil
	}
	course, err := charge.Settle(samples, quantity.TemperatureDelta(steadyWithin))
	if err != nil {
		return course, of, rangeProblem("log", err)
	}
	return course, of, nil
}

func (j *job) superheatAt(r *Readings) (quantity.TemperatureDelta, bool, error) {
	if r.SuctionPressure == nil || r.SuctionLine == nil {
		return 0, false, nil
	}
	v, err := j.fluid.Superheat(j.absolute(*r.SuctionPressure).Value, r.SuctionLine.Value)
	return v, err == nil, err
}

func (j *job) subcoolingAt(r *Readings) (quantity.TemperatureDelta, bool, error) {
	if r.LiquidPressure == nil || r.LiquidLine == nil {
		return 0, false, nil
	}
	v, err := j.fluid.Subcooling(j.absolute(*r.LiquidPressure).Value, r.LiquidLine.Value)
	return v, err == nil, err
}

func steadinessText(of string, c charge.Steadiness[quantity.TemperatureDelta], sys quantity.System) string {
	switch c.State {
	case charge.Settled:
		return fmt.Sprintf("the %s has settled at %s, within %s to %s", of, c.Value.Value.Format(sys), c.Low.Format(sys), c.High.Format(sys))
	case charge.Hunting:
		return fmt.Sprintf("the %s hunts between %s and %s with a period of about %.0f s", of, c.Low.Format(sys), c.High.Format(sys), c.Period.Seconds())
	case charge.Settling:
		return fmt.Sprintf("the %s is still moving towards about %s; wait another %.0f min", of, c.Value.Format(sys), math.Ceil(c.Wait.Minutes()))
	case charge.Drifting:
		return fmt.Sprintf("the %s drifts and shows no end yet; keep the machine running and log on", of)
	}
	return fmt.Sprintf("the log is too short to say whether the %s has settled", of)
}

// unsettled says why the charge may not be judged yet; empty where it may.
func (j *job) unsettled() string {
	if s := j.steadiness; s != nil && (s.Course.State == charge.Settling || s.Course.State == charge.Drifting) {
		return s.Text
	}
	return ""
}
