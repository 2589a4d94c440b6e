package diagram

import (
	"math"

	"github.com/satline/satline/internal/picture"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// scales are the numbers of one system of units: what is written, and the steps at
// which lines may be drawn.
type scales struct {
	temperature     func(quantity.Temperature) float64
	fromTemperature func(float64) quantity.Temperature
	delta           func(quantity.TemperatureDelta) float64
	temperatureUnit string

	enthalpy     func(quantity.SpecificEnthalpy) float64
	fromEnthalpy func(float64) quantity.SpecificEnthalpy
	enthalpyUnit string

	entropy     func(quantity.SpecificEntropy) float64
	fromEntropy func(float64) quantity.SpecificEntropy
	entropyUnit string

	density     func(quantity.Density) float64
	densityUnit string

	pressureScale  float64 // pascals of the unit
	pressureOffset float64 // pascals at its zero
	pressureUnit   string
	pressureName   string
}

func scalesOf(o Options) scales {
	s := scales{
		temperature: quantity.Temperature.Fahrenheit, fromTemperature: quantity.Fahrenheit, delta: quantity.TemperatureDelta.FahrenheitDelta, temperatureUnit: "°F",
		enthalpy: quantity.SpecificEnthalpy.BtuPerPound, fromEnthalpy: quantity.BtuPerPound, enthalpyUnit: "Btu/lb",
		entropy: quantity.SpecificEntropy.BtuPerPoundRankine, fromEntropy: quantity.BtuPerPoundRankine, entropyUnit: "Btu/(lb·°R)",
		density: quantity.Density.PoundsPerCubicFoot, densityUnit: "lb/ft³",
		pressureScale: quantity.PSI, pressureUnit: "psi",
	}
	if o.System == quantity.SI {
		s = scales{
			temperature: quantity.Temperature.Celsius, fromTemperature: quantity.Celsius, delta: quantity.TemperatureDelta.KelvinDelta, temperatureUnit: "°C",
			enthalpy: quantity.SpecificEnthalpy.KilojoulesPerKilogram, fromEnthalpy: quantity.KilojoulesPerKilogram, enthalpyUnit: "kJ/kg",
			entropy: quantity.SpecificEntropy.KilojoulesPerKilogramKelvin, fromEntropy: quantity.KilojoulesPerKilogramKelvin, entropyUnit: "kJ/(kg·K)",
			density: quantity.Density.KilogramsPerCubicMeter, densityUnit: "kg/m³",
			pressureScale: 1e3, pressureUnit: "kPa",
		}
	}
	if s.pressureOffset = float64(o.Atmosphere); o.Atmosphere != 0 {
		s.pressureName = "Gauge pressure"
		s.pressureUnit += "g"
	} else {
		s.pressureName = "Absolute pressure"
		if o.System != quantity.SI {
			s.pressureUnit += "a"
		}
	}
	return s
}

func (s scales) pressure(p quantity.Pressure) float64 {
	return (float64(p) - s.pressureOffset) / s.pressureScale
}

func (s scales) fromPressure(v float64) quantity.Pressure {
	return quantity.Pressure(v*s.pressureScale + s.pressureOffset)
}

// pressureTicks are round numbers of the unit, the roundest first taken, that stand
// at least gap apart in the logarithm of the absolute pressure.
func (s scales) pressureTicks(low, high quantity.Pressure, gap float64) (ticks []float64) {
	var places []float64
	try := func(v float64) {
		p := s.fromPressure(v)
		if !(p >= low && p <= high) {
			return
		}
		at := math.Log(float64(p))
		for _, q := range places {
			if math.Abs(at-q) < gap {
				return
			}
		}
		places, ticks = append(places, at), append(ticks, v)
	}
	if s.pressureOffset != 0 {
		try(0)
	}
	least := -2
	if s.pressureOffset != 0 {
		least = 0
	}
	for _, round := range [][]float64{{1}, {2, 5}, {3, 1.5}, {4, 7}, {6, 8}, {1.2, 2.5, 3.5}} {
		for exponent := least; exponent <= 6; exponent++ {
			for _, mantissa := range round {
				v := mantissa * math.Pow10(exponent)
				try(v)
				if s.pressureOffset != 0 {
					try(-v)
				}
			}
		}
	}
	return ticks
}

// tickDigits are those that a tick needs.
func tickDigits(v float64) int {
	for digits := range 3 {
		if picture.Multiple(v, math.Pow10(-digits)) {
			return digits
		}
	}
	return 3
}

// step is the smallest round step that makes at most n of a span.
func step(span float64, n int) float64 {
	for exponent := -6; exponent < 9; exponent++ {
		for _, mantissa := range []float64{1, 2, 2.5, 5} {
			if v := mantissa * math.Pow10(exponent); span/v <= float64(n) {
				return v
			}
		}
	}
	return span
}

// condition says where a state stands to saturation, short and in full.
func (s scales) condition(r *refrigerant.Refrigerant, st refrigerant.State) (short, full string) {
	switch st.Phase {
	case refrigerant.TwoPhase:
		x := picture.Number(100*st.Quality, 0) + " %"
		return "x " + x, "quality " + x
	case refrigerant.Vapor:
		if d, err := r.Superheat(st.Pressure, st.Temperature); err == nil {
			v := picture.Number(s.delta(d), 1)
			return "SH " + v, "superheat " + v + " " + s.deltaUnit()
		}
	case refrigerant.Liquid:
		if d, err := r.Subcooling(st.Pressure, st.Temperature); err == nil {
			v := picture.Number(s.delta(d), 1)
			return "SC " + v, "subcooling " + v + " " + s.deltaUnit()
		}
	}
	return string(st.Phase), string(st.Phase)
}

func (s scales) deltaUnit() string {
	if s.temperatureUnit == "°C" {
		return "K"
	}
	return s.temperatureUnit
}
