package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RangeError is the error of every value the package refuses.
type RangeError = quantity.RangeError

// readable refuses a reading that is out of range or whose uncertainty is no
// uncertainty.
func readable[T quantity.Quantity](
	name string, u quantity.Uncertain[T], low, high T, advice string,
) error {
	if err := limit.Within(name, u.Value, low, high, advice); err != nil {
		return err
	}
	if span := float64(high - low); !(u.Std >= 0 && u.Std <= span) {
		return &RangeError{
			Quantity: "standard uncertainty of " + name,
			Value:    quantity.Number(u.Std),
			Min:      quantity.Number(0),
			Max:      quantity.Number(span),
			Advice: "state it in the SI unit of the reading, as the PlusMinus methods do, " +
				"or leave it zero",
		}
	}
	return nil
}

// Air conditioners breathe air within these limits; they are wide.
const (
	coldestAir = quantity.Temperature(233.15) // −40 °C
	hottestAir = quantity.Temperature(373.15) // 100 °C

	largestFlow = quantity.VolumeFlow(1000) // m³/s, far above any one unit
)

func airTemperature(name string, u quantity.Uncertain[quantity.Temperature]) error {
	return readable(
		name, u, coldestAir, hottestAir,
		"is it an air temperature, and in the unit it was read in?",
	)
}
