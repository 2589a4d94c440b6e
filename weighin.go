package satline

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// weighing works out the charge to weigh in; where it cannot, want is the step that gets
// what is missing.
func weighing(p *prepared) (w *charge.Weighing, want fact.Code) {
	e := &p.visit.Equipment
	if e.Label.Charge == 0 {
		return nil, StepBackToTarget
	}
	c := charge.WeighedCharge{Fluid: p.fluid, Label: e.Label.Charge, Adder: e.Label.LineAdder, Accessories: e.Accessories}
	if e.Arrangement != Package && e.Arrangement != PackageHeatPump {
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

// checkWeighing checks what a label and its parts say of charges.
// checkWeighing checks what a label and its parts say of charges.
func checkWeighing(e Equipment) error {
	if a := e.Label.LineAdder; a != nil {
		const advice = `give a mass and the length of liquid line it is for, as {"mass": "0.6 oz", "per": "1 ft"}`
		if !(a.Mass >= 0 && a.Mass <= 10) {
			return outOfRange("equipment.label.lineAdder.mass", a.Mass, quantity.Kilograms(0), quantity.Kilograms(10), advice)
		}
		if a.Per == 0 {
			return missing("equipment.label.lineAdder.per", advice)
		}
		if !(a.Per > 0 && a.Per <= 100) {
			return outOfRange("equipment.label.lineAdder.per", a.Per, quantity.Meters(0), quantity.Meters(100), advice)
		}
	}
	for i, a := range e.Accessories {
		if a.Mass == 0 {
			return missing(fmt.Sprintf("equipment.accessories[%d].mass", i), "give the mass that the maker of the part states, or leave the part out")
		}
		if !(a.Mass >= 0 && a.Mass <= 100) {
			return outOfRange(fmt.Sprintf("equipment.accessories[%d].mass", i), a.Mass, quantity.Kilograms(0), quantity.Kilograms(100), "give the mass that the maker of the part states")
		}
	}
	return nil
}
