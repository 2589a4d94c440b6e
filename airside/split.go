package airside

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// SplitReadings are the air temperatures around the indoor coil, read together
// once the machine runs steadily, 15 minutes at least.
type SplitReadings struct {
	ReturnDryBulb quantity.Uncertain[quantity.Temperature] `json:"returnDryBulb"`
	ReturnWetBulb quantity.Uncertain[quantity.Temperature] `json:"returnWetBulb"`
	SupplyDryBulb quantity.Uncertain[quantity.Temperature] `json:"supplyDryBulb"`
	// Atmosphere is the pressure of the place; zero stands for sea level.
	Atmosphere quantity.Pressure `json:"atmosphere,omitzero"`
}

// SplitOutcome is what a split shows.
type SplitOutcome int

// The outcomes.
const (
	// SplitInBand: air and capacity fit each other.
	SplitInBand SplitOutcome = iota + 1
	// SplitHigh: the air is cooled too far, so there is too little of it.
	SplitHigh
	// SplitLow: the air is not cooled far enough; there is too little capacity,
	// or too much air.
	SplitLow
	// SplitCannotTell: the instruments are not good enough to say.
	SplitCannotTell
)

var splitOutcomes = []string{"not-judged", "in-band", "above-target", "below-target", "cannot-tell"}

// String returns the outcome in words.
func (o SplitOutcome) String() string { return enum.Name(splitOutcomes, o) }

// MarshalText writes the words of String.
func (o SplitOutcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a split", splitOutcomes, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *SplitOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a split", splitOutcomes, text, o)
}

// A SplitVerdict is a measured temperature split held against its target.
type SplitVerdict struct {
	Outcome  SplitOutcome                                  `json:"outcome"`
	Readings SplitReadings                                 `json:"readings"`
	Measured quantity.Uncertain[quantity.TemperatureDelta] `json:"measured"`
	// Target is that of the table with the Altitude term added.
	Target quantity.Uncertain[quantity.TemperatureDelta] `json:"target"`
	// Altitude is what thin air adds to the target, see [SplitAltitude].
	Altitude quantity.Uncertain[quantity.TemperatureDelta] `json:"altitude,omitzero"`
	// Deviation is measured less target. Its uncertainty is not that of the two
	// combined: the return dry bulb is in both, and about half of its error
	// cancels.
	Deviation quantity.Uncertain[quantity.TemperatureDelta] `json:"deviation"`
	Tolerance quantity.TemperatureDelta                     `json:"tolerance"`
	// Chances that the split is below, within and above the tolerance, as far as
	// the uncertainty of the readings goes; they add up to 1.
	Low             float64     `json:"low"`
	InBand          float64     `json:"inBand"`
	High            float64     `json:"high"`
	Source          fact.Source `json:"source"`
	ToleranceSource fact.Source `json:"toleranceSource"`
}

// decisionLevel is the probability from which an outcome is given; below it the
// instruments cannot tell. Common practice, no source.
const decisionLevel = 0.90

// JudgeSplit holds the measured split against [TargetSplit], and [SplitAltitude]
// where the atmosphere is given. Where the table has no target, or a reading is
// impossible, the error is a *RangeError.
func JudgeSplit(r SplitReadings) (SplitVerdict, error) {
	if err := r.check(); err != nil {
		return SplitVerdict{}, err
	}
	target, perDB, perWB, err := splitTarget(r.ReturnDryBulb.Value, r.ReturnWetBulb.Value)
	if err != nil {
		return SplitVerdict{}, err
	}
	v := SplitVerdict{Source: splitTargetSource, ToleranceSource: splitToleranceSource}
	if r.Atmosphere != 0 {
		if v.Altitude, err = SplitAltitude(target, r.Atmosphere); err != nil {
			return SplitVerdict{}, err
		}
	}
	db, wb := r.ReturnDryBulb.Std, r.ReturnWetBulb.Std
	v.Target = (target + v.Altitude.Value).PlusMinus(
		quantity.TemperatureDelta(math.Hypot(math.Hypot(perDB*db, perWB*wb), v.Altitude.Std)),
	)
	std := math.Hypot(
		math.Hypot((1-perDB)*db, perWB*wb), math.Hypot(r.SupplyDryBulb.Std, v.Altitude.Std),
	)
	v.judge(r, SplitTolerance, std)
	return v, nil
}

// JudgeSplitAgainst holds the measured split against a target of the unit's own
// maker, or one that a coil model predicts, with its source and tolerance. The
// error is a *RangeError.
func JudgeSplitAgainst(
	r SplitReadings, target quantity.Uncertain[quantity.TemperatureDelta],
	tolerance quantity.TemperatureDelta, source fact.Source,
) (SplitVerdict, error) {
	if err := r.check(); err != nil {
		return SplitVerdict{}, err
	}
	const most = quantity.TemperatureDelta(40)
	if err := limit.Reading(
		"target split", target, 0, most, "it is return less supply dry bulb",
	); err != nil {
		return SplitVerdict{}, err
	}
	if err := limit.Within(
		"tolerance of the split", tolerance, 0, most, "3 °F is usual",
	); err != nil {
		return SplitVerdict{}, err
	}
	v := SplitVerdict{Target: target, Source: source, ToleranceSource: source}
	v.judge(
		r, tolerance, math.Hypot(target.Std, math.Hypot(r.ReturnDryBulb.Std, r.SupplyDryBulb.Std)),
	)
	return v, nil
}

func (r *SplitReadings) check() error {
	if err := airTemperature("supply dry bulb", r.SupplyDryBulb); err != nil {
		return err
	}
	if err := airTemperature("return dry bulb", r.ReturnDryBulb); err != nil {
		return err
	}
	if err := airTemperature("return wet bulb", r.ReturnWetBulb); err != nil {
		return err
	}
	if r.Atmosphere == 0 {
		return nil
	}
	return checkAtmosphere(r.Atmosphere.PlusMinus(0))
}

// judge fills in what follows from the target and the standard uncertainty of
// the deviation from it.
func (v *SplitVerdict) judge(r SplitReadings, tolerance quantity.TemperatureDelta, std float64) {
	v.Readings, v.Tolerance = r, tolerance
	measured := r.ReturnDryBulb.Value.Sub(r.SupplyDryBulb.Value)
	v.Measured = measured.PlusMinus(
		quantity.TemperatureDelta(math.Hypot(r.ReturnDryBulb.Std, r.SupplyDryBulb.Std)),
	)
	v.Deviation = (measured - v.Target.Value).PlusMinus(quantity.TemperatureDelta(std))
	v.Low, v.InBand, v.High = normal.Chances(float64(v.Deviation.Value), std, float64(tolerance))
	switch {
	case v.InBand >= decisionLevel:
		v.Outcome = SplitInBand
	case v.High >= decisionLevel:
		v.Outcome = SplitHigh
	case v.Low >= decisionLevel:
		v.Outcome = SplitLow
	default:
		v.Outcome = SplitCannotTell
	}
}

// AirflowFirst reports whether the airflow must be looked at before the charge
// is judged or moved: the split is above its tolerance, or more likely so than
// not.
func (v SplitVerdict) AirflowFirst() bool {
	return v.Outcome == SplitHigh || v.Outcome == SplitCannotTell && v.High > 0.5
}
