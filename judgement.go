package satline

import (
	"slices"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// tell adds what a judge says to an assessment.
func tell(a *Assessment, j *modes.Judgement) {
	a.Headline, a.Dose, a.WeighIn, a.Performance = j.Headline, j.Dose, j.WeighIn, j.Performance
	a.Air, a.Freeze = (*AirVerdict)(j.Air), (*FreezeVerdict)(j.Freeze)
	a.Change = (*ChangeVerdict)(j.Change)
	c := &j.Charge
	a.Charge = ChargeVerdict{
		Outcome: ChargeOutcome(c.Outcome), Low: c.Low, InBand: c.InBand, High: c.High,
		Error: c.Error, Why: c.Why, Reading: (*TargetReading)(c.Reading),
		Missing: c.Missing,
	}
	for _, x := range j.Dangers {
		if x.Why.IsZero() {
			x.Why = fact.New(fact.Code("danger."+x.Code+".why"), slices.Clone(x.Says.Values)...)
		}
		a.Dangers = append(a.Dangers, Danger{x.Code, x.Grave, x.Stops, x.Says, x.Why, x.Source})
	}
	steps := modes.InOrder(j.Steps)
	if a.Scope == VerdictOnly {
		steps, a.Dose, a.WeighIn = modes.BeforeMoves(steps), nil, nil
	}
	a.Plan = slices.Grow(a.Plan, len(steps))
	for _, x := range steps {
		step := Step{
			Do: x.Do, Cause: x.Cause, Chance: x.Chance, Look: x.Look, Field: x.Field,
			Effect: Effect(x.Effect),
		}
		if !x.Why.IsZero() {
			step.Why = &x.Why
		}
		a.Plan = append(a.Plan, step)
	}
	a.Findings = slices.Grow(a.Findings, len(j.Findings))
	for _, x := range j.Findings {
		f := Finding{Cause: x.Cause, Chance: x.Chance, Says: x.Says, For: x.For, Against: x.Against}
		for _, y := range x.Faults {
			f.Faults = append(f.Faults, FaultChance(y))
		}
		a.Findings = append(a.Findings, f)
	}
	if q := j.Ask; q != nil {
		a.Ask = &Question{Look: q.Look, Field: q.Field, Take: q.Take}
		for _, o := range q.Outcomes {
			a.Ask.Outcomes = append(a.Ask.Outcomes, Outcome(o))
		}
	}
}
