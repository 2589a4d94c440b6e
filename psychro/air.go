package psychro

import (
	"fmt"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
)

// Air is one state of moist air: its temperature, pressure and water, and the
// model it is computed with. It is a small value to copy and compare; two Airs
// are equal when the four are.
//
// The zero Air is no air: IsValid is false and every property is zero. Every
// other Air comes from a constructor, which has refused what is no state of
// air, so the properties need no error.
type Air struct {
	t, p, w float64
	model   Model
	iced    bool // of the two wet bulbs around 0 °C, the iced one is meant
}

// IsValid reports whether a was made by a constructor.
func (a Air) IsValid() bool { return a.p > 0 }

// Model returns the model a is computed with.
func (a Air) Model() Model { return a.model }

// DryBulb returns the temperature of the air.
func (a Air) DryBulb() quantity.Temperature { return quantity.Temperature(a.t) }

// Pressure returns the absolute pressure of the air.
func (a Air) Pressure() quantity.Pressure { return quantity.Pressure(a.p) }

// HumidityRatio returns the kilograms of water vapor per kilogram of dry air.
func (a Air) HumidityRatio() float64 { return a.w }

// VaporPressure returns the partial pressure of the water vapor.
func (a Air) VaporPressure() quantity.Pressure {
	return quantity.Pressure(a.model.vaporPressure(a.w, a.p))
}

// RelativeHumidity returns the vapor pressure over the saturation pressure at
// the dry bulb, 0 to 1. Where that pressure is above the pressure of the air,
// in air hotter than boiling water, no air can be saturated and 1 is not
// reached.
func (a Air) RelativeHumidity() float64 {
	if !a.IsValid() {
		return 0
	}
	return min(1, a.model.relativeHumidity(a.t, a.w, a.p))
}

// DegreeOfSaturation returns the humidity ratio over that of saturated air at
// the same temperature and pressure, 0 to 1. In air hotter than boiling water,
// which holds water without limit, it is 0.
func (a Air) DegreeOfSaturation() float64 {
	if !a.IsValid() {
		return 0
	}
	ws, ok := a.model.saturationHumidityRatio(a.t, a.p)
	if !ok {
		return 0
	}
	return min(1, a.w/ws)
}

// Enthalpy returns the enthalpy per kilogram of dry air, zero for dry air at
// 0 °C and liquid water at 0 °C.
func (a Air) Enthalpy() quantity.SpecificEnthalpy {
	if !a.IsValid() {
		return 0
	}
	return quantity.SpecificEnthalpy(a.model.enthalpy(a.t, a.w, a.p))
}

// EnthalpyIP returns the enthalpy on the datum of inch-pound charts and tables:
// zero for dry air at 0 °F and liquid water at 32 °F. It stands 17.9 kJ/kg
// (7.69 Btu/lb) above Enthalpy; differences are the same on either datum.
func (a Air) EnthalpyIP() quantity.SpecificEnthalpy {
	if !a.IsValid() {
		return 0
	}
	const zeroFahrenheit = 459.67 / 1.8
	return a.Enthalpy() - quantity.SpecificEnthalpy(
		a.model.enthalpy(zeroFahrenheit, 0, float64(quantity.StandardAtmosphere)),
	)
}

// SpecificVolume returns the volume of the mixture per kilogram of dry air.
func (a Air) SpecificVolume() quantity.SpecificVolume {
	if !a.IsValid() {
		return 0
	}
	return quantity.SpecificVolume(a.model.specificVolume(a.t, a.w, a.p))
}

// Density returns the mass of the mixture, air and water, per volume. It is
// not the reciprocal of SpecificVolume, which counts the dry air alone.
func (a Air) Density() quantity.Density {
	if !a.IsValid() {
		return 0
	}
	return quantity.Density((1 + a.w) / float64(a.SpecificVolume()))
}

// DryAirFlow returns the mass flow of dry air in a volume flow of a, the flow
// that the balances of a coil are counted on; 0 of a flow that is no number.
func (a Air) DryAirFlow(flow quantity.VolumeFlow) quantity.MassFlow {
	if !a.IsValid() {
		return 0
	}
	return finite.OrZero(quantity.MassFlow(float64(flow) / float64(a.SpecificVolume())))
}

// DewPoint returns the temperature at which the air, cooled at its pressure,
// is saturated: the frost point below 0.01 °C. Below −100 °C, where no equation
// holds, it is extrapolated with a constant heat of sublimation, down to 0 K
// for perfectly dry air.
func (a Air) DewPoint() quantity.Temperature {
	if !a.IsValid() {
		return 0
	}
	return quantity.Temperature(min(a.t, a.model.temperatureAtRH(a.w, 1, a.p)))
}

// WetBulb returns the thermodynamic wet bulb: the temperature at which water,
// evaporating into the air without heat from elsewhere, saturates it. A
// thermometer with a wet wick comes close to it in moving air; see
// [Psychrometer].
func (a Air) WetBulb() quantity.Temperature {
	if !a.IsValid() {
		return 0
	}
	return quantity.Temperature(a.model.wetBulb(a.t, a.w, a.p, a.iced))
}

// WetBulbIced reports whether the wick at the wet bulb is iced.
func (a Air) WetBulbIced() bool {
	return a.IsValid() && float64(a.WetBulb()) < a.model.freezing(a.p)
}

// IcedWetBulb returns the wet bulb of an iced wick, which air whose wet wick is
// less than a degree above freezing has as well. It is not ok where ice would melt.
func (a Air) IcedWetBulb() (wetBulb quantity.Temperature, ok bool) {
	if !a.IsValid() {
		return 0, false
	}
	m, freezing := a.model, a.model.freezing(a.p)
	if a.t > freezing {
		ws, _ := m.saturationHumidityRatio(freezing, a.p)
		if a.w > m.humidityRatioAtWetBulb(a.t, freezing, ws, a.p, true) {
			return 0, false
		}
	}
	return quantity.Temperature(m.wetBulb(a.t, a.w, a.p, true)), true
}

// Format shows dry bulb, wet bulb and pressure in one system of units.
func (a Air) Format(sys quantity.System) string {
	if !a.IsValid() {
		return "no air"
	}
	return fmt.Sprintf(
		"%s dry bulb, %s wet bulb, %s", a.DryBulb().Format(sys), a.WetBulb().Format(sys),
		a.Pressure().Format(sys),
	)
}

// String is Format(SI).
func (a Air) String() string { return a.Format(quantity.SI) }
