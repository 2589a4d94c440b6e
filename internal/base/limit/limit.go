// Package limit refuses values that lie outside a range.
package limit

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// rounding is how far, relative, a value may lie beyond a limit: 10 °C is 50 °F, but
// for the last digit of the conversion.
const rounding = 1e-12

// Within returns a *quantity.RangeError unless v lies from low to high; what is no number
// does not.
func Within[T interface {
	~float64
	fmt.Stringer
}](name string, v, low, high T, advice string) error {
	slack := func(limit T) T { return T(rounding * math.Abs(float64(limit))) }
	if v >= low-slack(low) && v <= high+slack(high) {
		return nil
	}
	return &quantity.RangeError{Quantity: name, Value: v, Min: low, Max: high, Advice: advice}
}

// Reading returns a *quantity.RangeError unless the value of u lies from low to high, and its
// standard uncertainty from zero to as wide as they are apart.
func Reading[T quantity.Quantity](
	name string, u quantity.Uncertain[T], low, high T, advice string,
) error {
	if err := Within(name, u.Value, low, high, advice); err != nil {
		return err
	}
	return std(name, u, float64(high-low))
}

// std returns a *quantity.RangeError unless the standard uncertainty of u lies from zero to most,
// in the SI unit.
func std[T quantity.Quantity](name string, u quantity.Uncertain[T], most float64) error {
	if u.Std >= 0 && u.Std <= most {
		return nil
	}
	return &quantity.RangeError{
		Quantity: "standard uncertainty of the " + name,
		Value:    Spread[T](u.Std), Min: Spread[T](0), Max: Spread[T](most),
		Advice: "give one standard deviation, as the PlusMinus methods do, or none",
	}
}

// Spread is a standard uncertainty of a T, in the SI unit, as a quantity of its own: that of a
// point on a scale is a difference.
func Spread[T quantity.Quantity](std float64) fmt.Stringer {
	switch any(T(0)).(type) {
	case quantity.Temperature:
		return quantity.TemperatureDelta(std)
	case quantity.GaugePressure:
		return quantity.Pressure(std)
	}
	return T(std)
}
