package satline

import (
	"errors"
	"fmt"
	"slices"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/refrigerant/cycle"
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
	p, s, d, mode, err := readOf(v)
	if err != nil {
		return nil, err
	}
	answer, err := answering(p, s, d, mode)
	if err != nil {
		return nil, err
	}
	var out []Outlook
	for i, s := range scenarios {
		o, err := answer(s)
		if err != nil {
			return nil, rangeProblem(fmt.Sprintf("scenario %d", i+1), err)
		}
		out = append(out, o)
	}
	return out, nil
}

// answering fits the machine of a visit by its mode.
func answering(
	p *prepared, s *settled, d *Derived, mode ModeFound,
) (func(Scenario) (Outlook, error), error) {
	forecaster := forecasters[mode.Mode]
	if forecaster == nil {
		fit, err := fittedTo(p, s, d, mode)
		return func(s Scenario) (Outlook, error) { return outlookOf(p, fit, s, cycle.Faults{}) }, err
	}
	t, err := aim(p, s, d, mode.Mode)
	if err != nil {
		return nil, err
	}
	c, err := caseOf(p, s, d, &t, mode)
	if err != nil {
		return nil, err
	}
	foretell, err := forecaster(c)
	var wanting *modes.Wanting
	if errors.As(err, &wanting) {
		return nil, missing(wanting.Field, wanting.Why)
	} else if err != nil {
		return nil, rangeProblem("readings", err)
	}
	return func(s Scenario) (Outlook, error) {
		o, err := foretell(modes.Scenario{
			Outdoor: s.OutdoorDryBulb, Return: s.ReturnDryBulb, Airflow: s.Airflow, Load: s.Load,
		})
		out := Outlook{
			Scenario: s, Superheat: o.Superheat, Subcooling: o.Subcooling,
			Evaporating: o.Evaporating, Condensing: o.Condensing, CoilSurface: o.CoilSurface,
			Supply: o.Supply, Capacity: o.Capacity, COP: (*Ratio)(o.COP), Box: o.Box,
			Says: o.Says, Believe: slices.Clone(o.Believe),
		}
		speak(&out, p.visit.Language.book(p.visit.Units))
		return out, err
	}, nil
}

// readOf is a visit with what follows from its readings.
func readOf(v Visit) (*prepared, *settled, *Derived, ModeFound, error) {
	p, err := prepare(v)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	s, err := settle(p)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	d, err := derive(p, &s.readings)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	return p, &s, &d, findMode(p, &s.readings, &d), nil
}

// fittedOf is the machine of a visit that cools, held against its readings.
func fittedOf(v Visit) (*prepared, *fitted.Machine, error) {
	p, s, d, mode, err := readOf(v)
	if err != nil {
		return nil, nil, err
	}
	fit, err := fittedTo(p, s, d, mode)
	return p, fit, err
}

func fittedTo(p *prepared, s *settled, d *Derived, mode ModeFound) (*fitted.Machine, error) {
	if mode.Mode != Cooling {
		return nil, &VisitError{
			Field:   "conditions.mode",
			Kind:    FieldContradictory,
			Problem: "the machine is not known to cool; say in which mode it runs",
		}
	}
	return fitTo(p, s, d, readcheck.Check(inputOf(p, &s.readings, d, mode.Mode)))
}
