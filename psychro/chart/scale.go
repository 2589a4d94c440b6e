package chart

import (
	"math"
	"strconv"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// scales are the numbers of one system of units: what is written, and at which
// steps lines are drawn. Steps come in pairs, for a full page and a sparse one.
type scales struct {
	low, high quantity.Temperature
	wettest   float64 // kg/kg

	dryBulb                    quantity.Unit[quantity.Temperature]
	dryBulbMajor, dryBulbMinor float64

	perWater               float64 // of the number shown, per kg/kg
	waterUnit              string
	waterMajor, waterMinor float64

	wetBulbMajor [2]float64
	wetBulbMinor float64

	volume       quantity.Unit[quantity.SpecificVolume]
	volumeStep   [2]float64
	volumeDigits int // of its lines; a state has one more

	enthalpy                     func(psychro.Air) float64
	enthalpyUnit                 quantity.Unit[quantity.SpecificEnthalpy]
	enthalpyMajor, enthalpyMinor float64
}

func scalesOf(sys quantity.System) scales {
	s := scales{
		low: quantity.Fahrenheit(30), high: quantity.Fahrenheit(120), wettest: 0.030,
		dryBulbMajor: 10, dryBulbMinor: 2,
		perWater: 7000, waterUnit: "gr/lb", waterMajor: 20, waterMinor: 10,
		wetBulbMajor: [2]float64{5, 10}, wetBulbMinor: 1,
		volumeStep: [2]float64{0.5, 1}, volumeDigits: 1,
		enthalpy:      func(a psychro.Air) float64 { return a.EnthalpyIP().BtuPerPound() },
		enthalpyMajor: 5, enthalpyMinor: 1,
	}
	if sys == quantity.SI {
		s = scales{
			low: quantity.Celsius(0), high: quantity.Celsius(50), wettest: 0.030,
			dryBulbMajor: 5, dryBulbMinor: 1,
			perWater: 1000, waterUnit: "g/kg", waterMajor: 5, waterMinor: 1,
			wetBulbMajor: [2]float64{5, 5}, wetBulbMinor: 1,
			volumeStep: [2]float64{0.02, 0.05}, volumeDigits: 2,
			enthalpy: func(a psychro.Air) float64 {
				return a.Enthalpy().KilojoulesPerKilogram()
			},
			enthalpyMajor: 10, enthalpyMinor: 5,
		}
	}
	s.dryBulb = quantity.UnitOf[quantity.Temperature](sys)
	s.volume = quantity.UnitOf[quantity.SpecificVolume](sys)
	s.enthalpyUnit = quantity.UnitOf[quantity.SpecificEnthalpy](sys)
	return s
}

// elevation is written in whole feet or meters, with the thousands set off.
func elevation(z quantity.Length, sys quantity.System) string {
	v, unit := z.Feet(), "ft"
	if sys == quantity.SI {
		v, unit = z.Meters(), "m"
	}
	s := strconv.FormatFloat(v, 'f', 0, 64)
	if n := len(s); math.Abs(v) >= 999.5 {
		s = s[:n-3] + "," + s[n-3:]
	}
	return s + " " + unit
}
