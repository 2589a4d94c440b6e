package chart

import (
	"math"

	"github.com/satline/satline/internal/picture"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// scales are the numbers of one system of units: what is written, and at which
// steps lines are drawn. Steps come in pairs, for a full page and a sparse one.
type scales struct {
	low, high quantity.Temperature
	wettest   float64 // kg/kg

	dryBulb                    func(quantity.Temperature) float64
	fromDryBulb                func(float64) quantity.Temperature
	temperatureUnit            string
	dryBulbMajor, dryBulbMinor float64

	perWater               float64 // of the number shown, per kg/kg
	waterUnit, waterShort  string
	waterMajor, waterMinor float64

	wetBulbMajor [2]float64
	wetBulbMinor float64

	volume                  func(quantity.SpecificVolume) float64
	fromVolume              func(float64) quantity.SpecificVolume
	volumeUnit, volumeShort string
	volumeStep              [2]float64
	volumeDigits            int // of its lines; a state has one more

	enthalpy                     func(psychro.Air) float64
	enthalpyUnit, enthalpyShort  string
	enthalpyMajor, enthalpyMinor float64
}

func scalesOf(sys quantity.System) scales {
	if sys == quantity.SI {
		return scales{
			low: quantity.Celsius(0), high: quantity.Celsius(50), wettest: 0.030,
			dryBulb: quantity.Temperature.Celsius, fromDryBulb: quantity.Celsius, temperatureUnit: "°C",
			dryBulbMajor: 5, dryBulbMinor: 1,
			perWater: 1000, waterUnit: "g/kg dry air", waterShort: "g/kg", waterMajor: 5, waterMinor: 1,
			wetBulbMajor: [2]float64{5, 5}, wetBulbMinor: 1,
			volume: quantity.SpecificVolume.CubicMetersPerKilogram, fromVolume: quantity.CubicMetersPerKilogram, volumeUnit: "m³/kg dry air", volumeShort: "m³/kg",
			volumeStep: [2]float64{0.02, 0.05}, volumeDigits: 2,
			enthalpy:     func(a psychro.Air) float64 { return a.Enthalpy().KilojoulesPerKilogram() },
			enthalpyUnit: "kJ/kg dry air", enthalpyShort: "kJ/kg", enthalpyMajor: 10, enthalpyMinor: 5,
		}
	}
	return scales{
		low: quantity.Fahrenheit(30), high: quantity.Fahrenheit(120), wettest: 0.030,
		dryBulb: quantity.Temperature.Fahrenheit, fromDryBulb: quantity.Fahrenheit, temperatureUnit: "°F",
		dryBulbMajor: 10, dryBulbMinor: 2,
		perWater: 7000, waterUnit: "grains/lb dry air", waterShort: "gr/lb", waterMajor: 20, waterMinor: 10,
		wetBulbMajor: [2]float64{5, 10}, wetBulbMinor: 1,
		volume: quantity.SpecificVolume.CubicFeetPerPound, fromVolume: quantity.CubicFeetPerPound, volumeUnit: "ft³/lb dry air", volumeShort: "ft³/lb",
		volumeStep: [2]float64{0.5, 1}, volumeDigits: 1,
		enthalpy:     func(a psychro.Air) float64 { return a.EnthalpyIP().BtuPerPound() },
		enthalpyUnit: "Btu/lb dry air", enthalpyShort: "Btu/lb", enthalpyMajor: 5, enthalpyMinor: 1,
	}
}

// elevation is written in whole feet or meters, with the thousands set off.
func elevation(z quantity.Length, sys quantity.System) string {
	v, unit := z.Feet(), "ft"
	if sys == quantity.SI {
		v, unit = z.Meters(), "m"
	}
	s := picture.Number(v, 0)
	if n := len(s); math.Abs(v) >= 999.5 {
		s = s[:n-3] + "," + s[n-3:]
	}
	return s + " " + unit
}
