package satline

import (
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// judged has the judge of a mode say what it finds; nil where cooling or no judge has the mode.
func judged(
	p *prepared, s *settled, d *Derived, t *targeted, b *belief, mode ModeFound, dangers []Danger,
) *modes.Judgement {
	judge := judges[mode.Mode]
	if judge == nil {
		return nil
	}
	v := &p.visit
	c := modes.Case{
		Evidence: evidenceOf(p, s, inputOf(p, &s.readings, d, mode.Mode), t), Fluid: p.fluid,
		Superheat: d.Superheat, Subcooling: d.Subcooling,
		Running: v.Conditions.Running,
		Room:    v.Equipment.ColdRoom, BulbLine: s.readings.BulbLine, ReadBeforeMove: !s.later, Spoils: b.spoiled, WholeCharge: wholeCharge(p),
	}
	c.Evidence.Doubts, c.Evidence.Moved = b.doubts, movedBefore(v.Moves, nil)
	if v.Complaint != 0 {
		c.Complaint = v.Complaint.String()
	}
	if s.moving() {
		c.Moving = s.steadiness.Says
	}
	for _, x := range dangers {
		c.Dangers = append(c.Dangers, modes.Danger{
			Code: x.Code, Grave: x.Grave, Stops: x.Stops, Says: x.Says, Source: x.Source,
		})
	}
	c.Weighing, c.WeighingWants = weighing(p)
	j := judge(&c)
	return &j
}

// asJudged takes over dangers, steps and charge.
func (k *planner) asJudged(j *modes.Judgement) {
	k.dangers, k.weighIn = nil, j.WeighIn
	for _, x := range j.Dangers {
		k.dangers = append(k.dangers, Danger{
			x.Code, x.Grave, x.Stops, x.Says, fact.New(fact.Code("danger." + x.Code + ".why")),
			x.Source,
		})
	}
	for _, x := range j.Steps {
		step := Step{
			Do: x.Do, Cause: x.Cause, Chance: x.Chance, Look: x.Look, Field: x.Field,
			Effect: Effect(x.Effect),
		}
		if e, of := effects[x.Do.Code]; of {
			step.Effect = e
		}
		if !x.Why.IsZero() {
			step.because(x.Why)
		}
		k.put(step)
	}
	c := j.Charge
	*k.charge = ChargeVerdict{
		Outcome: ChargeOutcome(c.Outcome), Low: c.Low, InBand: c.InBand, High: c.High,
		Why: c.Why, Reading: (*TargetReading)(c.Reading), Missing: c.Missing,
	}
}

// tell adds what a judge found to an assessment, and takes away what means nothing in its mode.
func tell(a *Assessment, j *modes.Judgement) {
	if d := &a.Derived; a.Mode.Mode == Heating {
		a.Derived = Derived{
			EvaporatingDew: d.EvaporatingDew, CondensingBubble: d.CondensingBubble,
			CondensingDew: d.CondensingDew, Superheat: d.Superheat, Subcooling: d.Subcooling,
			CompressionRatio: d.CompressionRatio, ReturnHumidity: d.ReturnHumidity,
		}
	}
	if j == nil {
		return
	}
	a.Headline, a.Performance = j.Headline, j.Performance
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
