package airside

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// StaticReadings are the static pressures around the box whose label states a
// highest external static pressure: for a furnace the box with the blower, with
// coil and filter outside it; for an air handler the whole of it.
type StaticReadings struct {
	// Entering is read where air enters the box, a negative pressure; Leaving
	// where it leaves.
	Entering quantity.Uncertain[quantity.StaticPressure] `json:"entering"`
	Leaving  quantity.Uncertain[quantity.StaticPressure] `json:"leaving"`
	// Maximum is the label's; zero where it cannot be read.
	Maximum quantity.StaticPressure `json:"maximum,omitzero"`
}

// usualMaximum is the external static pressure that most residential blowers are
// rated at. Common practice, no source.
var usualMaximum = quantity.InchesWater(0.5)

// StaticOutcome is what an external static pressure shows.
type StaticOutcome int

// The outcomes.
const (
	StaticSound StaticOutcome = iota + 1
	// StaticHigh: the ducts, filter or coil take more than the blower is made
	// for.
	StaticHigh
	// StaticLow: below a quarter of the maximum, ducts are very free, open, or
	// the blower is slow.
	StaticLow
	StaticCannotTell
)

var staticOutcomes = []string{"not-judged", "within", "above", "low", "cannot-tell"}

// String returns the outcome in words.
func (o StaticOutcome) String() string { return enum.Name(staticOutcomes, o) }

// MarshalText writes the words of String.
func (o StaticOutcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a static pressure", staticOutcomes, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *StaticOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a static pressure", staticOutcomes, text, o)
}

// A StaticVerdict is an external static pressure held against its maximum.
type StaticVerdict struct {
	Outcome  StaticOutcome                               `json:"outcome"`
	Readings StaticReadings                              `json:"readings"`
	External quantity.Uncertain[quantity.StaticPressure] `json:"external"`
	Maximum  quantity.StaticPressure                     `json:"maximum"`
	// MaximumSource is the label or common practice.
	MaximumSource fact.Source `json:"maximumSource"`
	// Within is the chance that it is within the maximum.
	Within float64 `json:"within"`
	// ReturnShare is the return side's share of the external static pressure,
	// 0 to 1: where the resistance is.
	ReturnShare float64 `json:"returnShare"`
}

// JudgeStatic returns the external static pressure, leaving less entering, and
// holds it against the label's maximum, or 0.5 in. w.c. (common practice, no
// source). The error is a *RangeError: a return reading above zero among them,
// since the blower draws on the return.
func JudgeStatic(r StaticReadings) (StaticVerdict, error) {
	const most = quantity.StaticPressure(2500)
	if err := limit.Reading(
		"static pressure entering the box", r.Entering, -most, 0,
		"the blower draws on this side, so it reads below zero: write the minus sign, "+
			"and see which port of the manometer is open to the room",
	); err != nil {
		return StaticVerdict{}, err
	}
	if err := limit.Reading(
		"static pressure leaving the box", r.Leaving, 0, most,
		"the blower pushes on this side, so it reads above zero: are the two places swapped?",
	); err != nil {
		return StaticVerdict{}, err
	}
	std := quantity.StaticPressure(math.Hypot(r.Entering.Std, r.Leaving.Std))
	v := StaticVerdict{
		Readings:      r,
		External:      (r.Leaving.Value - r.Entering.Value).PlusMinus(std),
		Maximum:       r.Maximum,
		MaximumSource: fact.Source{Title: "the unit's label", Standing: fact.Label},
	}
	if r.Maximum == 0 {
		v.Maximum, v.MaximumSource = usualMaximum, fact.Source{Standing: fact.CommonPractice}
	}
	if err := limit.Within(
		"highest external static pressure", v.Maximum, 1, most,
		"take it from the label of the unit",
	); err != nil {
		return StaticVerdict{}, err
	}
	if v.External.Value > 0 {
		v.ReturnShare = float64(-r.Entering.Value / v.External.Value)
	}
	v.Within, _, _ = normal.Chances(float64(v.External.Value-v.Maximum), v.External.Std, 0)
	if v.External.Std == 0 && v.External.Value == v.Maximum {
		v.Within = 1
	}
	switch {
	case v.External.Value < v.Maximum/4:
		v.Outcome = StaticLow
	case v.Within >= decisionLevel:
		v.Outcome = StaticSound
	case v.Within <= 1-decisionLevel:
		v.Outcome = StaticHigh
	default:
		v.Outcome = StaticCannotTell
	}
	return v, nil
}
