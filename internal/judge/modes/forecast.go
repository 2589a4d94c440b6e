package modes

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Forecaster fits a model to the machine of a case and returns what tells what it will do.
// The error is a *Wanting, or that of the model.
type Forecaster func(*Case) (Foretell, error)

// A Foretell says what a machine will do in a scenario. The error is that of the model.
type Foretell func(Scenario) (Outlook, error)

// A Scenario is weather and use; what is zero stays as it was read. Return is the air of the
// house or of the box.
type Scenario struct {
	Outdoor, Return quantity.Temperature
	Airflow         quantity.VolumeFlow
	// Load is what the house loses or the box takes in, zero where it is not known.
	Load quantity.Power
}

// An Outlook is what a machine will do, with standard uncertainties; nil is what its mode has
// not. Box is where a cold room comes to rest.
type Outlook struct {
	Superheat, Subcooling                        quantity.Uncertain[quantity.TemperatureDelta]
	Evaporating, Condensing, CoilSurface, Supply quantity.Uncertain[quantity.Temperature]
	Capacity                                     quantity.Uncertain[quantity.Power]
	COP                                          *Ratio
	Box                                          *quantity.Uncertain[quantity.Temperature]
	Says, Believe                                []fact.Fact
}

// A Wanting is a field of the visit without which nothing can be foretold, and why.
type Wanting struct{ Field, Why string }

func (w *Wanting) Error() string { return w.Field + " is missing; " + w.Why }

// DoNotBuild says why to build nothing on a forecast: what its machine was read in forbids to
// judge its charge.
func (j Judgement) DoNotBuild() []fact.Fact {
	if j.Charge.Outcome != "not-judged" || len(j.Charge.Why) == 0 {
		return nil
	}
	why := j.Charge.Why[0]
	return []fact.Fact{
		fact.New("forecast.do-not-build", fact.Of("why", fact.Term(why.Code))).With(why.Values...),
	}
}
