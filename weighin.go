package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity/fact"
)

// weighing works out the charge to weigh in; where it cannot, want is the step that gets
// what is missing.
func weighing(p *prepared) (w *charge.Weighing, want fact.Code) {
	e := &p.visit.Equipment
	if e.Label.Charge == 0 {
		return nil, StepBackToTarget
	}
	c := charge.WeighedCharge{
		Fluid:       p.fluid,
		Label:       e.Label.Charge,
		Adder:       e.Label.LineAdder,
		Accessories: e.Accessories,
	}
	if e.Arrangement.inTwo() {
		line := e.LineSet
		if line.Length == 0 || line.LiquidDiameter == 0 && c.Adder == nil {
			return nil, StepMeasureLine
		}
		// A line is paced off to about a twentieth (common practice, no source).
		c.Length, c.FactoryLength = line.Length.PlusMinus(line.Length/20), e.Label.FactoryLineSet
		if c.Adder == nil {
			tube, err := charge.TubeOf(line.LiquidDiameter, charge.Annealed)
			if err != nil {
				return nil, StepMeasureLine
			}
			c.Tube, c.Device = tube, line.Device
		}
	}
	out, err := c.Weigh()
	if err != nil {
		return nil, StepMeasureLine
	}
	return &out, ""
}
