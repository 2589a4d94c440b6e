package airside

import (
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// Factors are the multipliers of the trade for air of one density: 1.08, 0.68
// and 4.5 for standard air, less at altitude or in warm air.
type Factors struct {
	// Sensible is Btu/h per CFM and °F of temperature change.
	Sensible float64 `json:"sensible"`
	// Latent is Btu/h per CFM and grain of water per pound of dry air.
	Latent float64 `json:"latent"`
	// Total is lb/h of dry air per CFM: Btu/h per CFM and Btu/lb of enthalpy
	// change.
	Total float64 `json:"total"`
}

// StandardAir is the air that rated airflows are stated for, 0.075 lb/ft³: dry
// air at 70 °F and sea level (ASHRAE Handbook Fundamentals, chapter 1; from
// memory).
func StandardAir() psychro.Air {
	a, _ := psychro.FromHumidityRatio(quantity.Fahrenheit(70), 0, quantity.StandardAtmosphere)
	return a
}

// FactorsOf returns the factors for a flow of a, where the flow is counted at
// the condition of a itself. The error is a *RangeError where a is not air.
//
// Latent is counted from vapor at the temperature of a to liquid water at the
// same temperature, which is where the 0.68 comes from; with the condensate at
// the temperature of a coil it is 2 to 3 % more.
func FactorsOf(a psychro.Air) (Factors, error) {
	const (
		grainsPerPound    = 7000
		secondsPerHour    = 3600
		temperatureStep   = 1.0  // K
		humidityRatioStep = 1e-3 // kg/kg
	)
	if err := checkPair(a, a); err != nil {
		return Factors{}, err
	}
	m := float64(a.DryAirFlow(quantity.CFM(1)))
	p, t, w := a.Pressure(), a.DryBulb(), a.HumidityRatio()
	warmer, err := a.Model().FromHumidityRatio(t+temperatureStep, w, p)
	if err != nil {
		return Factors{}, err
	}
	wetter, err := a.Model().FromHumidityRatio(t+temperatureStep, w+humidityRatioStep, p)
	if err != nil {
		return Factors{}, err
	}
	liquid, err := psychro.LiquidEnthalpy(max(t, quantity.Celsius(0)), p)
	if err != nil {
		return Factors{}, err
	}
	sensible := m * float64(warmer.Enthalpy()-a.Enthalpy()) / temperatureStep
	latent := m * (float64(wetter.Enthalpy()-warmer.Enthalpy())/humidityRatioStep - float64(liquid))
	return Factors{
		Sensible: quantity.Watts(sensible).BtuPerHour() * 5 / 9,
		Latent:   quantity.Watts(latent).BtuPerHour() / grainsPerPound,
		Total:    m / quantity.Pound * secondsPerHour,
	}, nil
}
