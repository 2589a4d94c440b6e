package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// An Efficiency is the cooling or heating that a machine gives for the
// electricity it takes.
type Efficiency struct {
	// COP is watts per watt.
	COP    float64 `json:"cop"`
	COPStd float64 `json:"copStd"`
	// EER is Btu/h per watt.
	EER    float64 `json:"eer"`
	EERStd float64 `json:"eerStd"`
}

// EfficiencyOf returns the efficiency of a measured capacity at a measured
// electric power. Both are to cover the same machine: with the indoor blower in
// the power, the capacity is the net one, from return to supply. The error is a
// *RangeError where the power is not above zero.
//
// It is the efficiency at the conditions of the day. A label's is at rating
// conditions, so the two are not to be compared as they stand.
func EfficiencyOf(capacity, power quantity.Uncertain[quantity.Power]) (Efficiency, error) {
	const most = quantity.Power(1e9)
	if err := limit.Reading(
		"capacity", capacity, -most, most, "it is a heat flow in Btu/h, tons or kilowatts",
	); err != nil {
		return Efficiency{}, err
	}
	if err := limit.Reading(
		"electric power", power, quantity.Watts(1), most,
		"it is the power the machine takes while it runs",
	); err != nil {
		return Efficiency{}, err
	}
	cop := float64(capacity.Value / power.Value)
	std := math.Hypot(capacity.Std, cop*power.Std) / float64(power.Value)
	perWatt := quantity.Watts(1).BtuPerHour()
	return Efficiency{cop, std, cop * perWatt, std * perWatt}, nil
}
