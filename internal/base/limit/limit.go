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
