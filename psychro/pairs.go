package psychro

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// Air from two readings neither of which is the dry bulb. Wet bulb and enthalpy
// are not among them: lines of constant wet bulb and of constant enthalpy all
// but coincide, so the two together say little. Dew point and humidity ratio
// are one and the same at a given pressure.

// FromWetBulbAndDewPoint returns the air of a wet bulb and a dew point, which is
// never above it.
func FromWetBulbAndDewPoint(
	wetBulb, dewPoint quantity.Temperature, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromWetBulbAndDewPoint(wetBulb, dewPoint, p)
}

// FromWetBulbAndDewPoint is the function FromWetBulbAndDewPoint in model m.
func (m Model) FromWetBulbAndDewPoint(
	wetBulb, dewPoint quantity.Temperature, p quantity.Pressure,
) (Air, error) {
	b, d := float64(wetBulb), float64(dewPoint)
	if err := m.checkReadings("wet bulb", wetBulb, p); err != nil {
		return Air{}, err
	}
	if err := checkTemperature("dew point", d); err != nil {
		return Air{}, err
	}
	if d > b {
		if !(d <= b+roundingK) {
			return Air{}, &RangeError{
				Quantity: "dew point",
				Value:    dewPoint,
				Max:      wetBulb,
				Advice:   "a dew point is never above the wet bulb: are the two readings swapped?",
			}
		}
		d = b
	}
	w, ok := m.saturationHumidityRatio(d, float64(p))
	if !ok {
		return Air{}, m.boils("dew point", d, float64(p))
	}
	return m.fromWetBulbAndHumidityRatio(b, w, float64(p))
}

// FromWetBulbAndHumidityRatio returns the air of a wet bulb and a humidity ratio
// in kilograms of water per kilogram of dry air.
func FromWetBulbAndHumidityRatio(
	wetBulb quantity.Temperature, w float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromWetBulbAndHumidityRatio(wetBulb, w, p)
}

// FromWetBulbAndHumidityRatio is the function FromWetBulbAndHumidityRatio in
// model m.
func (m Model) FromWetBulbAndHumidityRatio(
	wetBulb quantity.Temperature, w float64, p quantity.Pressure,
) (Air, error) {
	if err := m.checkReadings("wet bulb", wetBulb, p); err != nil {
		return Air{}, err
	}
	if err := checkHumidityRatio(w); err != nil {
		return Air{}, err
	}
	return m.fromWetBulbAndHumidityRatio(float64(wetBulb), w, float64(p))
}

func (m Model) fromWetBulbAndHumidityRatio(b, w, p float64) (Air, error) {
	ws, ok := m.saturationHumidityRatio(b, p)
	if !ok {
		return Air{}, m.boils("wet bulb", b, p)
	}
	if w > ws {
		if !(w <= ws*(1+roundingW)) {
			return Air{}, supersaturated("wet bulb", w, ws)
		}
		w = ws
	}
	t := max(b, m.temperatureAtEnthalpy(m.wetBulbBalance(b, w, ws, p), w, p))
	if err := checkTemperature("dry bulb", t); err != nil {
		return Air{}, err
	}
	a, err := m.at(t, w, p)
	return m.withWick(a, b), err
}

// FromWetBulbAndRelativeHumidity returns the air of a wet bulb and a relative
// humidity from 0 to 1.
func FromWetBulbAndRelativeHumidity(
	wetBulb quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromWetBulbAndRelativeHumidity(wetBulb, rh, p)
}

// FromWetBulbAndRelativeHumidity is the function FromWetBulbAndRelativeHumidity
// in model m.
func (m Model) FromWetBulbAndRelativeHumidity(
	wetBulb quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	b, pa := float64(wetBulb), float64(p)
	if err := m.checkReadings("wet bulb", wetBulb, p); err != nil {
		return Air{}, err
	}
	if err := checkRelativeHumidity(rh); err != nil {
		return Air{}, err
	}
	ws, ok := m.saturationHumidityRatio(b, pa)
	if !ok {
		return Air{}, m.boils("wet bulb", b, pa)
	}
	// Warming the air at one relative humidity raises its wet bulb.
	balance := func(t float64) float64 {
		w, ok := m.humidityRatioAtRH(t, rh, pa)
		if !ok || w > 2*maxHumidityRatio {
			return math.Inf(1)
		}
		return m.enthalpy(t, w, pa) - m.wetBulbBalance(b, w, ws, pa)
	}
	if balance(maxTemperature) < 0 {
		return Air{}, outOfReach("wet bulb at this relative humidity", wetBulb)
	}
	t := root.Rising(balance, b, maxTemperature)
	w, ok := m.humidityRatioAtRH(t, rh, pa)
	if !ok {
		return Air{}, m.noAirLeft(t, rh, pa)
	}
	a, err := m.at(t, w, pa)
	return m.withWick(a, b), err
}

// FromDewPointAndRelativeHumidity returns the air of a dew point and a relative
// humidity above 0, up to 1.
func FromDewPointAndRelativeHumidity(
	dewPoint quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromDewPointAndRelativeHumidity(dewPoint, rh, p)
}

// FromDewPointAndRelativeHumidity is the function
// FromDewPointAndRelativeHumidity in model m.
func (m Model) FromDewPointAndRelativeHumidity(
	dewPoint quantity.Temperature, rh float64, p quantity.Pressure,
) (Air, error) {
	if err := m.checkReadings("dew point", dewPoint, p); err != nil {
		return Air{}, err
	}
	w, ok := m.saturationHumidityRatio(float64(dewPoint), float64(p))
	if !ok {
		return Air{}, m.boils("dew point", float64(dewPoint), float64(p))
	}
	return m.FromHumidityRatioAndRelativeHumidity(w, rh, p)
}

// FromHumidityRatioAndRelativeHumidity returns the air of a humidity ratio in
// kilograms of water per kilogram of dry air and a relative humidity, both above
// 0: dry air has one relative humidity at any temperature.
func FromHumidityRatioAndRelativeHumidity(w, rh float64, p quantity.Pressure) (Air, error) {
	return PerfectGas.FromHumidityRatioAndRelativeHumidity(w, rh, p)
}

// FromHumidityRatioAndRelativeHumidity is the function
// FromHumidityRatioAndRelativeHumidity in model m.
func (m Model) FromHumidityRatioAndRelativeHumidity(
	w, rh float64, p quantity.Pressure,
) (Air, error) {
	if err := m.checkPressure(float64(p)); err != nil {
		return Air{}, err
	}
	if err := checkHumidityRatio(w); err != nil {
		return Air{}, err
	}
	if err := checkRelativeHumidity(rh); err != nil {
		return Air{}, err
	}
	if w == 0 || rh == 0 {
		return Air{}, &RangeError{
			Quantity: "relative humidity",
			Value:    quantity.Number(rh),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "of dry air it says nothing about the temperature; give the dry bulb",
		}
	}
	t := m.temperatureAtRH(w, rh, float64(p))
	if err := checkTemperature("dry bulb", t); err != nil {
		return Air{}, err
	}
	return m.at(t, w, float64(p))
}

// FromDewPointAndEnthalpy returns the air of a dew point and an enthalpy per
// kilogram of dry air.
func FromDewPointAndEnthalpy(
	dewPoint quantity.Temperature, h quantity.SpecificEnthalpy, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromDewPointAndEnthalpy(dewPoint, h, p)
}

// FromDewPointAndEnthalpy is the function FromDewPointAndEnthalpy in model m.
func (m Model) FromDewPointAndEnthalpy(
	dewPoint quantity.Temperature, h quantity.SpecificEnthalpy, p quantity.Pressure,
) (Air, error) {
	if err := m.checkReadings("dew point", dewPoint, p); err != nil {
		return Air{}, err
	}
	w, ok := m.saturationHumidityRatio(float64(dewPoint), float64(p))
	if !ok {
		return Air{}, m.boils("dew point", float64(dewPoint), float64(p))
	}
	return m.FromEnthalpyAndHumidityRatio(h, w, p)
}

// FromEnthalpyAndHumidityRatio returns the air of an enthalpy and a humidity
// ratio, both per kilogram of dry air: the pair that balances are made in. More
// water than saturated air of that enthalpy holds is a *RangeError.
func FromEnthalpyAndHumidityRatio(
	h quantity.SpecificEnthalpy, w float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromEnthalpyAndHumidityRatio(h, w, p)
}

// FromEnthalpyAndHumidityRatio is the function FromEnthalpyAndHumidityRatio in
// model m.
func (m Model) FromEnthalpyAndHumidityRatio(
	h quantity.SpecificEnthalpy, w float64, p quantity.Pressure,
) (Air, error) {
	if err := m.checkPressure(float64(p)); err != nil {
		return Air{}, err
	}
	if err := checkHumidityRatio(w); err != nil {
		return Air{}, err
	}
	if err := checkFinite("enthalpy of moist air", h); err != nil {
		return Air{}, err
	}
	t := m.temperatureAtEnthalpy(float64(h), w, float64(p))
	if err := checkTemperature("dry bulb", t); err != nil {
		return Air{}, err
	}
	if ws, ok := m.saturationHumidityRatio(t, float64(p)); ok && !(w <= ws*(1+roundingW)) {
		return Air{}, supersaturated("dry bulb", w, ws)
	}
	return m.at(t, w, float64(p))
}

// FromEnthalpyAndRelativeHumidity returns the air of an enthalpy per kilogram of
// dry air and a relative humidity from 0 to 1.
func FromEnthalpyAndRelativeHumidity(
	h quantity.SpecificEnthalpy, rh float64, p quantity.Pressure,
) (Air, error) {
	return PerfectGas.FromEnthalpyAndRelativeHumidity(h, rh, p)
}

// FromEnthalpyAndRelativeHumidity is the function
// FromEnthalpyAndRelativeHumidity in model m.
func (m Model) FromEnthalpyAndRelativeHumidity(
	h quantity.SpecificEnthalpy, rh float64, p quantity.Pressure,
) (Air, error) {
	pa := float64(p)
	if err := m.checkPressure(pa); err != nil {
		return Air{}, err
	}
	if err := checkRelativeHumidity(rh); err != nil {
		return Air{}, err
	}
	if err := checkFinite("enthalpy of moist air", h); err != nil {
		return Air{}, err
	}
	balance := func(t float64) float64 {
		w, ok := m.humidityRatioAtRH(t, rh, pa)
		if !ok || w > 2*maxHumidityRatio {
			return math.Inf(1)
		}
		return m.enthalpy(t, w, pa) - float64(h)
	}
	if balance(minTemperature) > 0 || balance(maxTemperature) < 0 {
		return Air{}, outOfReach("enthalpy of moist air at this relative humidity", h)
	}
	t := root.Rising(balance, minTemperature, maxTemperature)
	w, ok := m.humidityRatioAtRH(t, rh, pa)
	if !ok {
		return Air{}, m.noAirLeft(t, rh, pa)
	}
	return m.at(t, w, pa)
}

// withIcedWick remembers that the wet bulb that a was made from is of ice, where a
// has another of water.
func (m Model) withIcedWick(a Air) Air {
	a.iced = a.t > m.freezing(a.p) && a.w >= m.driestWetWick(a.t, a.p)
	return a
}

// withWick is withIcedWick where the wet bulb b is of ice.
func (m Model) withWick(a Air, b float64) Air {
	if b < m.freezing(a.p) {
		return m.withIcedWick(a)
	}
	return a
}
