package modes

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity/fact"
)

// Do makes a step of a code and its values.
func Do(code fact.Code, values ...fact.Value) Step { return Step{Do: fact.New(code, values...)} }

// Because returns the step with its reason.
func (s Step) Because(why fact.Fact) Step {
	s.Why = why
	return s
}

// LeakPath finds the leak, recovers, mends, tests, evacuates and weighs in, in that order.
func (c *Case) LeakPath() []Step {
	recover := Do("step.recover-rest")
	if level, err := charge.RecoverTo(c.Fluid, c.WholeCharge); err == nil {
		recover.Do = recover.Do.With(fact.Amount("to", level.To))
	}
	return []Step{
		Do("step.find-leak"), recover, Do("step.mend-leak"), Do("step.nitrogen"),
		Do("step.evacuate"), c.WeighIn(),
	}
}

// WeighIn is the step that weighs the charge in, or gets what that lacks.
func (c *Case) WeighIn() Step {
	w := c.Weighing
	if w == nil {
		return Do(c.WeighingWants)
	}
	step := Do(
		"step.weigh-in-label", fact.Amount("total", w.Total.Value), fact.Amount("label", w.Label),
	)
	if more := w.Line + w.Accessories; more != 0 {
		step.Do.Code = "step.weigh-in"
		step.Do = step.Do.With(fact.Amount("more", more))
	}
	return step
}
