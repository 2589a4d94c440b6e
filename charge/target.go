package charge

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

type (
	delta       = quantity.Uncertain[quantity.TemperatureDelta]
	temperature = quantity.Uncertain[quantity.Temperature]
	gauge       = quantity.Uncertain[quantity.GaugePressure]
	pressure    = quantity.Uncertain[quantity.Pressure]
)

// A Target is what the measured value of a method should be, how near is near
// enough, and where each comes from.
type Target struct {
	Method          Method                                        `json:"method"`
	Value           quantity.Uncertain[quantity.TemperatureDelta] `json:"value"`
	Source          fact.Source                                   `json:"source"`
	Tolerance       quantity.TemperatureDelta                     `json:"tolerance"`
	ToleranceSource fact.Source                                   `json:"toleranceSource"`
	// Budget says which readings make the target uncertain.
	Budget quantity.Budget[quantity.TemperatureDelta] `json:"budget"`
}

// General reports whether the target is a general figure, and not the
// manufacturer's for the machine.
func (t Target) General() bool { return t.Source.Standing != fact.Label }

// WithTolerance returns t with another tolerance, such as the label's own. The
// tolerance lies above 0 and up to 15 °C (27 °F); the error is a *RangeError,
// also for a t whose own value cannot be.
func (t Target) WithTolerance(
	tolerance quantity.TemperatureDelta, source fact.Source,
) (Target, error) {
	const max = quantity.TemperatureDelta(15)
	if !(tolerance > 0 && tolerance <= max) {
		return Target{}, &RangeError{
			Quantity: "charge tolerance",
			Value:    tolerance,
			Max:      max,
			Advice:   "give half the width of the band around the target, above zero",
		}
	}
	if err := t.check(); err != nil {
		return Target{}, err
	}
	t.Tolerance, t.ToleranceSource = tolerance, source
	return t, nil
}

// check refuses a target that no function of the package made.
func (t Target) check() error {
	if err := checkMethod(t.Method); err != nil {
		return err
	}
	return Measurement{Method: t.Method, Value: t.Value}.check()
}

// SuperheatTarget returns the target of a fixed restrictor: the figure of the
// unit's own chart where label is not nil, and otherwise TableSuperheat, whose
// uncertainty follows from the two temperatures. A wet bulb counts about 1.5
// degrees of target per degree.
//
// The error is a *NotNowError where the table has no target, and a *RangeError
// for a value that cannot be.
func SuperheatTarget(
	label *quantity.Uncertain[quantity.TemperatureDelta],
	returnWetBulb, outdoorDryBulb quantity.Uncertain[quantity.Temperature],
) (Target, error) {
	t := Target{
		Method:          Superheat,
		Tolerance:       superheatTolerance.value,
		ToleranceSource: superheatTolerance.source,
	}
	if label != nil {
		return t.fromLabel(*label)
	}
	if err := checkStd("return wet bulb", returnWetBulb.Std); err != nil {
		return Target{}, err
	}
	if err := checkStd("outdoor dry bulb", outdoorDryBulb.Std); err != nil {
		return Target{}, err
	}
	value, err := TableSuperheat(returnWetBulb.Value, outdoorDryBulb.Value)
	if err != nil {
		return Target{}, err
	}
	_, perWetBulb, perOutdoor := smoothSuperheat(
		returnWetBulb.Value.Fahrenheit(), outdoorDryBulb.Value.Fahrenheit(),
	)
	t.Source = cecTarget
	take(&t.Budget, fromReturnWetBulb, returnWetBulb.Std, perWetBulb)
	take(&t.Budget, fromOutdoorDryBulb, outdoorDryBulb.Std, perOutdoor)
	t.Value = value.PlusMinus(t.Budget.Std())
	return t, nil
}

// SubcoolingTarget returns the target of a valve: the figure of the label, and
// where label is nil a general one, 10 °F with a doubt of 2.3 °F, which only a
// charge far off can be judged by. The error is a *RangeError.
func SubcoolingTarget(label *quantity.Uncertain[quantity.TemperatureDelta]) (Target, error) {
	t := Target{
		Method:          Subcooling,
		Tolerance:       subcoolingTolerance.value,
		ToleranceSource: subcoolingTolerance.source,
	}
	if label != nil {
		return t.fromLabel(*label)
	}
	t.Value = generalSubcooling.value.PlusMinus(generalSubcoolingDoubt.value)
	t.Source = generalSubcooling.source
	take(&t.Budget, fromGeneral, t.Value.Std, 1)
	return t, nil
}

// ApproachTarget returns the label's approach. There is no general figure: with
// a nil label the error is a *NotNowError.
func ApproachTarget(label *quantity.Uncertain[quantity.TemperatureDelta]) (Target, error) {
	if label == nil {
		return Target{}, &NotNowError{Approach, &noLabelApproach, nil}
	}
	t := Target{
		Method:          Approach,
		Tolerance:       approachTolerance.value,
		ToleranceSource: approachTolerance.source,
	}
	return t.fromLabel(*label)
}

func (t Target) fromLabel(label delta) (Target, error) {
	const max = quantity.TemperatureDelta(40)
	if !(label.Value >= 0 && label.Value <= max) {
		return Target{}, &RangeError{
			Quantity: t.Method.String() + " of the label",
			Value:    label.Value,
			Min:      quantity.TemperatureDelta(0),
			Max:      max,
			Advice:   "read the label again, with its unit",
		}
	}
	if err := checkStd(t.Method.String()+" of the label", label.Std); err != nil {
		return Target{}, err
	}
	t.Value, t.Source = label, unitLabel
	take(&t.Budget, fromLabel, label.Std, 1)
	return t, nil
}

// maxStd is the largest standard uncertainty of a temperature or a difference
// that still is a measurement of it.
const maxStd = 30.0

func checkStd(what string, std float64) error {
	if std >= 0 && std <= maxStd && !math.IsNaN(std) {
		return nil
	}
	return &RangeError{
		Quantity: "standard uncertainty of the " + what,
		Value:    quantity.TemperatureDelta(std),
		Min:      quantity.TemperatureDelta(0),
		Max:      quantity.TemperatureDelta(maxStd),
		Advice:   "give one standard deviation of the instrument",
	}
}
