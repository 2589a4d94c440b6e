package satline

import (
	"fmt"

	"github.com/satline/satline/internal/judge/fitted"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/refrigerant/cycle"
)

// Forecast fits a model of the whole machine to the visit and answers what it
// will do in other weather, with another airflow or charge, or under a control.
// It takes a few times as long as Assess.
//
// It needs the nominal capacity, the outdoor dry bulb, the return dry and wet
// bulb, and the suction pressure; the more readings there are, the narrower the
// answer. The error is a *VisitError.
func Forecast(v Visit, scenarios ...Scenario) ([]Outlook, error) {
	p, fit, err := fittedOf(v)
	if err != nil {
		return nil, err
	}
	var out []Outlook
	for i, s := range scenarios {
		o, err := outlookOf(p, fit, s, cycle.Faults{})
		if err != nil {
			return nil, rangeProblem(fmt.Sprintf("scenario %d", i+1), err)
		}
		out = append(out, o)
	}
	return out, nil
}

// fittedOf is the machine of a visit, held against its readings.
func fittedOf(v Visit) (*prepared, *fitted.Machine, error) {
	p, err := prepare(v)
	if err != nil {
		return nil, nil, err
	}
	settled, err := settle(p)
	if err != nil {
		return nil, nil, err
	}
	d, err := derive(p, &settled.readings)
	if err != nil {
		return nil, nil, err
	}
	mode := findMode(p, &settled.readings, &d)
	if mode.Mode != Cooling {
		return nil, nil, &VisitError{
			Field:   "conditions.mode",
			Kind:    FieldContradictory,
			Problem: "a forecast is of cooling; what a heat pump will give is in Assessment.Performance",
		}
	}
	doubts := readcheck.Check(inputOf(p, &settled.readings, &d, mode.Mode))
	fit, err := fitTo(p, &settled, &d, doubts)
	return p, fit, err
}
