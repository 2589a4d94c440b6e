package charge

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// gramsPerYear makes a leak of grams of refrigerant a year.
func gramsPerYear(g float64) quantity.MassFlow {
	const year = 365.25 * 24 * 3600
	return quantity.GramsPerSecond(g / year)
}

// A JointTest is the search for leaks at a joint made on site, indoors, of a circuit with
// a flammable refrigerant.
type JointTest struct {
	// Allowable is the maximum allowable pressure of that part of the circuit: the design
	// pressure on the label.
	Allowable quantity.GaugePressure
	// Applied is the pressure in the joint while it is tested.
	Applied quantity.GaugePressure
	// Sensitivity is the smallest leak that the method shows, as mass of refrigerant per time.
	Sensitivity quantity.MassFlow
	// Found says that a leak was found.
	Found bool
}

// A JointReason says why a joint is judged as it is. The names are stable.
type JointReason string

// The reasons.
const (
	JointTight       JointReason = "no-leak-found"
	JointLeaking     JointReason = "leak-found"
	JointPressureLow JointReason = "pressure-too-low"
	JointMethodBlunt JointReason = "method-too-blunt"
)

// A Joint is the judgement of a test of a joint.
type Joint struct {
	Outcome TestOutcome `json:"outcome"`
	Reason  JointReason `json:"reason"`
	// Least is the lowest pressure that counts, Finest the coarsest sensitivity that does.
	Least  quantity.GaugePressure `json:"least"`
	Finest quantity.MassFlow      `json:"finest"`
	Source fact.Source            `json:"source"`
}

// Fact is the result for a record: "result.joint-tight".
func (j Joint) Fact() fact.Fact {
	switch j.Reason {
	case JointLeaking:
		return fact.New("result.joint-leaking")
	case JointPressureLow:
		return fact.New("result.joint-pressure-low", fact.Amount("least", j.Least))
	case JointMethodBlunt:
		return fact.New("result.joint-method-blunt")
	}
	return fact.New("result.joint-tight")
}

// Judge holds the test against the safety standard for appliances with flammable
// refrigerants: a method that shows 5 g a year or less, under at least a quarter of the
// maximum allowable pressure, and no leak found. A test that asks less leaves the joint
// open; a leak that was found is one by any method. It comes besides the pressure test of
// the whole circuit, which holds for an hour, and the vacuum.
//
// The error is a *RangeError for values that cannot be, such as a pressure above the
// allowable one.
func (j JointTest) Judge() (Joint, error) {
	const highest = quantity.GaugePressure(20e6)
	if !(j.Allowable > 0 && j.Allowable <= highest) {
		return Joint{}, &RangeError{
			Quantity: "maximum allowable pressure of the joint",
			Value:    j.Allowable,
			Max:      highest,
			Advice:   "it is above zero: read the design pressure on the label",
		}
	}
	if !(j.Applied >= 0 && j.Applied <= j.Allowable) {
		return Joint{}, &RangeError{
			Quantity: "pressure in the joint",
			Value:    j.Applied,
			Min:      quantity.GaugePressure(0),
			Max:      j.Allowable,
			Advice:   "never above the design pressure: let nitrogen off now, standing clear",
		}
	}
	if !(j.Sensitivity > 0 && !math.IsInf(float64(j.Sensitivity), 0)) {
		return Joint{}, &RangeError{
			Quantity: "sensitivity of the leak test",
			Value:    j.Sensitivity,
			Min:      quantity.MassFlow(0),
			Advice: "it is above zero: the smallest leak that the detector's maker states, " +
				"5 g a year or less",
		}
	}
	out := Joint{
		Outcome: Holds,
		Reason:  JointTight,
		Least:   quantity.GaugePressure(jointPressure.value) * j.Allowable,
		Finest:  gramsPerYear(jointSensitivity.value),
		Source:  fieldTests,
	}
	switch {
	case j.Found:
		out.Outcome, out.Reason = Leaks, JointLeaking
	case j.Applied < out.Least:
		out.Outcome, out.Reason = TestOpen, JointPressureLow
	case j.Sensitivity > out.Finest*(1+1e-9):
		out.Outcome, out.Reason = TestOpen, JointMethodBlunt
	}
	return out, nil
}
