package satline

import (
	"github.com/satline/satline/charge"
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
		Room: v.Equipment.ColdRoom, BulbLine: s.readings.BulbLine.read(),
		LiquidAtValve:     s.readings.LiquidAtValve.read(),
		DischargePressure: s.readings.DischargePressure.read(),
		Metered:           p.electrical != nil, Running: v.Conditions.Running,
		NoLiquidPort:   v.Equipment.noLiquidPort(),
		ReadBeforeMove: !s.later, NetMoved: movedBefore(v.Moves, nil),
		WholeCharge: wholeCharge(&v.Equipment),
		Answered:    func() []charge.Moved { return answered(p, t) },
	}
	if mode.Mode != Cooling {
		c.Log = loggedOf(p.log)
	}
	c.Doubts = readcheck.Check(&c.Input)
	c.Moved = c.NetMoved
	if mode.Mode == Cooling {
		var err error
		if c.Earlier, err = earlierOf(p, t, mode.Mode); err != nil {
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

func loggedOf(log []LogEntry) []modes.Logged {
	out := make([]modes.Logged, len(log))
	for i := range log {
		e := &log[i]
		out[i] = modes.Logged{
			At: e.At, Return: e.ReturnDryBulb.read(), Supply: e.SupplyDryBulb.read(),
			Outdoor: e.OutdoorDryBulb.read(), Suction: e.SuctionPressure.read(),
		}
	}
	return out
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
