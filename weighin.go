package satline

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// weighIn works out the charge to weigh in, as far as the label states it and
// the line set is known, and says what is wanting otherwise.
func (j *job) weighIn() {
	e := &j.visit.Equipment
	if e.Label.Charge == 0 {
		return
	}
	w := charge.WeighedCharge{Fluid: j.fluid, Label: e.Label.Charge, Adder: e.Label.LineAdder, Accessories: e.Accessories}
	if e.Arrangement != Package && e.Arrangement != PackageHeatPump {
		line := e.LineSet
		if line.Length == 0 || line.LiquidDiameter == 0 && w.Adder == nil {
			j.weighWants = "to weigh the charge in, measure the liquid line: its length and outside diameter, and the length that the label's charge allows for, say how much the line takes beyond the label"
			return
		}
		// A line is paced off to about a twentieth (common practice, no source).
		w.Length, w.FactoryLength = line.Length.PlusMinus(line.Length/20), e.Label.FactoryLineSet
		if w.Adder == nil {
			tube, err := charge.TubeOf(line.LiquidDiameter, charge.Annealed)
			if err != nil {
				j.weighWants = "to weigh the charge in, measure the liquid line again: " + err.Error()
				return
			}
			w.Tube, w.Device = tube, line.Device
		}
	}
	out, err := w.Weigh()
	if err != nil {
		j.weighWants = "the charge to weigh in cannot be worked out: " + err.Error()
		return
	}
	j.weighing = &out
}

// weighInSteps are what the charge to weigh in adds to a step that calls for it.
func (j *job) weighInSteps(why string) []Step {
	j.weighIn()
	switch {
	case j.weighing != nil:
		return []Step{{Do: closed("Otherwise " + j.weighing.Text(j.visit.Units)), Why: why}}
	case j.weighWants != "":
		return []Step{{Do: closed(sentence(j.weighWants)), Why: why}}
	}
	return nil
}

// forbiddenButWeighable finds what forbids judging the charge now and leaves
// weighing it in.
func (j *job) forbiddenButWeighable() (charge.Obstacle, bool) {
	if j.charge.Outcome == ChargeNotNow {
		for _, o := range j.obstacles {
			if o.Forbids && o.WeighIn {
				return o, true
			}
		}
	}
	return charge.Obstacle{}, false
}

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
		if !(a.Mass >= 0 && a.Mass <= 100) {
			return outOfRange(fmt.Sprintf("equipment.accessories[%d].mass", i), a.Mass, quantity.Kilograms(0), quantity.Kilograms(100), "give the mass that the maker of the part states")
		}
	}
	return nil
}
