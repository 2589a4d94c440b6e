package limit_test

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// A limit may be met by a conversion that rounds; infinite limits bound nothing.
func TestWithin(t *testing.T) {
	low, high := quantity.Celsius(10), quantity.Celsius(40)
	for _, v := range []quantity.Temperature{low, high, quantity.Fahrenheit(50),
		quantity.Fahrenheit(104)} {
		if err := limit.Within("air", v, low, high, "look"); err != nil {
			t.Errorf("%v: %v", float64(v), err)
		}
	}
	for _, v := range []quantity.Temperature{low - 1e-6, high + 1e-6,
		quantity.Temperature(math.NaN()), quantity.Temperature(math.Inf(1))} {
		var out *quantity.RangeError
		if err := limit.Within("air", v, low, high, "look"); !errors.As(err, &out) ||
			out.Advice != "look" {
			t.Errorf("%v: %v", float64(v), err)
		}
	}
}
