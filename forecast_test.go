package satline

import (
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

// At the weather of the visit the fitted machine reads as the visit did, within
// its own band and what an ordinary machine may be off.
func TestForecastOfNowIsNow(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	out, err := Forecast(v, Scenario{Name: "as it is"})
	if err != nil {
		t.Fatal(err)
	}
	a := assess(t, v)
	o := out[0]
	if d := o.Superheat.Value - a.Derived.Superheat.Value; d.Kelvin() > 3 || d.Kelvin() < -3 {
		t.Errorf("superheat %v forecast for now, %v measured", o.Superheat, a.Derived.Superheat)
	}
	if d := o.Subcooling.Value - a.Derived.Subcooling.Value; d.Kelvin() > 3 || d.Kelvin() < -3 {
		t.Errorf("subcooling %v forecast for now, %v measured", o.Subcooling, a.Derived.Subcooling)
	}
}

// A cool night makes the coil colder and its freezing likelier; a control that
// holds the condensing temperature makes it warmer again.
func TestForecastOfACoolNight(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	night := CoolNight()
	held := night
	held.HeadPressure = quantity.Fahrenheit(95)
	out, err := Forecast(v, Scenario{Name: "as it is"}, night, held)
	if err != nil {
		t.Fatal(err)
	}
	if !(out[1].CoilSurface.Value < out[0].CoilSurface.Value && out[1].FreezeChance >= out[0].FreezeChance) {
		t.Errorf("coil at %v on a cool night, %v now", out[1].CoilSurface, out[0].CoilSurface)
	}
	if !(out[2].CoilSurface.Value > out[1].CoilSurface.Value) {
		t.Errorf("coil at %v with the head pressure held, %v without", out[2].CoilSurface, out[1].CoilSurface)
	}
	for _, o := range out {
		if len(o.Says) == 0 {
			t.Errorf("%s says nothing", o.Scenario.Name)
		}
	}
}

func TestForecastNeedsItsReadings(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Equipment.NominalCapacity = 0
	if _, err := Forecast(v, CoolNight()); err == nil {
		t.Error("a forecast was made of a machine of no size")
	}
	v = load(t, "sound-r410a-piston")
	v.Readings.ReturnWetBulb = nil
	if _, err := Forecast(v, CoolNight()); err == nil {
		t.Error("a forecast was made without a return wet bulb")
	}
}

// The error tells of the readings that stand in the way, and not of others that
// cannot be true together either.
func TestForecastNamesWhatCannotBe(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Readings.SupplyWetBulb = Measured(v.Readings.SupplyDryBulb.Value + quantity.Temperature(quantity.KelvinDelta(10)))
	if _, err := Forecast(v, CoolNight()); err != nil {
		t.Errorf("a supply wet bulb stands in the way of a forecast that does not use it: %v", err)
	}
	v.Readings.OutdoorDryBulb = Measured(quantity.Fahrenheit(125))
	if _, err := Forecast(v, CoolNight()); err == nil || !strings.Contains(err.Error(), "above the condensing temperature") {
		t.Errorf("%v", err)
	}
}

func BenchmarkForecast(b *testing.B) {
	v := load(b, "sound-r410a-piston")
	for b.Loop() {
		if _, err := Forecast(v, CoolNight()); err != nil {
			b.Fatal(err)
		}
	}
}

// What is far from the visit is said in the units of the visit, once per scenario.
func TestForecastSpeaksOneSystemOfUnits(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Units = quantity.SI
	out, err := Forecast(v, CoolNight())
	if err != nil {
		t.Fatal(err)
	}
	if len(out[0].Extrapolating) == 0 {
		t.Error("a cool night is not far from a warm day")
	}
	for _, s := range out[0].Says {
		if strings.Contains(s, "°F") || strings.Contains(s, "is 0 %") {
			t.Errorf("an outlook in SI says %q", s)
		}
	}
}
