package airside

import (
	"encoding/json"
	"math"
	"time"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// GasInput is a gas burner's input, clocked at the meter with every other gas
// appliance off.
type GasInput struct {
	// Metered is the volume that passed in Elapsed.
	Metered quantity.Uncertain[quantity.Volume] `json:"metered"`
	Elapsed time.Duration                       `json:"elapsed"`
	// ElapsedStd is the standard uncertainty of the watch and the hand on it;
	// zero means half a second.
	ElapsedStd time.Duration `json:"elapsedStd,omitzero"`
	// HeatingValue is what the utility states for the gas as metered.
	HeatingValue quantity.Uncertain[quantity.HeatingValue] `json:"heatingValue"`
	// Efficiency is the share of the input that reaches the air, from the label
	// or a combustion analysis, 0 to 1.
	Efficiency    float64 `json:"efficiency"`
	EfficiencyStd float64 `json:"efficiencyStd,omitzero"`
}

type gasInputFields GasInput

type gasInputJSON struct {
	Elapsed    span.Span `json:"elapsed"`
	ElapsedStd span.Span `json:"elapsedStd,omitzero"`
	gasInputFields
}

// MarshalJSON writes the fields by their tags, and the times as "2m0s".
func (g GasInput) MarshalJSON() ([]byte, error) {
	return json.Marshal(
		gasInputJSON{span.Span(g.Elapsed), span.Span(g.ElapsedStd), gasInputFields(g)},
	)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (g *GasInput) UnmarshalJSON(text []byte) error {
	var j gasInputJSON
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*g = GasInput(j.gasInputFields)
	g.Elapsed, g.ElapsedStd = time.Duration(j.Elapsed), time.Duration(j.ElapsedStd)
	return nil
}

// Heat returns the heat that reaches the air. The error is a *RangeError.
func (g GasInput) Heat() (quantity.Uncertain[quantity.Power], error) {
	var none quantity.Uncertain[quantity.Power]
	if err := limit.Reading(
		"metered gas", g.Metered, quantity.CubicFeet(0.01), quantity.CubicMeters(1000),
		"it is the volume that passed the meter while it was timed",
	); err != nil {
		return none, err
	}
	if g.Elapsed < time.Second || g.Elapsed > 24*time.Hour {
		return none, &RangeError{
			Quantity: "time of metering",
			Value:    g.Elapsed,
			Min:      time.Second,
			Max:      24 * time.Hour,
			Advice:   "time at least one full turn of the dial, better two minutes",
		}
	}
	if g.ElapsedStd < 0 {
		return none, &RangeError{
			Quantity: "standard uncertainty of the time",
			Value:    g.ElapsedStd,
			Min:      time.Duration(0),
			Advice:   "leave it zero for half a second",
		}
	}
	if err := limit.Reading(
		"heating value", g.HeatingValue, quantity.MegajoulesPerCubicMeter(1),
		quantity.MegajoulesPerCubicMeter(200),
		"natural gas is near 1,000 Btu/ft³, propane vapor near 2,500; "+
			"ask the utility for the gas as it is metered",
	); err != nil {
		return none, err
	}
	if err := share("efficiency", g.Efficiency, g.EfficiencyStd); err != nil {
		return none, err
	}
	elapsedStd := g.ElapsedStd
	if elapsedStd == 0 {
		elapsedStd = time.Second / 2
	}
	burnt := float64(g.Metered.Value) * float64(g.HeatingValue.Value)
	heat := burnt * g.Efficiency / g.Elapsed.Seconds()
	relative := math.Hypot(
		math.Hypot(
			g.Metered.Std/float64(g.Metered.Value),
			g.HeatingValue.Std/float64(g.HeatingValue.Value),
		),
		math.Hypot(elapsedStd.Seconds()/g.Elapsed.Seconds(), g.EfficiencyStd/g.Efficiency),
	)
	return quantity.Power(heat).PlusMinus(quantity.Power(heat * relative)), nil
}

func share(name string, v, std float64) error {
	if !(v >= 0.01 && v <= 1) {
		return &RangeError{
			Quantity: name,
			Value:    quantity.Number(v),
			Min:      quantity.Number(0.01),
			Max:      quantity.Number(1),
			Advice:   "it is a share: 80 % is 0.8",
		}
	}
	if !(std >= 0 && std <= 1) {
		return &RangeError{
			Quantity: "standard uncertainty of " + name,
			Value:    quantity.Number(std),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "it is a share like the value itself",
		}
	}
	return nil
}

// ElectricInput is the input of electric heat, or of a blower motor.
type ElectricInput struct {
	Voltage quantity.Uncertain[quantity.Voltage] `json:"voltage"`
	Current quantity.Uncertain[quantity.Current] `json:"current"`
	// ThreePhase means that Voltage is line to line and Current that of one
	// line, the same in all.
	ThreePhase bool `json:"threePhase,omitzero"`
	// PowerFactor is 1 for resistance heat, where zero stands for it, and 0.6 to
	// 0.95 for a motor.
	PowerFactor    float64 `json:"powerFactor,omitzero"`
	PowerFactorStd float64 `json:"powerFactorStd,omitzero"`
}

// Heat returns the power, all of which is heat in the air stream. The error is a
// *RangeError.
func (e ElectricInput) Heat() (quantity.Uncertain[quantity.Power], error) {
	var none quantity.Uncertain[quantity.Power]
	if err := limit.Reading(
		"voltage", e.Voltage, quantity.Volts(1), quantity.Volts(1000),
		"it is the root-mean-square voltage at the heater while it runs",
	); err != nil {
		return none, err
	}
	if err := limit.Reading(
		"current", e.Current, quantity.Amperes(0.01), quantity.Amperes(2000),
		"it is the current of the heater alone, or with the blower on the same wires",
	); err != nil {
		return none, err
	}
	factor := e.PowerFactor
	if factor == 0 {
		factor = 1
	}
	if err := share("power factor", factor, e.PowerFactorStd); err != nil {
		return none, err
	}
	phases := 1.0
	if e.ThreePhase {
		phases = math.Sqrt(3)
	}
	power := phases * factor * float64(e.Voltage.Value) * float64(e.Current.Value)
	relative := math.Hypot(
		math.Hypot(e.Voltage.Std/float64(e.Voltage.Value), e.Current.Std/float64(e.Current.Value)),
		e.PowerFactorStd/factor,
	)
	return quantity.Power(power).PlusMinus(quantity.Power(power * relative)), nil
}

// TotalHeat adds up the heats of burner, elements and blower, as independent of
// each other. What is no number or infinite adds nothing.
func TotalHeat(parts ...quantity.Uncertain[quantity.Power]) quantity.Uncertain[quantity.Power] {
	var sum quantity.Uncertain[quantity.Power]
	for _, p := range parts {
		sum.Value += finite.OrZero(p.Value)
		sum.Std = math.Hypot(sum.Std, finite.OrZero(p.Std))
	}
	return finite.OrZero(sum.Value).PlusMinus(quantity.Power(finite.OrZero(sum.Std)))
}

// HeatRise is a temperature rise over a measured heat.
type HeatRise struct {
	// Heat is all that the air takes up between the two thermometers, the
	// blower's included where it lies between.
	Heat   quantity.Uncertain[quantity.Power]       `json:"heat"`
	Return AirAt                                    `json:"return"`
	Supply quantity.Uncertain[quantity.Temperature] `json:"supply"`
}

// Airflow returns the flow, counted at the return condition, that the heat warms
// from return to supply: heat over the rise of the air's own enthalpy, where the
// trade divides by 1.08 and the rise. The error is a *RangeError where the supply
// is not warmer than the return.
func (h HeatRise) Airflow() (Airflow, error) {
	if err := h.Return.check("return"); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"heat", h.Heat, quantity.Watts(10), quantity.Kilowatts(10000),
		"see GasInput.Heat and ElectricInput.Heat",
	); err != nil {
		return Airflow{}, err
	}
	const leastRise = quantity.TemperatureDelta(1)
	if err := limit.Reading(
		"supply dry bulb", h.Supply, h.Return.DryBulb.Value.Add(leastRise), quantity.Celsius(200),
		"heated air is warmer than it came: are supply and return swapped, "+
			"or is the machine cooling?",
	); err != nil {
		return Airflow{}, err
	}
	var x, std inputs
	var names [maxInputs]string
	h.Return.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(h.Supply.Value), h.Supply.Std, "supplyDryBulb"
	x[4], std[4], names[4] = float64(h.Heat.Value), h.Heat.Std, "heat"
	return measureAirflow(ByHeat, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		in, err := h.Return.state(&x)
		if err != nil {
			return 0, in, err
		}
		heating, err := psychro.SensibleHeatCool(in, quantity.Temperature(x[3]))
		if err != nil {
			return 0, in, err
		}
		if !(heating.Heat > 0) {
			return 0, in, &RangeError{
				Quantity: "temperature rise",
				Value:    heating.End.DryBulb().Sub(in.DryBulb()),
				Min:      leastRise,
				Advice:   "it is lost in the uncertainty of the thermometers",
			}
		}
		return x[4] / float64(heating.Heat) * float64(in.SpecificVolume()), in, nil
	})
}
