package cycle

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// RangeError is quantity.RangeError: the value, the valid range, what to do.
type RangeError = quantity.RangeError

// rounding is how far, relative, a value may lie beyond a limit: 10 °C is 50 °F, but
// for the last digit of the conversion.
const rounding = 1e-12

// within returns a *RangeError unless v lies from low to high.
func within[T interface {
	~float64
	fmt.Stringer
}](name string, v, low, high T, advice string) error {
	slack := func(limit T) T { return T(rounding * math.Abs(float64(limit))) }
	if v >= low-slack(low) && v <= high+slack(high) {
		return nil
	}
	return &RangeError{Quantity: name, Value: v, Min: low, Max: high, Advice: advice}
}

// readable refuses a reading, or its uncertainty, that no instrument has. One that
// was not taken is nil.
func readable[T interface {
	~float64
	fmt.Stringer
	quantity.Quantity
}](name string, u *quantity.Uncertain[T], low, high T, advice string) error {
	if u == nil {
		return nil
	}
	if err := within(name, u.Value, low, high, advice); err != nil {
		return err
	}
	return within("standard uncertainty of the "+name, quantity.Number(u.Std), 0, quantity.Number(max(high, -high)), "one standard deviation, in the SI unit of the reading")
}
