package satline

import (
	"fmt"

	"github.com/satline/satline/internal/diagnose"
)

// headline is the whole answer in one sentence.
func (j *job) headline() string {
	sys := j.visit.Units
	switch c := j.charge; c.Outcome {
	case ChargeInBand, ChargeLow, ChargeHigh:
		_, chance := j.likeliest()
		if c.Target == nil {
			return fmt.Sprintf("%s: %s %s beside stacked liquid, %s.", sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), sure(chance))
		}
		if first := j.first(); first != "" {
			return fmt.Sprintf("%s as it stands: %s %s against a target of %s (band ±%s), %s. %s",
				sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), sure(chance), first)
		}
		if hold := j.held(); hold != "" {
			return fmt.Sprintf("It reads %s, %s %s against a target of %s (band ±%s), but move no refrigerant yet: %s.",
				c.Outcome, c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), hold)
		}
		return fmt.Sprintf("%s: %s %s against a target of %s (band ±%s), %s.",
			sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), sure(chance))
	case ChargeCannotTell:
		if j.readingsContradict {
			return "The charge cannot be judged: " + j.charge.Reasons[0] + "."
		}
		likely, chance := j.likeliest()
		return fmt.Sprintf("These instruments cannot tell for certain; %s is likeliest (%.0f %%): %s %s against a target of %s (band ±%s).",
			likely, 100*chance, c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys))
	case ChargeNotNow:
		if cause, chance, waits := j.mendFirst(); waits && j.unsettled() == "" && (j.mendedFirst || !j.situationSpoiled()) {
			return fmt.Sprintf("%s (%s); the charge cannot be judged before that is mended.", sentence(cause), sure(chance))
		}
		return fmt.Sprintf("Do not charge by %s now: %s.", c.Method, c.Reasons[0])
	}
	return "The charge was not judged: " + j.charge.Reasons[0] + "."
}

// likelyElsewhere is the probability from which a cause that is not the charge is seen
// to although the charge reads in band, and tellElsewhere that from which the headline
// says so.
const likelyElsewhere, tellElsewhere = 0.4, 0.5

// first is what comes before the charge where that reads in band; empty where nothing
// does.
func (j *job) first() string {
	if j.charge.Outcome != ChargeInBand {
		return ""
	}
	if cause, chance, waits := j.mendFirst(); waits {
		return fmt.Sprintf("%s (%s) is to be mended first.", sentence(cause), sure(chance))
	}
	if o, ok := j.dirt(); ok {
		return closed(sentence(o.Instead))
	}
	if d := j.diagnosis; d != nil && d.Verdict == diagnose.Unclear {
		if cause, chance := d.Elsewhere(tellElsewhere); cause != "" {
			return fmt.Sprintf("%s (%s) is to be looked into first.", sentence(cause), sure(chance))
		}
	}
	return ""
}

// sure words a probability; nothing a field instrument says is certain.
func sure(p float64) string {
	if p > 0.99 {
		return "more than 99 % sure"
	}
	return fmt.Sprintf("%.0f %% sure", 100*p)
}

// likeliest is the outcome with the largest chance.
func (j *job) likeliest() (ChargeOutcome, float64) {
	c := &j.charge
	switch {
	case c.InBand >= c.Low && c.InBand >= c.High:
		return ChargeInBand, c.InBand
	case c.Low > c.High:
		return ChargeLow, c.Low
	}
	return ChargeHigh, c.High
}
