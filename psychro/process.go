package psychro

import (
	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
)

// A Process is what happens to a stream of air between two states, per kilogram
// of its dry air. Water and energy are conserved:
//
//	End.HumidityRatio() = Start.HumidityRatio() + Water
//	End.Enthalpy()      = Start.Enthalpy() + Heat + Water·WaterEnthalpy
type Process struct {
	Start Air `json:"start"`
	End   Air `json:"end"`

	// Heat is the heat given to the air, negative where it is taken away. What
	// the water brings or carries off is not in it.
	Heat quantity.SpecificEnthalpy `json:"heat"`
	// Water is the water taken up, negative where it is condensed, in kilograms
	// per kilogram of dry air.
	Water float64 `json:"water"`
	// WaterEnthalpy is that of the water, per kilogram of it: 0 at 0 °C as
	// liquid, negative as ice, about 2.7 MJ/kg as steam.
	WaterEnthalpy quantity.SpecificEnthalpy `json:"waterEnthalpy"`
}

// HeatRate returns the heat given to a stream that carries dryAir, and 0 where that is
// no number.
func (c Process) HeatRate(dryAir quantity.MassFlow) quantity.Power {
	return finite.OrZero(quantity.Power(float64(c.Heat) * float64(dryAir)))
}

// WaterRate returns the water taken up by a stream that carries dryAir, and 0 where that
// is no number.
func (c Process) WaterRate(dryAir quantity.MassFlow) quantity.MassFlow {
	return finite.OrZero(quantity.MassFlow(c.Water) * dryAir)
}

// finish sets the heat so that the energy balance holds.
func finish(start, end Air, waterEnthalpy float64) Process {
	water := end.w - start.w
	return Process{
		Start: start, End: end, Water: water,
		WaterEnthalpy: quantity.SpecificEnthalpy(waterEnthalpy),
		Heat: end.Enthalpy() - start.Enthalpy() -
			quantity.SpecificEnthalpy(water*waterEnthalpy),
	}
}

// SensibleHeatCool heats or cools a to a dry bulb without change of its water.
// Below the dew point it is a *RangeError; see [CoolAndDehumidify].
func SensibleHeatCool(a Air, to quantity.Temperature) (Process, error) {
	if err := a.check("air"); err != nil {
		return Process{}, err
	}
	if err := checkTemperature("final dry bulb", float64(to)); err != nil {
		return Process{}, err
	}
	end := Air{t: float64(to), p: a.p, w: a.w, model: a.model}
	if ws, ok := a.model.saturationHumidityRatio(end.t, a.p); ok && end.w > ws {
		if !(end.w <= ws*(1+roundingW)) {
			return Process{}, &RangeError{
				Quantity: "final dry bulb",
				Value:    to,
				Min:      a.DewPoint(),
				Advice:   "that is the dew point; cooler than it the air sheds water",
			}
		}
	}
	return finish(a, end, 0), nil
}

// AddHeat gives heat to a, or takes it away where it is negative, without
// change of its water. Enough to pass the dew point is a *RangeError.
func AddHeat(a Air, heat quantity.SpecificEnthalpy) (Process, error) {
	if err := a.check("air"); err != nil {
		return Process{}, err
	}
	if err := checkFinite("heat", heat); err != nil {
		return Process{}, err
	}
	t := a.model.temperatureAtEnthalpy(float64(a.Enthalpy()+heat), a.w, a.p)
	return SensibleHeatCool(a, quantity.Temperature(t))
}

// AddWater gives a water of a given enthalpy and no heat. The enthalpy decides
// what it is: [LiquidEnthalpy] for a spray, that of steam for a steam
// humidifier. Water is in kilograms per kilogram of dry air; more than the air
// can hold is a *RangeError.
//
// On a psychrometric chart the air moves along a line whose slope, the change of
// enthalpy per change of humidity ratio, is that enthalpy.
func AddWater(a Air, water float64, enthalpy quantity.SpecificEnthalpy) (Process, error) {
	if err := a.check("air"); err != nil {
		return Process{}, err
	}
	if !(water >= 0) {
		return Process{}, &RangeError{
			Quantity: "water given to the air",
			Value:    quantity.Number(water),
			Min:      quantity.Number(0),
			Advice:   "it is kilograms per kilogram of dry air",
		}
	}
	if err := checkFinite("enthalpy of the water", enthalpy); err != nil {
		return Process{}, err
	}
	h := a.Enthalpy() + quantity.SpecificEnthalpy(water)*enthalpy
	end, err := a.model.FromEnthalpyAndHumidityRatio(h, a.w+water, quantity.Pressure(a.p))
	if err != nil {
		return Process{}, err
	}
	return Process{Start: a, End: end, Water: water, WaterEnthalpy: enthalpy}, nil
}

// LiquidEnthalpy returns the enthalpy of liquid water on the datum of the
// package, 0 at 0 °C. The error is a *RangeError.
func LiquidEnthalpy(
	t quantity.Temperature, p quantity.Pressure,
) (quantity.SpecificEnthalpy, error) {
	if err := PerfectGas.checkReadings("water temperature", t, p); err != nil {
		return 0, err
	}
	if boiling := PerfectGas.boundary().temperatureAt(float64(p)); float64(t) < zeroCelsius ||
		float64(t) > boiling {
		return 0, &RangeError{
			Quantity: "water temperature",
			Value:    t,
			Min:      quantity.Celsius(0),
			Max:      quantity.Temperature(boiling),
			Advice:   "beyond, water is not liquid at this pressure",
		}
	}
	return quantity.SpecificEnthalpy(PerfectGas.waterEnthalpy(float64(t), float64(p), false)), nil
}

// HumidifyAdiabatic passes a through wet pads or a recirculated spray, whose
// water comes to the wet bulb of the air and stays there. Effectiveness, from 0
// to 1, is the share of the wet-bulb depression that the air cools through;
// makers of pads give 0.8 to 0.95. Air whose wet bulb is iced is a *RangeError.
func HumidifyAdiabatic(a Air, effectiveness float64) (Process, error) {
	if err := a.check("air"); err != nil {
		return Process{}, err
	}
	if !(effectiveness >= 0 && effectiveness <= 1) {
		return Process{}, &RangeError{
			Quantity: "effectiveness",
			Value:    quantity.Number(effectiveness),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "it is a share of the wet-bulb depression",
		}
	}
	wetBulb := a.WetBulb()
	if float64(wetBulb) < a.model.freezing(a.p) {
		return Process{}, &RangeError{
			Quantity: "wet bulb",
			Value:    wetBulb,
			Min:      quantity.Celsius(0),
			Advice:   "the pads would freeze; warm the air first",
		}
	}
	t := a.DryBulb().Add(quantity.TemperatureDelta(effectiveness) * wetBulb.Sub(a.DryBulb()))
	end, err := a.model.FromWetBulb(t, wetBulb, quantity.Pressure(a.p))
	if err != nil {
		return Process{}, err
	}
	if end.w < a.w {
		end = a // effectiveness 0, but for rounding
	}
	h := a.model.waterEnthalpy(float64(wetBulb), a.p, false)
	return Process{
		Start:         a,
		End:           end,
		Water:         end.w - a.w,
		WaterEnthalpy: quantity.SpecificEnthalpy(h),
	}, nil
}

// check refuses the zero Air.
func (a Air) check(name string) error {
	if a.IsValid() {
		return nil
	}
	return &RangeError{Quantity: name, Advice: "it is the zero Air, which no constructor made"}
}
