package refrigerant

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// A refrigerant fits its own pressure, whatever else does.
func TestStandingPressureFindsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		temp := quantity.Celsius(rapid.Float64Range(4, 12).Draw(t, "°C"))
		bubble, err := r.BubblePressure(temp)
		if err != nil {
			t.Skip("not saturated there")
		}
		dew, err := r.DewPressure(temp)
		if err != nil {
			t.Fatal(err)
		}
		p := dew + quantity.Pressure(rapid.Float64Range(0, 1).Draw(t, "between"))*(bubble-dew)
		fits, err := StandingPressure(p, temp, quantity.KelvinDelta(1))
		if err != nil {
			t.Fatal(err)
		}
		last := 0.0
		found := false
		for _, f := range fits {
			off := math.Abs(float64(f.Off))
			if off < last || f.Fits != (off <= 1) {
				t.Fatalf("%v: %+v after %v", f.Refrigerant, f, last)
			}
			last = off
			if f.Refrigerant == r {
				found = true
				if !f.Fits {
					t.Errorf("%v does not fit its own pressure: %+v", r, f)
				}
			}
		}
		if !found {
			t.Errorf("%v is not among the fits", r)
		}
	})
}

// Air in the unit shows as its partial pressure.
func TestStandingPressureNonCondensables(t *testing.T) {
	r := mustLookup(t, "R-22")
	temp := quantity.Fahrenheit(80)
	p, err := r.BubblePressure(temp)
	if err != nil {
		t.Fatal(err)
	}
	fits, err := StandingPressure(p+quantity.PSIA(20), temp, quantity.FahrenheitDelta(2), r)
	if err != nil || len(fits) != 1 || fits[0].Fits || math.Abs(fits[0].Over.PSIA()-20) > 1e-6 ||
		fits[0].Off <= 0 {
		t.Errorf("%+v, %v", fits, err)
	}
	low, err := StandingPressure(p/2, temp, quantity.FahrenheitDelta(2), r)
	if err != nil || len(low) != 1 || low[0].Fits || low[0].Over >= 0 || low[0].Off >= 0 {
		t.Errorf("%+v, %v", low, err)
	}
	var out *RangeError
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := StandingPressure(quantity.Pressure(bad), temp, 1, r); !errors.As(err, &out) {
			t.Errorf("pressure %v: %v", bad, err)
		}
		if _, err := StandingPressure(p, quantity.Temperature(bad), 1, r); !errors.As(err, &out) {
			t.Errorf("temperature %v: %v", bad, err)
		}
	}
}

// No reading makes a panic, a hang or a NaN.
func FuzzStandingPressure(f *testing.F) {
	f.Add(1e6, 297.0, 1.0)
	f.Add(math.Inf(1), math.NaN(), -1.0)
	f.Add(5e-324, 1e300, math.Inf(1))
	f.Fuzz(func(t *testing.T, p, temp, tolerance float64) {
		fits, err := StandingPressure(
			quantity.Pressure(p), quantity.Temperature(temp), quantity.TemperatureDelta(tolerance),
		)
		if err != nil {
			return
		}
		for _, fit := range fits {
			for _, v := range []float64{float64(fit.Dew), float64(fit.Bubble), float64(fit.Over),
				float64(fit.Off)} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%v at %v Pa, %v K: %+v", fit.Refrigerant, p, temp, fit)
				}
			}
		}
	})
}
