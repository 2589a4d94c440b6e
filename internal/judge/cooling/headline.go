package cooling

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// headline is the whole answer in one sentence, from the belief and the plan.
func (k *planner) headline() fact.Fact {
	if k.Has(modes.Halt) {
		return fact.New("headline.moved-much")
	}
	if k.b.NotEnough() || k.c.Seen.SealedSystemOpened {
		for _, s := range k.Steps {
			if s.Do.Code == modes.WeighIn || s.Do.Code == modes.WeighInLabel {
				f := s.Do
				f.Code = "headline.weigh-in"
				return f
			}
		}
	}
	if k.b.NotEnough() && k.Has("look."+drainLook, modes.ClearDrain) {
		return fact.New("headline.drain-first")
	}
	stop := k.j.Dangers.Stop() != nil
	plain := k.b.present(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.OtherRefrigerant)
	lie, wrong := k.b.wrongInstrument()
	wrong = wrong && len(k.c.Spoils) == 0
	f, ok := k.cause()
	switch c := &k.j.Charge; {
	case k.b.starved():
		return k.undecided()
	case ok && (c.Outcome != modes.NotJudged || stop || plain || wrong || k.inTheCold()):
		return f
	case stop:
		return fact.New("headline.stop")
	case wrong:
		return fact.New("headline.open", fact.Of("causes", fact.Terms{causeTerm(lie)}))
	case c.Outcome == modes.NotJudged && len(c.Why) > 0:
		return k.notJudged()
	}
	return k.undecided()
}

// inTheCold: what is likely shows in the cold too, but for a charge that is somewhat off.
func (k *planner) inTheCold() bool {
	first := k.b.Marginals()[0].Signature
	return k.b.cold() != nil && !k.b.Contradictory() &&
		(!ofCharge(first) || first == diagnose.Undercharge && k.muchMissing())
}

// notJudged says the first reason why the charge is not judged.
func (k *planner) notJudged() fact.Fact {
	why := k.j.Charge.Why[0]
	return fact.New("headline.not-judged", why.Values...).
		With(fact.Of("why", fact.Term(why.Code)))
}

// undecided is the headline where no cause is likely by itself.
func (k *planner) undecided() fact.Fact {
	const told = 2
	healthy := k.b.Healthy
	causes := fact.Terms{}
	for _, m := range k.b.Marginals() {
		if healthy >= max(m.Chance, worth/2) && !slices.Contains(causes, sound) {
			causes = append(causes, sound)
		}
		if m.Chance >= worth/2 {
			causes = append(causes, causeTerm(m.Signature))
		}
	}
	chance := fact.Of("chance", fact.Share(healthy))
	switch leave := k.Has(modes.Leave); {
	case k.floods() && (healthy >= likely || leave || len(causes) == 0):
		return fact.New("headline.floods")
	case k.drawsMuch() && (healthy >= likely || k.Has(modes.WhyCurrent)):
		return fact.New("headline.draws-much", chance)
	case !k.c.Valve.IsZero() && (healthy >= likely || len(causes) == 0):
		return fact.New("headline.hunts", chance)
	case healthy >= likely && (leave || k.j.Charge.Outcome == modes.ChargeInBand):
		return fact.New("headline.sound", chance)
	case len(causes) == 0 || (healthy >= likely || leave) && !k.Has(modes.Add, modes.Recover):
		return fact.New("headline.sound-likely", chance)
	}
	return fact.New("headline.open", fact.Of("causes", causes[:min(told, len(causes))]))
}

// spare takes away the reasons of steps that the headline gives already.
func (k *planner) spare(headline fact.Fact) {
	for i := range k.Steps {
		s := &k.Steps[i]
		named := headline.Code == "headline.cause" && s.Cause != "" &&
			s.Cause == string(k.b.Marginals()[0].Signature)
		why, _ := headline.Value("why")
		if named || why.Of == fact.Term(s.Why.Code) {
			s.Why = fact.Fact{}
		}
	}
}

const sound fact.Term = "cause.sound"

// cause is the headline of the likeliest cause, where one is likely; a second that is
// nearly as likely stands beside it.
func (k *planner) cause() (fact.Fact, bool) {
	marginals := k.b.Marginals()
	if len(marginals) == 0 || marginals[0].Chance < likely || marginals[0].Chance < k.b.Healthy {
		return fact.Fact{}, false
	}
	f := k.b.findingFact(&marginals[0])
	f.Code = "headline.cause"
	f = f.With(fact.Of("cause", causeTerm(marginals[0].Signature)))
	if len(marginals) > 1 && marginals[1].Chance >= likely {
		f = f.With(
			fact.Of("second", causeTerm(marginals[1].Signature)),
			fact.Of("secondChance", fact.Share(marginals[1].Chance)),
		)
	}
	return f, true
}
