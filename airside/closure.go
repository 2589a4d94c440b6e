package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RefrigerantCapacity returns the capacity on the refrigerant side: a mass flow
// times the rise of enthalpy through the evaporator, the vapor at its outlet
// less the liquid before the metering device. The error is a *RangeError.
func RefrigerantCapacity(
	flow quantity.Uncertain[quantity.MassFlow],
	liquid, vapor quantity.Uncertain[quantity.SpecificEnthalpy],
) (quantity.Uncertain[quantity.Power], error) {
	const most = quantity.SpecificEnthalpy(1e7)
	var none quantity.Uncertain[quantity.Power]
	if err := limit.Reading(
		"refrigerant mass flow", flow, 0, 1e3, "it is what a compressor map or a flow meter gives",
	); err != nil {
		return none, err
	}
	if err := limit.Reading(
		"enthalpy of the liquid", liquid, -most, most,
		"take it from the liquid line's pressure and temperature",
	); err != nil {
		return none, err
	}
	if err := limit.Reading(
		"enthalpy of the vapor", vapor, liquid.Value, most,
		"vapor holds more than the liquid it came from: are the two swapped, "+
			"or on different datums?",
	); err != nil {
		return none, err
	}
	rise := float64(vapor.Value - liquid.Value)
	m := float64(flow.Value)
	std := math.Hypot(rise*flow.Std, m*math.Hypot(liquid.Std, vapor.Std))
	return quantity.Power(m * rise).PlusMinus(quantity.Power(std)), nil
}

// A Closure compares a capacity measured on the air side with one measured on
// the refrigerant side. The two are the same heat.
type Closure struct {
	Air         quantity.Uncertain[quantity.Power] `json:"air"`
	Refrigerant quantity.Uncertain[quantity.Power] `json:"refrigerant"`
	// Error is air less refrigerant side.
	Error quantity.Uncertain[quantity.Power] `json:"error"`
	// Relative is Error over the refrigerant side.
	Relative    float64 `json:"relative"`
	RelativeStd float64 `json:"relativeStd"`
	// Closes says that the error is within twice its standard uncertainty.
	Closes bool `json:"closes"`
	// Best is the mean of the two weighted by their uncertainties; the
	// refrigerant side where none is stated. Use it only where the balance
	// closes.
	Best quantity.Uncertain[quantity.Power] `json:"best"`
}

// ClosureOf holds the air side against the refrigerant side. Both are to be of the
// coil alone, or the heat of the blower is to be taken off the one that has it.
// The error is a *RangeError where the refrigerant side is not above zero.
func ClosureOf(air, refrigerant quantity.Uncertain[quantity.Power]) (Closure, error) {
	const most = quantity.Power(1e9)
	if err := limit.Reading(
		"capacity on the air side", air, -most, most, "see MeasureCapacity",
	); err != nil {
		return Closure{}, err
	}
	if err := limit.Reading(
		"capacity on the refrigerant side", refrigerant, quantity.Watts(1), most,
		"see RefrigerantCapacity",
	); err != nil {
		return Closure{}, err
	}
	diff := float64(air.Value - refrigerant.Value)
	std := math.Hypot(air.Std, refrigerant.Std)
	r := float64(refrigerant.Value)
	c := Closure{
		Air: air, Refrigerant: refrigerant,
		Error:       quantity.Power(diff).PlusMinus(quantity.Power(std)),
		Relative:    diff / r,
		RelativeStd: math.Hypot(air.Std, float64(air.Value)/r*refrigerant.Std) / r,
		Closes:      math.Abs(diff) <= 2*std, Best: refrigerant,
	}
	if std > 0 {
		wa, wr := refrigerant.Std/std, air.Std/std
		wa, wr = wa*wa, wr*wr
		c.Best = quantity.Power(wa*float64(air.Value) + wr*r).
			PlusMinus(quantity.Power(air.Std * (refrigerant.Std / std)))
	}
	return c, nil
}
