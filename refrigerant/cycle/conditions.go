package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// Conditions are what a machine meets.
type Conditions struct {
	// OutdoorDryBulb is the air entering the condenser: 40 to 125 °F.
	OutdoorDryBulb quantity.Temperature `json:"outdoorDryBulb"`
	// ReturnDryBulb and ReturnWetBulb are the air entering the evaporator: dry bulb 55
	// to 110 °F, wet bulb 45 °F to the dry bulb.
	ReturnDryBulb quantity.Temperature `json:"returnDryBulb"`
	ReturnWetBulb quantity.Temperature `json:"returnWetBulb"`
	// Airflow through the evaporator, at the condition of the entering air; 0 is the
	// rated airflow of the machine.
	Airflow quantity.VolumeFlow `json:"airflow,omitzero"`
	// Elevation of the site above sea level.
	Elevation quantity.Length `json:"elevation,omitzero"`
}

// RatingConditions returns those of the rating test for cooling, AHRI 210/240 test A:
// 95 °F outdoors, 80 °F dry bulb and 67 °F wet bulb indoors, at sea level.
func RatingConditions() Conditions {
	return Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(95),
		ReturnDryBulb:  quantity.Fahrenheit(80),
		ReturnWetBulb:  quantity.Fahrenheit(67),
	}
}

// check lets in 5 °F more on every side than Conditions states, and a little more of wet
// bulb: a fit moves the air temperatures by up to 3 K.
func (c Conditions) check() error {
	const advice = "the model is of an air conditioner in cooling"
	if err := limit.Within(
		"outdoor dry bulb", c.OutdoorDryBulb, quantity.Fahrenheit(35), quantity.Fahrenheit(130),
		advice,
	); err != nil {
		return err
	}
	if err := limit.Within(
		"return dry bulb", c.ReturnDryBulb, quantity.Fahrenheit(50), quantity.Fahrenheit(115),
		advice,
	); err != nil {
		return err
	}
	if err := limit.Within(
		"return wet bulb", c.ReturnWetBulb, quantity.Fahrenheit(38), quantity.Fahrenheit(90),
		advice,
	); err != nil {
		return err
	}
	return limit.Within(
		"elevation", c.Elevation, quantity.Feet(-1500), quantity.Feet(16000),
		"feet or meters above sea level",
	)
}

// air returns the return air.
func (c Conditions) air() (psychro.Air, error) {
	return psychro.FromWetBulb(c.ReturnDryBulb, c.ReturnWetBulb, quantity.AtmosphereAt(c.Elevation))
}
