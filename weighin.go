package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// WeighedCharge is what is known of the charge to weigh in: label, line set, accessories;
// its Weigh works out the one figure. The error is a *VisitError that names the field which
// is missing or wrong: "equipment.label.charge".
func (e Equipment) WeighedCharge() (charge.WeighedCharge, error) {
	var wrong checker
	c := charge.WeighedCharge{
		Fluid:       wrong.fluid(e.Refrigerant),
		Label:       e.Label.Charge,
		Adder:       e.Label.LineAdder,
		Accessories: e.Accessories,
	}
	if e.Label.Charge == 0 {
		wrong.missing("equipment.label.charge", "read it on the label")
	}
	if wrong.equipment(&e); len(wrong) > 0 {
		return charge.WeighedCharge{}, wrong[0]
	}
	if !e.Arrangement.inTwo() {
		return c, nil
	}
	line := e.LineSet
	if line.Length == 0 {
		return c, missing("equipment.lineSet.length", "pace it off")
	}
	// A line is paced off to about a twentieth (common practice, no source).
	c.Length, c.FactoryLength = line.Length.PlusMinus(line.Length/20), e.Label.FactoryLineSet
	c.Device = line.Device
	if c.Adder != nil {
		return c, nil
	}
	if line.LiquidDiameter == 0 {
		return c, missing("equipment.lineSet.liquidDiameter", "read it on the pipe, or measure it")
	}
	tube, err := charge.TubeOf(line.LiquidDiameter, charge.Annealed)
	if err != nil {
		return c, rangeProblem("equipment.lineSet.liquidDiameter", err)
	}
	c.Tube = tube
	return c, nil
}

// weighing works out the charge to weigh in; where it cannot, want is the step that gets
// what is missing.
func weighing(p *prepared) (w *charge.Weighing, want fact.Code) {
	e := &p.visit.Equipment
	if e.Label.Charge == 0 {
		return nil, modes.ReadLabel
	}
	if c, err := e.WeighedCharge(); err == nil {
		if out, err := c.Weigh(); err == nil {
			return &out, ""
		}
	}
	return nil, modes.MeasureLine
}
