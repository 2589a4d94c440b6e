package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
)

// caseOf is what the judge of a mode is handed; the error is that of the log before a move.
func caseOf(
	p *prepared, s *settled, d *Derived, t *modes.Aim, mode ModeFound,
) (*modes.Case, error) {
	v := &p.visit
	input := inputOf(p, &s.readings, d, mode.Mode)
	c := &modes.Case{
		Evidence: evidenceOf(p, s, input, t), Fluid: p.fluid, Aim: *t, Says: mode.Says,
		Superheat: d.Superheat, Subcooling: d.Subcooling, Site: p.atmosphere.Pressure,
		Room: v.Equipment.ColdRoom, BulbLine: s.readings.BulbLine,
		DischargePressure: s.readings.DischargePressure,
		Metered:           p.electrical != nil, Running: v.Conditions.Running,
		TwoPhaseLine:   v.Equipment.LineSet.Device == charge.DeviceOutdoors,
		ReadBeforeMove: !s.later, NetMoved: movedBefore(v.Moves, nil),
		WholeCharge: wholeCharge(&v.Equipment),
		Answered:    func() []charge.Moved { return answered(p, t) },
	}
	c.Doubts = readcheck.Check(input)
	c.Moved = c.NetMoved
	if mode.Mode == Cooling {
		var err error
		if c.Earlier, err = earlierOf(p, mode.Mode); err != nil {
			return nil, err
		}
		c.Moved = movedBefore(v.Moves, c.Earlier)
	}
	c.Given = make([]string, 0, len(readingFields))
	for i := range readingFields {
		if readingFields[i].has(&s.readings) {
			c.Given = append(c.Given, readingFields[i].name)
		}
	}
	if v.Complaint != 0 {
		c.Complaint = v.Complaint.String()
	}
	if s.steadiness != nil {
		c.Course = &s.steadiness.Course
		if s.moving() {
			c.Moving = s.steadiness.Says
		}
	}
	if s.valve != nil {
		c.Valve = s.valve.Says
	}
	for _, o := range t.Obstacles {
		if o.Spoils {
			c.Spoils = append(c.Spoils, o)
		}
	}
	c.Dangers = dangersOf(p, s, d, c, mode.Mode)
	c.Weighing, c.WeighingWants = weighing(p)
	return c, nil
}

// wholeCharge is that of the label, else by the capacity; zero where neither is known.
func wholeCharge(e *Equipment) quantity.Mass {
	switch {
	case e.Label.Charge > 0:
		return e.Label.Charge
	case e.NominalCapacity > 0:
		return charge.EstimateCharge(e.NominalCapacity)
	}
	return 0
}

// answered pairs the net mass moved with where the reading had settled before the next move;
// intervals that the log does not show are left out.
func answered(p *prepared, t *modes.Aim) []charge.Moved {
	var out []charge.Moved
	net, from := quantity.Mass(0), 0
	for _, m := range p.visit.Moves {
		to := from
		for to < len(p.log) && p.log[to].At <= m.At {
			to++
		}
		if to > from {
			if course, err := p.followed(from, to, t.Method); err == nil &&
				course.State != 0 {
				v := course.Value
				if course.State == charge.Settling { // it went on there, as far as can be told
					v = course.Estimate
				}
				v.Std = max(v.Std, t.Reading.Measured.Std)
				out = append(out, charge.Moved{Net: net, Value: v})
			}
		}
		net += m.Added - m.Recovered
		from = to
	}
	return append(out, charge.Moved{Net: net, Value: t.Reading.Measured})
}

// movedBefore is the net mass added before the first readings that the diagnosis goes by.
func movedBefore(moves []Move, earlier *diagnose.Earlier) quantity.Mass {
	if earlier != nil {
		moves = moves[:len(moves)-1]
	}
	sum := quantity.Mass(0)
	for _, m := range moves {
		sum += m.Added - m.Recovered
	}
	return sum
}

// earlierOf are the settled readings before the last move, and the move; nil where there
// are none.
func earlierOf(p *prepared, mode Mode) (*diagnose.Earlier, error) {
	n := len(p.visit.Moves)
	if n == 0 || len(p.log) == 0 {
		return nil, nil
	}
	last := p.visit.Moves[n-1]
	var before []LogEntry
	for i := range p.log {
		if p.log[i].At <= last.At {
			before = p.log[:i+1]
		}
	}
	if len(before) == 0 {
		return nil, nil
	}
	whole := len(before) < len(p.log)
	if k := p.before; k != nil && k.earlier != nil && k.mode == mode && whole {
		return k.earlier, nil
	}
	course, err := p.followed(0, len(before), charge.MethodFor(p.visit.Equipment.Metering))
	if err != nil {
		return nil, err
	}
	var r Readings
	takeStretch(&r, thinned(before), course, deltaCourse{})
	d, err := derive(p, &r)
	if err != nil {
		return nil, nil // what was read then cannot be, and the log says so elsewhere
	}
	action := diagnose.Action{Kind: diagnose.ChargeAdded, Mass: last.Added}
	if last.Recovered > 0 {
		action = diagnose.Action{Kind: diagnose.ChargeRecovered, Mass: last.Recovered}
	}
	earlier := &diagnose.Earlier{
		Input:   inputOf(p, &r, &d, mode),
		Airflow: r.Airflow, Power: r.Power, Done: []diagnose.Action{action},
	}
	if k := p.before; k != nil && whole {
		k.earlier, k.mode = earlier, mode
	}
	return earlier, nil
}

// followed is follow of a part of the log.
func (p *prepared) followed(from, to int, method charge.Method) (deltaCourse, error) {
	key, whole := stretch{from, to, method}, p.before != nil && to < len(p.log)
	if whole {
		if course, ok := p.before.courses[key]; ok {
			return course, nil
		}
	}
	course, err := follow(p, thinned(p.log[from:to]), method)
	if whole && err == nil {
		p.before.courses[key] = course
	}
	return course, err
}
