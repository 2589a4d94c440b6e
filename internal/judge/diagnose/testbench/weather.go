package testbench

import (
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// A Weather is the air that a machine meets.
type Weather struct {
	Outdoor, ReturnDryBulb, ReturnWetBulb quantity.Temperature
	Atmosphere                            quantity.Pressure
}

// Rated is the weather of test A of AHRI 210/240: 95 °F outdoors, 80/67 °F indoors.
func Rated() Weather {
	return Weather{
		Outdoor:       quantity.Fahrenheit(95),
		ReturnDryBulb: quantity.Fahrenheit(80), ReturnWetBulb: quantity.Fahrenheit(67),
		Atmosphere: quantity.StandardAtmosphere,
	}
}

// A climate is a weather made ready for the coils.
type climate struct {
	Weather
	outdoor, room psychro.Air
	saturated     *saturated
}

// outdoorHumidity is the relative humidity outdoors; a dry outdoor coil hardly minds.
const outdoorHumidity = 0.4

func (w Weather) climate() (*climate, error) {
	c := &climate{Weather: w}
	var err error
	c.room, err = psychro.FromWetBulb(w.ReturnDryBulb, w.ReturnWetBulb, w.Atmosphere)
	if err != nil {
		return nil, err
	}
	c.outdoor, err = psychro.FromRelativeHumidity(w.Outdoor, outdoorHumidity, w.Atmosphere)
	if err != nil {
		return nil, err
	}
	c.saturated, err = newSaturated(w.Atmosphere)
	return c, err
}
