package charge

import "github.com/satline/satline/quantity"

// What a doubt comes from: readings, named as the fields of a visit are, and other sources.
const (
	fromSuctionPressure = "suctionPressure"
	fromSuctionLine     = "suctionLine"
	fromLiquidPressure  = "liquidPressure"
	fromLiquidLine      = "liquidLine"
	fromOutdoorDryBulb  = "outdoorDryBulb"
	fromReturnWetBulb   = "returnWetBulb"
	// The pressure that a gauge counts from.
	fromAtmosphere = "atmosphere"
	// The doubt of a saturation temperature at a known pressure, of a refrigerant whose
	// properties are an estimate.
	fromSaturation = "saturationCurve"
	// The doubt stated with a figure of the label, and whether a general one fits this machine.
	fromLabel   = "label"
	fromGeneral = "generalFigure"
	// The scatter of a value over time.
	fromUnsteadiness = "unsteadiness"
)

// A budget is that of a superheat, a subcooling or an approach.
type budget = quantity.Budget[quantity.TemperatureDelta]

// take adds a source by its standard uncertainty and the change of the result per unit of it.
func take(b *budget, from string, std, sensitivity float64) {
	b.Add(from, quantity.TemperatureDelta(std*sensitivity))
}
