package psychro_test

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// The range the package promises: −60 to 90 °C, 50 to 110 kPa, dry to saturated.
var (
	drawDryBulb = rapid.Custom(func(t *rapid.T) quantity.Temperature {
		return quantity.Celsius(rapid.Float64Range(-60, 90).Draw(t, "°C"))
	})
	drawPressure = rapid.Custom(func(t *rapid.T) quantity.Pressure {
		return quantity.Kilopascals(rapid.Float64Range(50, 110).Draw(t, "kPa"))
	})
	drawRH = rapid.OneOf(
		rapid.Float64Range(0, 1), rapid.Float64Range(0, 1e-3), rapid.SampledFrom([]float64{0, 1}),
	)
)

// drawAir draws any state of the range. In air hotter than boiling water the
// humidity is cut to leave some air.
func drawAir(t *rapid.T, m psychro.Model) psychro.Air {
	db, p, rh := drawDryBulb.Draw(t, "dry bulb"), drawPressure.Draw(t, "p"), drawRH.Draw(t, "rh")
	a, err := m.FromRelativeHumidity(db, rh, p)
	for err != nil {
		var re *psychro.RangeError
		if !errors.As(err, &re) {
			t.Fatalf("error %v is no *RangeError", err)
		}
		if rh *= 0.9; rh < 0.1 {
			t.Fatalf("%v %v: %v", db, p, err)
		}
		a, err = m.FromRelativeHumidity(db, rh, p)
	}
	return a
}

func near(t *rapid.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Fatalf("%s: %.17g, want %.17g (off by %.3g)", what, got, want, got-want)
	}
}

// sameAir wants the humidity ratio to 1 part in 10⁹. Near dryness a temperature
// has no digits left to tell humidity ratios apart, so 1e-14 is let off.
func sameAir(t *rapid.T, what string, a psychro.Air, err error, want psychro.Air) {
	t.Helper()
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	near(
		t, what+": humidity ratio", a.HumidityRatio(), want.HumidityRatio(),
		1e-9*want.HumidityRatio()+1e-14,
	)
	near(t, what+": dry bulb", float64(a.DryBulb()), float64(want.DryBulb()), 1e-9)
}

func TestRoundTrip(t *testing.T) { eachModel(t, roundTrip) }

func roundTrip(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		db, p := a.DryBulb(), a.Pressure()

		b, err := m.FromWetBulb(db, a.WetBulb(), p)
		sameAir(t, "wet bulb", b, err, a)
		near(t, "wet bulb again", float64(b.WetBulb()), float64(a.WetBulb()), 1e-9)
		b, err = m.FromRelativeHumidity(db, a.RelativeHumidity(), p)
		sameAir(t, "relative humidity", b, err, a)
		b, err = m.FromHumidityRatio(db, a.HumidityRatio(), p)
		sameAir(t, "humidity ratio", b, err, a)
		b, err = m.FromEnthalpy(db, a.Enthalpy(), p)
		sameAir(t, "enthalpy", b, err, a)
		if a.DewPoint() >= quantity.Celsius(-100) {
			b, err = m.FromDewPoint(db, a.DewPoint(), p)
			sameAir(t, "dew point", b, err, a)
		}
	})
}

// A reading goes in and comes out, whichever branch its wick is on.
func TestWetBulbComesBack(t *testing.T) { eachModel(t, wetBulbComesBack) }

func wetBulbComesBack(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		db, p := drawDryBulb.Draw(t, "dry bulb"), drawPressure.Draw(t, "p")
		dry, err := m.FromHumidityRatio(db, 0, p)
		if err != nil {
			t.Fatal(err)
		}
		low, high := float64(dry.WetBulb()), float64(db)
		if rapid.Bool().Draw(t, "near freezing") {
			low, high = max(low, 272.15), min(high, 274.15)
			if low > high {
				t.Skip()
			}
		}
		wb := quantity.Temperature(low + (high-low)*rapid.Float64Range(0, 1).Draw(t, "place"))
		a, err := m.FromWetBulb(db, wb, p)
		var re *psychro.RangeError
		if errors.As(err, &re) && (wb > quantity.Celsius(70) || math.Abs(float64(wb)-273.15) < 1) {
			t.Skip() // water boils, or ice and water leave a gap that no air fills
		}
		if err != nil {
			t.Fatal(err)
		}
		near(t, "wet bulb", float64(a.WetBulb()), float64(wb), 1e-9)
		if a.WetBulbIced() != (wb < quantity.Celsius(0)) && math.Abs(wb.Celsius()) > 0.006 {
			t.Fatalf("wet bulb %v, iced %v", wb, a.WetBulbIced())
		}
	})
}

func TestOrderOfTemperatures(t *testing.T) { eachModel(t, orderOfTemperatures) }

func orderOfTemperatures(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		if a.DewPoint() > a.WetBulb()+1e-9 || a.WetBulb() > a.DryBulb() {
			t.Fatalf(
				"dew point %v, wet bulb %v, dry bulb %v", a.DewPoint(), a.WetBulb(), a.DryBulb(),
			)
		}
		if a.DegreeOfSaturation() > a.RelativeHumidity()+1e-12 {
			t.Fatalf(
				"degree of saturation %v above relative humidity %v", a.DegreeOfSaturation(),
				a.RelativeHumidity(),
			)
		}
	})
}

// models are those that every property is tested in.
var models = []psychro.Model{psychro.PerfectGas, psychro.PerfectGasIAPWS, psychro.RealGas}

func eachModel(t *testing.T, test func(*testing.T, psychro.Model)) {
	for _, m := range models {
		t.Run(m.String(), func(t *testing.T) { test(t, m) })
	}
}
