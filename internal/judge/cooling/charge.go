package cooling

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

var outcomes = map[diagnose.ChargeCall]string{
	diagnose.ChargeOpen: modes.ChargeOpen, diagnose.ChargeLow: modes.ChargeLow,
	diagnose.ChargeInBand: modes.ChargeInBand, diagnose.ChargeHigh: modes.ChargeHigh,
}

// charge says what is believed of the charge, or why it is not judged.
func (b *belief) charge(dangers []modes.Danger) modes.Charge {
	c := b.c
	v := modes.Charge{Outcome: modes.NotJudged, Reading: c.Reading, Missing: c.Wanting}
	because := func(why fact.Fact) { v.Why = append(v.Why, why) }
	switch {
	case c.ReadBeforeMove:
		because(fact.New("charge.read-before-move"))
	case !c.Moving.IsZero():
		because(c.Moving)
	}
	for _, o := range c.Spoils {
		because(o.Says)
	}
	for _, x := range dangers {
		if x.Stops && !b.present(diagnose.NextToEmpty, diagnose.Undercharge) {
			because(x.Says)
		}
	}
	if len(v.Why) > 0 {
		return v
	}
	if b.present(diagnose.NotPumping) {
		because(fact.New(
			"charge.instrument-first", fact.Of("cause", causeTerm(diagnose.NotPumping)),
		))
		return v
	}
	if lie, wrong := b.wrongInstrument(); wrong {
		because(fact.New("charge.instrument-first", fact.Of("cause", causeTerm(lie))))
		return v
	}
	if b.NotEnough() {
		switch {
		case len(c.Given) > 0 && c.Compared:
			because(fact.New("charge.few-readings"))
		case len(c.Wanting) > 0 && !c.Compared:
			because(fact.New(
				"charge.not-measured", fact.Of("method", methodTerm(c.Method)),
				fact.Of("readings", modes.ReadingTerms(c.Wanting)),
			))
		default:
			because(fact.New("charge.no-readings"))
		}
		return v
	}
	if d := b.unexplained(); d != nil {
		because(fact.New(fact.Code("doubt."+d.Code), d.Values...))
		return v
	}
	if b.Contradictory() {
		because(fact.New("charge.contradictory"))
		return v
	}
	of := b.Charge
	v.Low, v.InBand, v.High = of.Low, of.InBand, of.High
	v.Error = &quantity.UncertainNumber{Value: of.Error.Mean, Std: of.Error.Std}
	v.Outcome = outcomes[of.Call()]
	return v
}

func causeTerm(c diagnose.Code) fact.Term { return fact.Term("cause." + string(c)) }

func methodTerm(m charge.Method) fact.Term { return fact.Term("method." + m.String()) }
