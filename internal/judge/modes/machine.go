package modes

import (
	"errors"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// OfComfort says that the targets and the models of comfort cooling can hold for a
// refrigerant.
func OfComfort(fluid *refrigerant.Refrigerant) bool {
	var unsuitable *refrigerant.UnsuitableError
	return !errors.As(fluid.ComfortCooling(), &unsuitable)
}

// FullAirflow is the rated one, or 400 CFM a ton (common practice, no source); zero where the
// capacity is not known either.
func FullAirflow(rated quantity.VolumeFlow, capacity quantity.Power) quantity.VolumeFlow {
	if rated > 0 {
		return rated
	}
	return quantity.CFM(400 * capacity.Tons())
}

// MethodReadings are the readings that a method compares with its target.
func MethodReadings(m charge.Method) []string { return methodReadings[m] }

var methodReadings = map[charge.Method][]string{
	charge.Superheat:  {"suctionPressure", "suctionLine", "returnWetBulb", "outdoorDryBulb"},
	charge.Subcooling: {"liquidPressure", "liquidLine"},
	charge.Approach:   {"liquidLine", "outdoorDryBulb"},
}
