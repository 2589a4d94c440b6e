package api

import (
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// An AirQuestion asks for the state of moist air from its dry bulb and exactly
// one of wet bulb, dew point, relative humidity and humidity ratio.
type AirQuestion struct {
	DryBulb  quantity.Temperature  `json:"dryBulb"`
	WetBulb  *quantity.Temperature `json:"wetBulb,omitempty"`
	DewPoint *quantity.Temperature `json:"dewPoint,omitempty"`
	// RelativeHumidity from 0 to 1.
	RelativeHumidity *float64 `json:"relativeHumidity,omitempty"`
	// HumidityRatio in kilograms of water per kilogram of dry air.
	HumidityRatio *float64 `json:"humidityRatio,omitempty"`
	// RealGas asks for the virial model of ASHRAE RP-1485 in place of perfect
	// gases.
	RealGas bool `json:"realGas,omitempty"`
	At
}

// An AirAnswer is the state of moist air. Enthalpy, volume and humidity ratio
// are per kilogram of dry air.
type AirAnswer struct {
	Pressure quantity.Pressure    `json:"pressure"`
	DryBulb  quantity.Temperature `json:"dryBulb"`
	WetBulb  quantity.Temperature `json:"wetBulb"`
	// WetBulbIced says that the wet bulb is that of an iced wick.
	WetBulbIced bool                 `json:"wetBulbIced,omitempty"`
	DewPoint    quantity.Temperature `json:"dewPoint"`
	// RelativeHumidity from 0 to 1.
	RelativeHumidity float64 `json:"relativeHumidity"`
	// HumidityRatio in kilograms of water per kilogram of dry air.
	HumidityRatio float64 `json:"humidityRatio"`
	// Enthalpy is zero for dry air and for liquid water at 0 °C.
	Enthalpy quantity.SpecificEnthalpy `json:"enthalpy"`
	// SpecificVolume of moist air per kilogram of dry air.
	SpecificVolume quantity.SpecificVolume `json:"specificVolume"`
	// Density of the moist air itself.
	Density       quantity.Density  `json:"density"`
	VaporPressure quantity.Pressure `json:"vaporPressure"`
}

// Air answers an AirQuestion. The error is a *QuestionError or that of package
// psychro.
func Air(q AirQuestion) (AirAnswer, error) {
	p, err := q.atmosphere()
	if err != nil {
		return AirAnswer{}, err
	}
	a, err := airOf(q, p)
	if err != nil {
		return AirAnswer{}, err
	}
	return AirAnswer{
		Pressure: a.Pressure(), DryBulb: a.DryBulb(), WetBulb: a.WetBulb(),
		WetBulbIced: a.WetBulbIced(), DewPoint: a.DewPoint(),
		RelativeHumidity: a.RelativeHumidity(), HumidityRatio: a.HumidityRatio(),
		Enthalpy:       a.Enthalpy(),
		SpecificVolume: a.SpecificVolume(), Density: a.Density(), VaporPressure: a.VaporPressure(),
	}, nil
}

func airOf(q AirQuestion, p quantity.Pressure) (psychro.Air, error) {
	model := psychro.PerfectGas
	if q.RealGas {
		model = psychro.RealGas
	}
	switch {
	case !one(q.WetBulb != nil, q.DewPoint != nil, q.RelativeHumidity != nil,
		q.HumidityRatio != nil):
		return psychro.Air{}, &QuestionError{"wetBulb",
			"give exactly one of wetBulb, dewPoint, relativeHumidity and humidityRatio"}
	case q.WetBulb != nil:
		return model.FromWetBulb(q.DryBulb, *q.WetBulb, p)
	case q.DewPoint != nil:
		return model.FromDewPoint(q.DryBulb, *q.DewPoint, p)
	case q.RelativeHumidity != nil:
		return model.FromRelativeHumidity(q.DryBulb, *q.RelativeHumidity, p)
	}
	return model.FromHumidityRatio(q.DryBulb, *q.HumidityRatio, p)
}
