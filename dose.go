package satline

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// dose says how far to move the charge now; where something else has to be
// mended first, that the charge waits.
func (j *job) dose(waits bool) []Step {
	if waits {
		return []Step{{
			Do:  "Leave the charge until the steps above are done, then measure again.",
			Why: "it reads " + string(j.charge.Outcome) + " now, and the steps above may change that",
		}}
	}
	if j.charge.Target == nil {
		return []Step{{
			Do:  "Recover refrigerant a few ounces at a time, wait until the readings settle, and measure again.",
			Why: "without a target there is no telling how much; stop as soon as superheat appears",
		}}
	}
	if j.visit.Scope == VerdictOnly {
		return []Step{j.fewOunces("it reads " + string(j.charge.Outcome))}
	}
	if e := j.visit.Equipment; e.Label.Charge == 0 && e.NominalCapacity == 0 {
		return []Step{j.fewOunces("it reads " + string(j.charge.Outcome) + "; how much to move follows once the label charge or the nominal capacity is given")}
	}
	plan := charge.Dosing{
		Target:          j.chargeTarget,
		History:         j.moved(),
		LabelCharge:     j.visit.Equipment.Label.Charge,
		NominalCapacity: j.visit.Equipment.NominalCapacity,
		Obstacles:       j.obstacles,
		Fluid:           j.fluid,
	}
	if j.steadiness != nil {
		plan.Settling = j.steadiness.Course
	}
	d, err := plan.Next()
	if err != nil {
		return []Step{j.fewOunces("it reads " + string(j.charge.Outcome) + "; how much cannot be said: " + err.Error())}
	}
	j.nextDose = &d
	steps := []Step{}
	if j.charge.Outcome == ChargeLow {
		steps = append(steps, j.leak())
	}
	steps = append(steps, Step{Do: sentence(d.Text(j.visit.Units)) + ".", Why: "it reads " + string(j.charge.Outcome) + "; doses are small because superheat and subcooling answer more strongly the nearer they are to their target"})
	if j.charge.Outcome == ChargeLow && !j.fluid.Pure() {
		steps[len(steps)-1].Why += "; a blend goes in as liquid, throttled, or its composition changes"
	}
	if d.Reason == "moved-much" || d.Reason == "many-moves" {
		steps = append(steps, j.weighInSteps("what was moved has not brought it into band")...)
	}
	return steps
}

// muchGlide is from where a blend that has leaked is not topped up (common practice,
// no source).
const muchGlide = quantity.TemperatureDelta(3)

// leak is the step before refrigerant is added.
func (j *job) leak() Step {
	s := Step{Do: "Find and mend the leak.", Why: "refrigerant is not used up; what is missing went somewhere"}
	if j.fluid.Flammable() {
		s.Do = "Ventilate, keep flames and sparks away, and find and mend the leak."
	}
	e := &j.visit.Equipment
	if r := j.readings.SuctionPressure; r != nil {
		if glide, err := j.fluid.Glide(j.absolute(*r).Value); err == nil && glide > muchGlide {
			s.Why += "; a leak takes more of some parts of this blend than of others: where much is missing, recover the rest and weigh in new"
		}
	}
	beyond := e.LineSet.Length - e.Label.FactoryLineSet
	k := *j
	if k.weighIn(); e.Label.FactoryLineSet > 0 && beyond > 0 && k.weighing != nil && k.weighing.Line > 0 {
		amount := fmt.Sprintf("%.0f oz", k.weighing.Line.Ounces())
		if j.visit.Units == quantity.SI {
			amount = fmt.Sprintf("%.0f g", k.weighing.Line.Grams())
		}
		s.Why += fmt.Sprintf(", or was never put in: a line set %s longer than the label's charge allows for takes %s more than the label",
			beyond.Format(j.visit.Units), amount)
	}
	return s
}

// fewOunces is the move where its size is not worked out.
func (j *job) fewOunces(why string) Step {
	way := "Add"
	if j.charge.Outcome == ChargeHigh {
		way = "Recover"
	}
	return Step{Do: way + " refrigerant a few ounces at a time, wait until the readings settle, and measure again.", Why: why}
}

// moved pairs the net mass moved with where the reading had settled before the
// next move; intervals that the log does not show are left out.
func (j *job) moved() []charge.Moved {
	var out []charge.Moved
	net := quantity.Mass(0)
	from := 0
	for _, m := range j.visit.Moves {
		to := from
		for to < len(j.log) && j.log[to].At <= m.At {
			to++
		}
		if to > from {
			if course, of, err := j.course(j.log[from:to]); err == nil && of != "" {
				std := course.Value.Std
				if j.charge.Measured != nil {
					std = max(std, j.charge.Measured.Std)
				}
				out = append(out, charge.Moved{Net: net, Value: course.Value.Value.PlusMinus(quantity.TemperatureDelta(std))})
			}
		}
		net += m.Added - m.Recovered
		from = to
	}
	return append(out, charge.Moved{Net: net, Value: *j.charge.Measured})
}
