package cycle

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// RangeError is quantity.RangeError: the value, the valid range, what to do.
type RangeError = quantity.RangeError

// within returns a *RangeError unless v lies from low to high.
func within[T interface {
	~float64
	fmt.Stringer
}](name string, v, low, high T, advice string) error {
	if v >= low && v <= high && !math.IsNaN(float64(v)) {
		return nil
	}
	return &RangeError{Quantity: name, Value: v, Min: low, Max: high, Advice: advice}
}
