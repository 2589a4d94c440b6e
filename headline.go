package satline

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity/fact"
)

// headline is the whole answer in one sentence, from the belief and the plan.
func (k *planner) headline() fact.Fact {
	switch {
	case k.p.unwell():
		return k.p.electricalHeadline()
	case k.mode.Mode == 0:
		return fact.New("headline.mode-in-doubt")
	case k.mode.Mode != Cooling:
		return fact.New("headline.other-mode", fact.Of("mode", term("mode", k.mode.Mode.String())))
	case k.has(StepHalt):
		return fact.New("headline.moved-much")
	}
	if k.b.Verdict == diagnose.NotEnough || k.p.visit.Conditions.SealedSystemOpened {
		for _, s := range k.steps {
			if s.Do.Code == StepWeighIn || s.Do.Code == StepWeighInLabel {
				f := s.Do
				f.Code = "headline.weigh-in"
				return f
			}
		}
	}
	if k.b.Verdict == diagnose.NotEnough && k.has("look."+drainLook, StepClearDrain) {
		return fact.New("headline.drain-first")
	}
	stop := slices.ContainsFunc(k.dangers, func(x Danger) bool { return x.Stops })
	plain := k.b.present(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.OtherRefrigerant)
	lie, wrong := k.b.wrongInstrument(k.t.method)
	wrong = wrong && len(k.b.spoiled) == 0
	f, ok := k.cause()
	switch c := k.charge; {
	case ok && (c.Outcome != ChargeNotJudged || stop || plain || wrong):
		return f
	case stop:
		return fact.New("headline.stop")
	case wrong:
		return fact.New("headline.open", fact.Of("causes", fact.Terms{term("cause", string(lie))}))
	case c.Outcome == ChargeNotJudged && len(c.Why) > 0:
		return fact.New("headline.not-judged", c.Why[0].Values...).
			With(fact.Of("why", fact.Term(c.Why[0].Code)))
	}
	if k.has(StepLeave) {
		return fact.New("headline.sound", fact.Of("chance", fact.Share(k.b.Healthy)))
	}
	return k.b.undecided(k.charge.Outcome)
}

// undecided is the headline where no cause is likely by itself.
func (b *belief) undecided(outcome ChargeOutcome) fact.Fact {
	chance := fact.Of("chance", fact.Share(b.Healthy))
	causes := fact.Terms{}
	for _, m := range b.Marginals() {
		if m.Chance >= worth/2 && len(causes) < 2 {
			causes = append(causes, term("cause", string(m.Signature)))
		}
	}
	switch {
	case b.Healthy >= likely && outcome == ChargeInBand:
		return fact.New("headline.sound", chance)
	case b.Healthy >= likely || len(causes) == 0:
		return fact.New("headline.sound-likely", chance)
	}
	return fact.New("headline.open", fact.Of("causes", causes))
}

// cause is the headline of the likeliest cause, where one is likely; a second that is
// nearly as likely stands beside it.
func (k *planner) cause() (fact.Fact, bool) {
	marginals := k.b.Marginals()
	if len(marginals) == 0 || marginals[0].Chance < likely || marginals[0].Chance < k.b.Healthy {
		return fact.Fact{}, false
	}
	f := k.b.findingFact(&marginals[0])
	f.Code = "headline.cause"
	f = f.With(fact.Of("cause", term("cause", string(marginals[0].Signature))))
	if len(marginals) > 1 && marginals[1].Chance >= likely {
		f = f.With(
			fact.Of("second", term("cause", string(marginals[1].Signature))),
			fact.Of("secondChance", fact.Share(marginals[1].Chance)),
		)
	}
	return f, true
}
