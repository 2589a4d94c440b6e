package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RangeError is the error of every value the package refuses.
type RangeError = quantity.RangeError

// Air conditioners breathe air within these limits; they are wide.
const (
	coldestAir = quantity.Temperature(233.15) // −40 °C
	hottestAir = quantity.Temperature(373.15) // 100 °C

	largestFlow = quantity.VolumeFlow(1000) // m³/s, far above any one unit
)

func airTemperature(name string, u quantity.Uncertain[quantity.Temperature]) error {
	return limit.Reading(
		name, u, coldestAir, hottestAir,
		"is it an air temperature, and in the unit it was read in?",
	)
}
