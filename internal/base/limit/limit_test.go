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

// An uncertainty is told in a unit of differences, and what is none is refused.
func TestReading(t *testing.T) {
	low, high := quantity.Celsius(10), quantity.Celsius(40)
	for _, std := range []float64{0, 0.5, 30} {
		u := quantity.Uncertain[quantity.Temperature]{Value: high, Std: std}
		if err := limit.Reading("air", u, low, high, ""); err != nil {
			t.Errorf("±%g K: %v", std, err)
		}
	}
	for _, std := range []float64{-1, 31, math.NaN(), math.Inf(1)} {
		u := quantity.Uncertain[quantity.Temperature]{Value: high, Std: std}
		out, ok := errors.AsType[*quantity.RangeError](limit.Reading("air", u, low, high, ""))
		if !ok {
			t.Errorf("±%g K is taken", std)
			continue
		}
		if _, ok := out.Value.(quantity.TemperatureDelta); !ok {
			t.Errorf("±%g K is told as %T", std, out.Value)
		}
	}
}
