package satline

import (
	"errors"
	"fmt"
	"slices"

	"github.com/satline/satline/internal/judge/modes"
)

// Forecast fits a model of the whole machine to the visit and answers what it
// will do in other weather, with another airflow or charge, or under a control; a
// heat pump in heating and a cold room for another load too.
// It takes a few times as long as Assess.
//
// In cooling it needs the nominal capacity, the outdoor dry bulb, the return dry and wet
// bulb, and the suction pressure; in heating no wet bulb; of a cold room both pressures and no
// capacity. The more readings there are, the narrower the answer. The error is a *VisitError.
func Forecast(v Visit, scenarios ...Scenario) ([]Outlook, error) {
	p, c, mode, err := caseToForetell(v)
	if err != nil {
		return nil, err
	}
	forecaster := forecasters[mode]
	if forecaster == nil {
		return nil, notKnownToCool()
	}
	foretell, err := forecaster(c)
	if err != nil {
		return nil, foretold("readings", err)
	}
	var out []Outlook
	for i, s := range scenarios {
		o, err := foretell(modes.Scenario(s))
		if err != nil {
			return nil, rangeProblem(fmt.Sprintf("scenario %d", i+1), err)
		}
		out = append(out, p.outlookOf(s, o))
	}
	return out, nil
}

// caseToForetell is the case of a visit, as its judge would be handed it.
func caseToForetell(v Visit) (*prepared, *modes.Case, Mode, error) {
	p, err := prepare(v)
	if err != nil {
		return nil, nil, 0, err
	}
	_, _, c, mode, err := p.toJudge()
	if err == nil && c.Other != nil {
		err = missing(
			"equipment.metering",
			`say "fixed restrictor", "TXV", "EXV" or "capillary tube". A bulb on the suction `+
				`pipe at the indoor coil is of a TXV, a motor with a cable of an EXV; with neither `+
				`it is a fixed restrictor`,
		)
	}
	return p, c, mode.Mode, err
}

func notKnownToCool() error {
	return &VisitError{
		Field: "conditions.mode", Kind: FieldContradictory,
		Problem: "the machine is not known to cool; say in which mode it runs",
	}
}

// foretold names the field that keeps a machine from being fitted.
func foretold(field string, err error) error {
	var refused *modes.Refused
	switch {
	case !errors.As(err, &refused):
		return rangeProblem(field, err)
	case refused.Err != nil:
		return rangeProblem(refused.Field, refused.Err)
	case refused.Missing:
		return missing(refused.Field, refused.Why)
	}
	return &VisitError{Field: refused.Field, Kind: FieldContradictory, Problem: refused.Why}
}

func (p *prepared) outlookOf(s Scenario, o modes.Outlook) Outlook {
	out := Outlook{
		Scenario: s, Superheat: o.Superheat, Subcooling: o.Subcooling,
		Evaporating: o.Evaporating, Condensing: o.Condensing, CoilSurface: o.CoilSurface,
		Supply: o.Supply, Capacity: o.Capacity, COP: o.COP, Box: o.Box,
		FreezeChance: o.FreezeChance, Extrapolating: o.Extrapolating,
		Says: o.Says, Believe: slices.Clone(o.Believe),
	}
	p.visit.Language.book(p.visit.Units).Fill(&out)
	return out
}
