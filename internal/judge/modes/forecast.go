package modes

import (
	"errors"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Forecaster fits a model to the machine of a case and returns what tells what it will do.
// The error is a *Refused, or that of the model.
type Forecaster func(*Case) (Foretell, error)

// A Foretell says what a machine will do in a scenario. The error is that of the model.
type Foretell func(Scenario) (Outlook, error)

// A Scenario is weather, use or work to ask about, as the facade has it; what is zero stays as
// it was read. Return is the air of the house or of the box.
type Scenario struct {
	Name                                         string
	OutdoorDryBulb, ReturnDryBulb, ReturnWetBulb quantity.Temperature
	Airflow                                      quantity.VolumeFlow
	Added                                        quantity.Mass
	HeadPressure                                 quantity.Temperature
	Load                                         quantity.Power
}

// WithoutCharge refuses what only a model of cooling answers.
func (s Scenario) WithoutCharge() error {
	if s.Added != 0 || s.HeadPressure != 0 {
		return errors.New("what added refrigerant or a held head would do is foretold of cooling " +
			"alone; leave both out")
	}
	return nil
}

// An Outlook is what a machine will do, with standard uncertainties; nil is what its mode has
// not. Box is where a cold room comes to rest.
type Outlook struct {
	Superheat, Subcooling                        quantity.Uncertain[quantity.TemperatureDelta]
	Evaporating, Condensing, CoilSurface, Supply quantity.Uncertain[quantity.Temperature]
	Capacity                                     quantity.Uncertain[quantity.Power]
	COP                                          *quantity.UncertainNumber
	Box                                          *quantity.Uncertain[quantity.Temperature]
	// FreezeChance is that by the coldest surface or that by airside.IcingChance, whichever is
	// larger.
	FreezeChance                 float64
	Extrapolating, Says, Believe []fact.Fact
}

// A Refused is a field of the visit by which nothing can be foretold, and why: it is missing,
// the model refuses it with Err, or it cannot be true beside the others.
type Refused struct {
	Field, Why string
	Missing    bool
	Err        error
}

func (r *Refused) Error() string {
	if r.Err != nil {
		return r.Field + ": " + r.Err.Error()
	}
	return r.Field + ": " + r.Why
}

// Lacking is what a forecast lacks.
func Lacking(field, why string) error { return &Refused{Field: field, Why: why, Missing: true} }

// DoNotBuild says why to build nothing on a forecast: what its machine was read in forbids to
// judge its charge.
func (j Judgement) DoNotBuild() []fact.Fact {
	if j.Charge.Outcome != NotJudged || len(j.Charge.Why) == 0 {
		return nil
	}
	return []fact.Fact{DoNotBuild(j.Charge.Why[0])}
}

// DoNotBuild says for one reason that nothing is to be built on a forecast.
func DoNotBuild(why fact.Fact) fact.Fact {
	return fact.New("forecast.do-not-build", fact.Of("why", fact.Term(why.Code))).
		With(why.Values...)
}
