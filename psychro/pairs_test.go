package psychro_test

import (
	"math"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// Every pair gives back the air it was read from.
func TestPairsRoundTrip(t *testing.T) {
	eachModel(t, func(t *testing.T, m psychro.Model) {
		rapid.Check(t, func(t *rapid.T) { pairsRoundTrip(t, drawAir(t, m)) })
	})
}

func pairsRoundTrip(t *rapid.T, a psychro.Air) {
	m, p := a.Model(), a.Pressure()
	dp, wb, rh, w, h := a.DewPoint(), a.WetBulb(), a.RelativeHumidity(), a.HumidityRatio(),
		a.Enthalpy()

	back := func(what string, b psychro.Air, err error) {
		t.Helper()
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		// The dry bulb comes back as well as its readings are stored: one part
		// in 10¹⁶ of a wet bulb or an enthalpy in very humid air, whose latent
		// heat is thousands of times the sensible, is that much more of it.
		slack := 1e-9 * (1 + w)
		near(t, what+": dry bulb", float64(b.DryBulb()), float64(a.DryBulb()), slack)
		near(t, what+": humidity ratio", b.HumidityRatio(), w, 1e-9*w+1e-14)
		if b.WetBulbIced() != a.WetBulbIced() && math.Abs(wb.Celsius()) > 1e-9 {
			t.Fatalf("%s: iced %v, was %v", what, b.WetBulbIced(), a.WetBulbIced())
		}
	}

	b, err := m.FromWetBulbAndHumidityRatio(wb, w, p)
	back("wet bulb, humidity ratio", b, err)
	b, err = m.FromEnthalpyAndHumidityRatio(h, w, p)
	back("enthalpy, humidity ratio", b, err)
	b, err = m.FromEnthalpyAndRelativeHumidity(h, rh, p)
	back("enthalpy, relative humidity", b, err)
	b, err = m.FromWetBulbAndRelativeHumidity(wb, rh, p)
	back("wet bulb, relative humidity", b, err)
	if w > 0 {
		b, err = m.FromHumidityRatioAndRelativeHumidity(w, rh, p)
		back("humidity ratio, relative humidity", b, err)
	}
	if dp >= quantity.Celsius(-100) {
		b, err = m.FromWetBulbAndDewPoint(wb, dp, p)
		back("wet bulb, dew point", b, err)
		b, err = m.FromDewPointAndRelativeHumidity(dp, rh, p)
		back("dew point, relative humidity", b, err)
		b, err = m.FromDewPointAndEnthalpy(dp, h, p)
		back("dew point, enthalpy", b, err)
	}
}

// What a property does when one argument grows and the others stay.
func TestMonotone(t *testing.T) {
	for _, m := range models {
		t.Run(m.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				db, p := drawDryBulb.Draw(t, "dry bulb"), drawPressure.Draw(t, "p")
				lo, hi := rapid.Float64Range(0, 1).
					Draw(t, "rh"),
					rapid.Float64Range(0, 1).
						Draw(t, "rh")
				if lo > hi {
					lo, hi = hi, lo
				}
				dry, err := m.FromRelativeHumidity(db, lo, p)
				if err != nil {
					t.Skip()
				}
				wet, err := m.FromRelativeHumidity(db, hi, p)
				if err != nil || hi-lo < 1e-6 {
					t.Skip()
				}
				grows := func(what string, a, b float64) {
					t.Helper()
					if !(b > a) {
						t.Fatalf("%s: %.17g at %v, %.17g at %v", what, a, dry, b, wet)
					}
				}
				grows(
					"humidity ratio with relative humidity", dry.HumidityRatio(),
					wet.HumidityRatio(),
				)
				grows(
					"dew point with relative humidity", float64(dry.DewPoint()),
					float64(wet.DewPoint()),
				)
				grows(
					"wet bulb with relative humidity", float64(dry.WetBulb()),
					float64(wet.WetBulb()),
				)
				grows(
					"enthalpy with relative humidity", float64(dry.Enthalpy()),
					float64(wet.Enthalpy()),
				)
				grows(
					"volume with relative humidity", float64(dry.SpecificVolume()),
					float64(wet.SpecificVolume()),
				)

				up := rapid.Float64Range(1e-3, 20).Draw(t, "warmer")
				warm, err := m.FromHumidityRatio(
					db.Add(quantity.TemperatureDelta(up)), dry.HumidityRatio(), p,
				)
				if err != nil {
					t.Fatal(err)
				}
				grows("wet bulb with dry bulb", float64(dry.WetBulb()), float64(warm.WetBulb()))
				grows("enthalpy with dry bulb", float64(dry.Enthalpy()), float64(warm.Enthalpy()))
				grows(
					"volume with dry bulb", float64(dry.SpecificVolume()),
					float64(warm.SpecificVolume()),
				)
				if dry.HumidityRatio() > 0 {
					grows(
						"dryness with dry bulb", -dry.RelativeHumidity(), -warm.RelativeHumidity(),
					)
				}

				high, err := m.FromRelativeHumidity(db, lo, p*1.02)
				if err != nil {
					t.Fatal(err)
				}
				if lo > 1e-6 {
					grows("dryness with pressure", -dry.HumidityRatio(), -high.HumidityRatio())
				}
				grows("density with pressure", float64(dry.Density()), float64(high.Density()))
			})
		})
	}
}

// Humidity ratio grows with the wet bulb, but for one step down at 0 °C: the ice
// on the wick takes the heat of fusion as well, so the same depression means
// more water in the air than it does with liquid.
func TestMonotoneInWetBulb(t *testing.T) {
	for _, m := range models {
		t.Run(m.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				db, p := drawDryBulb.Draw(t, "dry bulb"), drawPressure.Draw(t, "p")
				x := float64(db) - rapid.Float64Range(0, 30).Draw(t, "depression")
				y := float64(db) - rapid.Float64Range(0, 30).Draw(t, "depression")
				if x > y {
					x, y = y, x
				}
				if y-x < 1e-6 || x < 273.15 && y >= 273.15 {
					t.Skip()
				}
				a, err := m.FromWetBulb(db, quantity.Temperature(x), p)
				if err != nil {
					t.Skip()
				}
				b, err := m.FromWetBulb(db, quantity.Temperature(y), p)
				if err != nil {
					t.Skip()
				}
				if !(b.HumidityRatio() > a.HumidityRatio()) {
					t.Fatalf("wet bulb %v: %v, %v: %v", x, a.HumidityRatio(), y, b.HumidityRatio())
				}
			})
		})
	}
	iced, err1 := psychro.FromWetBulb(
		quantity.Celsius(10), quantity.Celsius(-1e-6), quantity.StandardAtmosphere,
	)
	_, err2 := psychro.FromWetBulb(
		quantity.Celsius(12), quantity.Celsius(1e-6), quantity.StandardAtmosphere,
	)
	if err1 != nil || err2 == nil {
		t.Fatalf("%v, %v: at 12 °C even dry air leaves a wet wick above 0 °C", err1, err2)
	}
	if !iced.WetBulbIced() || math.Abs(iced.WetBulb().Celsius()+1e-6) > 1e-9 {
		t.Errorf("iced wet bulb came back as %v", iced.WetBulb())
	}
	thawed, err := psychro.FromHumidityRatio(iced.DryBulb(), iced.HumidityRatio(), iced.Pressure())
	if err != nil {
		t.Fatal(err)
	}
	if d := thawed.WetBulb().Sub(iced.WetBulb()); thawed.WetBulbIced() || d < 0.3 || d > 1 {
		t.Errorf("the same air on a wet wick reads %v higher", d)
	}
}
