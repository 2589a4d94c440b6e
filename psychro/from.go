package psychro

import "github.com/satline/satline/quantity"

// FromWetBulb returns the air of a dry bulb and a thermodynamic wet bulb. A
// wet bulb below 0 °C is of an iced wick.
//
// A wet bulb above the dry bulb is a *RangeError: there is no such air, and
// most often the two readings are swapped. What unit conversion leaves, up to
// 1e-9 K, is taken as saturated; [Psychrometer.Measure] allows for what the two
// thermometers may err. A wet bulb below that of perfectly dry air is a
// *RangeError too.
func FromWetBulb(dryBulb, wetBulb quantity.Temperature, p quantity.Pressure) (Air, error) {
	return PerfectGas.FromWetBulb(dryBulb, wetBulb, p)
}

// FromWetBulb is the function FromWetBulb in model m.
func (m Model) FromWetBulb(
	dryBulb, wetBulb quantity.Temperature, p quantity.Pressure,
) (Air, error) {
	t, b := float64(dryBulb), float64(wetBulb)
	if !m.inRange(dryBulb, p) {
		if err := m.checkReadings("dry bulb", dryBulb, p); err != nil {
			return Air{}, err
		}
	}
	if !(b >= minTemperature-roundingWetBulb) {
		return Air{}, checkTemperature("wet bulb", b)
	}
	if b > t {
		if !(b <= t+roundingK) {
			return Air{}, aboveDryBulb(
				"wet bulb", b, t,
				"evaporation cools, so a wet bulb is never above the dry bulb: "+
					"are the two readings swapped?",
			)
		}
		b = t
	}
	ws, ok := m.saturationHumidityRatio(b, float64(p))
	if !ok {
		return Air{}, m.boils("wet bulb", b, float64(p))
	}
	iced := b < m.freezing(float64(p))
	w := m.humidityRatioAtWetBulb(t, b, ws, float64(p), iced)
	if !(w >= 0 && w <= maxHumidityRatio) {
		if w > -1e-15 && w < 0 {
			w = 0
		} else if w < 0 {
			return Air{}, m.tooDry(b, t, float64(p))
		} else {
			return Air{}, checkHumidityRatio(w)
		}
	}
	a := Air{t: t, p: float64(p), w: w, model: m}
	if iced {
		a = m.withIcedWick(a)
	}
	return a, nil
}

// roundingWetBulb lets in the wet bulb of dry air at minTemperature.
const roundingWetBulb = 1e-3

// FromDewPoint returns the air of a dry bulb and a dew point, which below
// 0.01 °C is a frost point. A dew point above the dry bulb is a *RangeError.
func FromDewPoint(dryBulb, dewPoint quantity.Temperature, p quantity.Pressure) (Air, error) {
	return PerfectGas.FromDewPoint(dryBulb, dewPoint, p)
}

// FromDewPoint is the function FromDewPoint in model m.
func (m Model) FromDewPoint(
	dryBulb, dewPoint quantity.Temperature, p quantity.Pressure,
) (Air, error) {
	t, d := float64(dryBulb), float64(dewPoint)
	if !m.inRange(dryBulb, p) {
		if err := m.checkReadings("dry bulb", dryBulb, p); err != nil {
			return Air{}, err
		}
	}
	if !(d <= t) || d < minTemperature {
		if err := checkTemperature("dew point", d); err != nil {
			return Air{}, err
		}
	}
	if d > t {
		if !(d <= t+roundingK) {
			return Air{}, aboveDryBulb(
				"dew point", d, t,
				"air below its dew point has already shed the water as fog or dew",
			)
		}
		d = t
	}
	w, ok := m.saturationHumidityRatio(d, float64(p))
	if !ok {
		return Air{}, m.boils("dew point", d, float64(p))
	}
	return m.at(t, w, float64(p))
}

// FromRelativeHumidity returns the air of a dry bulb and a relative humidity
// from 0 to 1.
func FromRelativeHumidity(
	dryBulb quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromRelativeHumidity(dryBulb, rh, p)
}

// FromRelativeHumidity is the function FromRelativeHumidity in model m.
func (m Model) FromRelativeHumidity(
	dryBulb quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	t := float64(dryBulb)
	if !m.inRange(dryBulb, p) {
		if err := m.checkReadings("dry bulb", dryBulb, p); err != nil {
			return Air{}, err
		}
	}
	if err := checkRelativeHumidity(rh); err != nil {
		return Air{}, err
	}
	w, ok := m.humidityRatioAtRH(t, rh, float64(p))
	if !ok {
		return Air{}, m.noAirLeft(t, rh, float64(p))
	}
	return m.at(t, w, float64(p))
}

// Saturated returns the air that holds all the water vapor it can at dryBulb.
func Saturated(dryBulb quantity.Temperature, p quantity.Pressure) (Air, error) {
	return PerfectGas.Saturated(dryBulb, p)
}

// Saturated is the function Saturated in model m.
func (m Model) Saturated(dryBulb quantity.Temperature, p quantity.Pressure) (Air, error) {
	return m.FromRelativeHumidity(dryBulb, 1, p)
}

// at is the air of a humidity ratio that saturation does not bound.
func (m Model) at(t, w, p float64) (Air, error) {
	if err := checkHumidityRatio(w); err != nil {
		return Air{}, err
	}
	return Air{t: t, p: p, w: w, model: m}, nil
}

// FromHumidityRatio returns the air of a dry bulb and a humidity ratio in
// kilograms of water per kilogram of dry air. More than saturated air holds is
// a *RangeError, but for a rounding of 1 part in 10⁹.
func FromHumidityRatio(dryBulb quantity.Temperature, w float64, p quantity.Pressure) (Air, error) {
	return PerfectGas.FromHumidityRatio(dryBulb, w, p)
}

// FromHumidityRatio is the function FromHumidityRatio in model m.
func (m Model) FromHumidityRatio(
	dryBulb quantity.Temperature, w float64, p quantity.Pressure,
) (Air, error) {
	t := float64(dryBulb)
	if !m.inRange(dryBulb, p) {
		if err := m.checkReadings("dry bulb", dryBulb, p); err != nil {
			return Air{}, err
		}
	}
	if err := checkHumidityRatio(w); err != nil {
		return Air{}, err
	}
	if ws, ok := m.saturationHumidityRatio(t, float64(p)); ok && w > ws {
		if !(w <= ws*(1+roundingW)) {
			return Air{}, supersaturated("dry bulb", w, ws)
		}
		w = ws
	}
	return Air{t: t, p: float64(p), w: w, model: m}, nil
}

// FromEnthalpy returns the air of a dry bulb and an enthalpy per kilogram of
// dry air. An enthalpy below that of dry air or above that of saturated air at
// the dry bulb is a *RangeError.
func FromEnthalpy(
	dryBulb quantity.Temperature, h quantity.SpecificEnthalpy, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromEnthalpy(dryBulb, h, p)
}

// FromEnthalpy is the function FromEnthalpy in model m.
func (m Model) FromEnthalpy(
	dryBulb quantity.Temperature, h quantity.SpecificEnthalpy, p quantity.Pressure,
) (Air, error) {
	if !m.inRange(dryBulb, p) {
		if err := m.checkReadings("dry bulb", dryBulb, p); err != nil {
			return Air{}, err
		}
	}
	w := m.humidityRatioAtEnthalpy(float64(dryBulb), float64(h), float64(p))
	if !(w >= 0) {
		if !(w > -1e-12) {
			return Air{}, &RangeError{
				Quantity: "enthalpy of moist air",
				Value:    h,
				Min:      quantity.SpecificEnthalpy(m.enthalpy(float64(dryBulb), 0, float64(p))),
				Advice: "that is dry air at this dry bulb; " +
					"the datum is dry air and liquid water at 0 °C",
			}
		}
		w = 0
	}
	return m.FromHumidityRatio(dryBulb, w, p)
}
