package airside

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// AirAt is the air at the place where a flow is counted.
type AirAt struct {
	DryBulb quantity.Uncertain[quantity.Temperature] `json:"dryBulb"`
	// WetBulb may be left out (zero): the humidity ratio is then taken as that
	// of an ordinary room, 7 ± 4 g/kg (common practice, no source), and counted
	// in the uncertainty. It moves the density by a quarter of a percent.
	WetBulb quantity.Uncertain[quantity.Temperature] `json:"wetBulb,omitzero"`
	// Atmosphere is a barometer's reading, or quantity.AtmosphereAt of the
	// elevation with some 800 Pa for the weather.
	Atmosphere quantity.Uncertain[quantity.Pressure] `json:"atmosphere"`
}

const (
	roomHumidityRatio    = 0.007
	roomHumidityRatioStd = 0.004
)

func (a *AirAt) check(name string) error {
	if err := airTemperature(name+" dry bulb", a.DryBulb); err != nil {
		return err
	}
	if a.hasWetBulb() {
		if err := airTemperature(name+" wet bulb", a.WetBulb); err != nil {
			return err
		}
	}
	return checkAtmosphere(a.Atmosphere)
}

func (a *AirAt) hasWetBulb() bool { return a.WetBulb.Value != 0 }

// inputs puts the three readings of a in the first places.
func (a *AirAt) inputs(x, std *inputs, names *[maxInputs]string) {
	x[0], std[0], names[0] = float64(a.DryBulb.Value), a.DryBulb.Std, "dryBulb"
	if a.hasWetBulb() {
		x[1], std[1], names[1] = float64(a.WetBulb.Value), a.WetBulb.Std, "wetBulb"
	} else {
		x[1], std[1], names[1] = roomHumidityRatio, roomHumidityRatioStd, "humidity"
	}
	x[2], std[2], names[2] = float64(a.Atmosphere.Value), a.Atmosphere.Std, "atmosphere"
}

// state is the air of readings laid out by inputs.
func (a *AirAt) state(x *inputs) (psychro.Air, error) {
	if a.hasWetBulb() {
		return readAir(
			x[0], x[1], math.Hypot(a.DryBulb.Std, a.WetBulb.Std), quantity.Pressure(x[2]),
		)
	}
	t, p := quantity.Temperature(x[0]), quantity.Pressure(x[2])
	most, err := psychro.Saturated(t, p)
	if err != nil {
		return most, err
	}
	return psychro.FromHumidityRatio(t, min(x[1], most.HumidityRatio()), p)
}
