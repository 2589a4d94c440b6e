package psychro

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// RangeError is the error of every value the package refuses.
type RangeError = quantity.RangeError

// The range in which the saturation equations hold, and the pressures at which
// air is breathed or blown.
const (
	minTemperature = 173.15 // K, −100 °C
	maxTemperature = 473.15 // K, 200 °C
	minPressure    = 20e3   // Pa, the standard atmosphere at 11.8 km
	maxPressure    = 200e3  // Pa

	// maxHumidityRatio is steam with 1.6 % of air in it by mass.
	maxHumidityRatio = 60
)

// roundingK is how far a wet bulb or dew point may stand above the dry bulb
// and still be the same temperature, converted twice.
const roundingK = 1e-9

// roundingW is the same for a humidity ratio above saturation, in proportion.
const roundingW = 1e-9

func checkTemperature(name string, t float64) error {
	if t >= minTemperature-roundingK && t <= maxTemperature+roundingK {
		return nil
	}
	advice := "the saturation equations end there"
	if t > 0 && t < minTemperature {
		advice += "; a temperature is in kelvin inside, use quantity.Celsius or quantity.Fahrenheit"
	}
	return &RangeError{
		Quantity: name, Value: quantity.Temperature(t),
		Min: quantity.Temperature(minTemperature), Max: quantity.Temperature(maxTemperature),
		Advice: advice,
	}
}

func (m Model) checkPressure(p float64) error {
	if m > RealGas {
		return &RangeError{
			Quantity: "model of moist air",
			Value:    quantity.Number(m),
			Min:      quantity.Number(PerfectGas),
			Max:      quantity.Number(RealGas),
			Advice:   "take PerfectGas, PerfectGasIAPWS or RealGas",
		}
	}
	if p >= minPressure && p <= maxPressure {
		return nil
	}
	return &RangeError{
		Quantity: "air pressure", Value: quantity.Pressure(p),
		Min: quantity.Pressure(minPressure), Max: quantity.Pressure(maxPressure),
		Advice: "it is the absolute pressure of the air, " +
			"a barometer's or quantity.AtmosphereAt of the elevation, not a gauge pressure",
	}
}

func checkHumidityRatio(w float64) error {
	if w >= 0 && w <= maxHumidityRatio {
		return nil
	}
	return &RangeError{
		Quantity: "humidity ratio", Value: quantity.Number(w), Min: quantity.Number(0),
		Max:    quantity.Number(maxHumidityRatio),
		Advice: "it is kilograms of water per kilogram of dry air; one grain per pound is 1/7000",
	}
}

func checkRelativeHumidity(rh float64) error {
	if rh >= 0 && rh <= 1 {
		return nil
	}
	return &RangeError{
		Quantity: "relative humidity", Value: quantity.Number(rh), Min: quantity.Number(0),
		Max:    quantity.Number(1),
		Advice: "it is a ratio: 50 % is 0.5",
	}
}

// aboveDryBulb is the error of a wet bulb or dew point above the dry bulb.
func aboveDryBulb(name string, t, dryBulb float64, advice string) error {
	return &RangeError{
		Quantity: name, Value: quantity.Temperature(t), Max: quantity.Temperature(dryBulb),
		Advice: advice,
	}
}

// boils is the error of saturation at a temperature where water boils at p.
func (m Model) boils(name string, t, p float64) error {
	return &RangeError{
		Quantity: name, Value: quantity.Temperature(t),
		Max:    quantity.Temperature(m.boundary().temperatureAt(p)),
		Advice: "water boils there at this pressure, and nothing is left of the air",
	}
}

// supersaturated is the error of more water than air can hold as vapor.
func supersaturated(at string, w, ws float64) error {
	return &RangeError{
		Quantity: "humidity ratio", Value: quantity.Number(w), Min: quantity.Number(0),
		Max:    quantity.Number(ws),
		Advice: "that is saturated air at this " + at + "; the rest is fog or dew",
	}
}

// tooDry is the error of a wet bulb below that of dry air.
func (m Model) tooDry(wetBulb, t, p float64) error {
	lowest := m.wetBulb(t, 0, p, false)
	advice := "that is the wet bulb of perfectly dry air at this dry bulb"
	if freezing := m.freezing(p); wetBulb >= freezing && lowest < freezing {
		// Dry air would freeze the wick; while it is wet it stands higher.
		h := m.enthalpy(t, 0, p)
		lowest = root.Rising(func(b float64) float64 {
			ws, _ := m.saturationHumidityRatio(b, p)
			return m.wetBulbBalance(b, 0, ws, p) - h
		}, freezing, t)
		advice += " with a wet wick; an iced one stands below 0 °C"
	}
	return &RangeError{
		Quantity: "wet bulb", Value: quantity.Temperature(wetBulb),
		Min: quantity.Temperature(lowest), Max: quantity.Temperature(t), Advice: advice,
	}
}

// noAirLeft is the error of a relative humidity above what the pressure allows
// in air hotter than boiling water.
func (m Model) noAirLeft(t, rh, p float64) error {
	return &RangeError{
		Quantity: "relative humidity", Value: quantity.Number(rh), Min: quantity.Number(0),
		Max:    quantity.Number(p / m.boundary().pressure.at(t)),
		Advice: "above the boiling point at this pressure that is pure steam",
	}
}

// inRange is checkReadings for the case that nothing is wrong.
func (m Model) inRange(t quantity.Temperature, p quantity.Pressure) bool {
	return t >= minTemperature && t <= maxTemperature && p >= minPressure && p <= maxPressure &&
		m <= RealGas
}

// checkReadings refuses a temperature or a pressure outside the range.
func (m Model) checkReadings(name string, t quantity.Temperature, p quantity.Pressure) error {
	if m.inRange(t, p) {
		return nil
	}
	if err := checkTemperature(name, float64(t)); err != nil {
		return err
	}
	return m.checkPressure(float64(p))
}

func checkFinite(name string, h quantity.SpecificEnthalpy) error {
	if v := float64(h); math.IsNaN(v) || math.IsInf(v, 0) {
		return &RangeError{Quantity: name, Value: h, Advice: "it is not a number"}
	}
	return nil
}

// outOfReach is the error of a pair that no air within the package's range has.
func outOfReach(name string, value fmt.Stringer) error {
	return &RangeError{Quantity: name, Value: value, Advice: "no air from −100 to 200 °C has it"}
}
