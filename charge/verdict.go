package charge

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// An Outcome is what a verdict says about the charge.
type Outcome int

// The outcomes.
const (
	// InBand: the charge is right; leave it.
	InBand Outcome = iota + 1
	// Undercharged: out of band, too little.
	Undercharged
	// Overcharged: out of band, too much.
	Overcharged
	// CannotTell: the uncertainty of the readings leaves it open.
	CannotTell
)

var outcomeNames = []string{"not-judged", "in-band", "undercharged", "overcharged", "cannot-tell"}

// String returns the outcome in words.
func (o Outcome) String() string { return enum.Name(outcomeNames, o) }

// MarshalText writes the outcome in words.
func (o Outcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a verdict", outcomeNames, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *Outcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a verdict", outcomeNames, text, o)
}

// A Verdict is the judgement of a charge by one method.
type Verdict struct {
	Outcome  Outcome     `json:"outcome"`
	Method   Method      `json:"method"`
	Measured Measurement `json:"measured"`
	Target   Target      `json:"target"`
	// Deviation is measured less target.
	Deviation quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation"`
	// Low, InBand and High are the probabilities that the charge is too low,
	// in band and too high, as far as the method and the uncertainty of the
	// readings go. They sum to 1.
	Low    float64 `json:"low"`
	InBand float64 `json:"inBand"`
	High   float64 `json:"high"`
	// LiquidReturning warns that the suction line may carry liquid to the
	// compressor, whatever the outcome.
	LiquidReturning bool `json:"liquidReturning"`
	// StackedLiquid is the subcooling that helped JudgeTogether to decide;
	// absent where it did not.
	StackedLiquid quantity.Uncertain[quantity.TemperatureDelta] `json:"stackedLiquid,omitzero"`
}

// Judge compares a measurement with the target of its method. The outcome is
// the one whose probability is 90 % or more, and CannotTell where none is; the
// deviation is taken as normal with the combined standard uncertainty of both
// (JCGM 106:2012, 7.2). It does not allocate.
//
// A *RangeError says that a value cannot be, or that the two are not of one method.
func Judge(measured Measurement, target Target) (Verdict, error) {
	if measured.Method != target.Method {
		return Verdict{}, &RangeError{
			Quantity: "method of the target",
			Value:    target.Method,
			Min:      measured.Method,
			Max:      measured.Method,
			Advice:   "compare a measured value with the target of the same method",
		}
	}
	if err := checkMethod(measured.Method); err != nil {
		return Verdict{}, err
	}
	if err := measured.check(); err != nil {
		return Verdict{}, err
	}
	if err := (Measurement{Method: target.Method, Value: target.Value}).check(); err != nil {
		return Verdict{}, err
	}
	if !(target.Tolerance > 0 && target.Tolerance <= maxDelta) {
		return Verdict{}, &RangeError{
			Quantity: "charge tolerance",
			Value:    target.Tolerance,
			Max:      maxDelta,
			Advice: "it is above zero: use a target made by this package, " +
				"or set a tolerance by WithTolerance",
		}
	}
	v := Verdict{
		Method:          measured.Method,
		Measured:        measured,
		Target:          target,
		LiquidReturning: measured.LiquidReturning(),
	}
	v.Deviation = delta{
		Value: measured.Value.Value - target.Value.Value,
		Std:   math.Hypot(measured.Value.Std, target.Value.Std),
	}
	below, within, above := normal.Chances(
		float64(v.Deviation.Value), v.Deviation.Std, float64(target.Tolerance),
	)
	if v.Method.direction() > 0 {
		v.Low, v.InBand, v.High = below, within, above
	} else {
		v.Low, v.InBand, v.High = above, within, below
	}
	v.decide()
	return v, nil
}

func (v *Verdict) decide() {
	level := decisionLevel.value
	switch {
	case v.InBand >= level:
		v.Outcome = InBand
	case v.Low >= level:
		v.Outcome = Undercharged
	case v.High >= level:
		v.Outcome = Overcharged
	default:
		v.Outcome = CannotTell
	}
}

// Fact is what was measured beside its target: "reading.within", "reading.above" or
// "reading.below", and "reading.no-target" where JudgeTogether had none. Outcome and chances are
// no part of it.
func (v Verdict) Fact() fact.Fact {
	method := fact.Of("method", fact.Term("method."+v.Method.String()))
	measured := fact.Measured("measured", v.Measured.Value)
	if v.Target.Method == 0 {
		return fact.New("reading.no-target", method, measured)
	}
	code, off := fact.Code("reading.within"), v.Deviation.Value
	switch {
	case off > v.Target.Tolerance:
		code = "reading.above"
	case off < -v.Target.Tolerance:
		code, off = "reading.below", -off
	}
	return fact.New(
		code, method, measured, fact.Amount("target", v.Target.Value.Value),
		fact.Amount("off", off), fact.Amount("band", v.Target.Tolerance),
		fact.Of("source", sourceTerm(v.Target.Source)),
	)
}

// sourceTerm is a short word for where a target comes from.
func sourceTerm(s fact.Source) fact.Term {
	switch s.Standing {
	case fact.Label:
		return "source.label"
	case fact.House:
		return "source.house"
	case fact.CommonPractice:
		return "source.practice"
	}
	return "source.table"
}

// JudgeTogether judges a fixed restrictor by superheat with the subcooling
// beside it. No superheat beside a high subcooling is liquid stacked in the
// condenser and carried through the coil: too much charge, whatever the target,
// and also where there is none, which a nil target says. (No superheat beside
// an ordinary subcooling is low load, low airflow or a restrictor too large,
// and is left to the superheat alone.)
//
// The two pieces of evidence count as independent. Without a target the
// chances start even. Errors are those of Judge.
func JudgeTogether(superheat, subcooling Measurement, target *Target) (Verdict, error) {
	if superheat.Method != Superheat || subcooling.Method != Subcooling {
		return Verdict{}, &RangeError{
			Quantity: "pair of methods",
			Value:    subcooling.Method,
			Advice:   "give the superheat first and the subcooling second",
		}
	}
	if err := subcooling.check(); err != nil {
		return Verdict{}, err
	}
	var v Verdict
	if target != nil {
		var err error
		if v, err = Judge(superheat, *target); err != nil {
			return Verdict{}, err
		}
	} else {
		if err := superheat.check(); err != nil {
			return Verdict{}, err
		}
		v = Verdict{
			Method: Superheat, Measured: superheat, Low: 1. / 3, InBand: 1. / 3, High: 1. / 3,
			LiquidReturning: superheat.LiquidReturning(),
		}
	}
	_, _, wet := normal.Chances(
		float64(wetLine.value-superheat.Value.Value), superheat.Value.Std, 0,
	)
	_, _, stacked := normal.Chances(
		float64(subcooling.Value.Value-stackedSubcooling.value), subcooling.Value.Std, 0,
	)
	if p := wet * stacked; p > 0 {
		v.Low, v.InBand = v.Low*(1-p), v.InBand*(1-p)
		v.High = 1 - v.Low - v.InBand
		if p >= 0.5 {
			v.StackedLiquid = subcooling.Value
		}
	}
	v.decide()
	return v, nil
}
