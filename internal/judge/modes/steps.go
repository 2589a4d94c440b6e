package modes

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity/fact"
)

// Do makes a step of a code and its values, with the effect that a step of that code has.
func Do(code fact.Code, values ...fact.Value) Step {
	return Step{Do: fact.New(code, values...), Effect: effects[code]}
}

// Because returns the step with its reason.
func (s Step) Because(why fact.Fact) Step {
	s.Why = why
	return s
}

// LeakPath finds the leak, recovers, mends, tests, evacuates and weighs in, in that order.
func (c *Case) LeakPath() []Step {
	return []Step{
		Do(FindLeak), c.RecoverRest(), Do(MendLeak), Do(Nitrogen), Do(Evacuate), c.WeighIn(),
	}
}

// RecoverRest is the step that recovers what is left, as far as the rule for it asks.
func (c *Case) RecoverRest() Step {
	recover := Do(RecoverRest)
	if level, err := charge.RecoverTo(c.Fluid, c.WholeCharge); err == nil {
		// The rule's vacuum is below the standard atmosphere: where that is above the site's,
		// the gauge's zero does.
		to := min(level.To.Gauge(c.Site.Value), 0)
		recover.Do = recover.Do.With(fact.Amount("to", to))
	}
	return recover
}

// WeighIn is the step that weighs the charge in, or gets what that lacks.
func (c *Case) WeighIn() Step {
	w := c.Weighing
	if w == nil {
		return Do(c.WeighingWants)
	}
	total, label := fact.Amount("total", w.Total.Value), fact.Amount("label", w.Label)
	switch more := w.Line + w.Accessories; {
	case more > 0:
		return Do(WeighIn, total, label, fact.Amount("more", more))
	case more < 0: // a shorter line than the label allows for
		return Do(WeighIn, total, label, fact.Amount("less", -more))
	}
	return Do(WeighInLabel, total, label)
}
