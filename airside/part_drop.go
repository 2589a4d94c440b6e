package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
)

// PartDrop is a coil or filter whose drop is known clean, at an airflow known by
// another method: is it dirty?
type PartDrop struct {
	Part Part `json:"part"`
	// Rated is the clean drop at RatedFlow of standard air, from the part's
	// table; a coil's wet or dry as it is now.
	Rated     quantity.StaticPressure `json:"rated"`
	RatedFlow quantity.VolumeFlow     `json:"ratedFlow"`
	// Flow is counted at the condition of Air.
	Flow     quantity.Uncertain[quantity.VolumeFlow]     `json:"flow"`
	Air      AirAt                                       `json:"air"`
	Measured quantity.Uncertain[quantity.StaticPressure] `json:"measured"`
}

// A DropVerdict is a measured drop against that of a clean part.
type DropVerdict struct {
	Measured quantity.Uncertain[quantity.StaticPressure] `json:"measured"`
	// Expected is the drop of the clean part at the same flow.
	Expected quantity.Uncertain[quantity.StaticPressure] `json:"expected"`
	// Ratio is measured over expected.
	Ratio    float64 `json:"ratio"`
	RatioStd float64 `json:"ratioStd"`
	// Dirty is the chance that the part takes at least half as much again as
	// when clean; Open that it takes less than two thirds, as one that air goes
	// around or that is not the part of the table.
	Dirty float64 `json:"dirty"`
	Open  float64 `json:"open"`
}

// The ratios at which a part is called dirty or open. Common practice, no
// source.
const (
	dirtyRatio = 1.5
	openRatio  = 2.0 / 3
)

// Judge holds the drop against that of a clean part at the same flow. The error is a *RangeError
// for a reading, or a row of the part's label, that cannot be.
func (d PartDrop) Judge() (DropVerdict, error) {
	if err := d.Part.check(d.Air, d.Rated); err != nil {
		return DropVerdict{}, err
	}
	if err := limit.Within(
		"rated flow", d.RatedFlow, quantity.CFM(1), largestFlow,
		"take it from the same row as the drop",
	); err != nil {
		return DropVerdict{}, err
	}
	if err := limit.Reading(
		"airflow", d.Flow, quantity.CFM(1), largestFlow,
		"measure it by a method that does not rest on this drop",
	); err != nil {
		return DropVerdict{}, err
	}
	if err := limit.Reading(
		"static pressure drop", d.Measured, 0, 5000,
		"it is the pressure before the part less that after it",
	); err != nil {
		return DropVerdict{}, err
	}
	n, nStd := d.Part.exponent()
	var x, std inputs
	var names [maxInputs]string
	d.Air.inputs(&x, &std, &names)
	x[3], std[3] = float64(d.Flow.Value), d.Flow.Std
	x[4], std[4] = n, nStd
	y, c, err := propagate(x, std, func(x inputs) (outputs, error) {
		air, err := d.Air.state(&x)
		if err != nil {
			return outputs{}, err
		}
		dense := float64(air.Density() / standardDensity())
		drop := float64(d.Rated) * math.Pow(max(0, x[3])/float64(d.RatedFlow), x[4])
		return outputs{drop * math.Pow(dense, x[4]-1)}, nil
	})
	if err != nil {
		return DropVerdict{}, err
	}
	v := DropVerdict{
		Measured: d.Measured,
		Expected: quantity.StaticPressure(y[0]).PlusMinus(quantity.StaticPressure(c.std(0))),
	}
	v.Ratio = float64(d.Measured.Value) / y[0]
	v.RatioStd = math.Hypot(d.Measured.Std, v.Ratio*c.std(0)) / y[0]
	_, _, v.Dirty = normal.Chances(v.Ratio-dirtyRatio, v.RatioStd, 0)
	v.Open, _, _ = normal.Chances(v.Ratio-openRatio, v.RatioStd, 0)
	return v, nil
}
