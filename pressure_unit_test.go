package satline

import (
	"errors"
	"testing"

	"github.com/satline/satline/quantity"
)

// Invented: a sound machine, its gauges in bar, written down as if in psi.
func TestPressuresInAnotherUnit(t *testing.T) {
	sound := func(fluid string, low, high quantity.GaugePressure) Visit {
		return Visit{
			Equipment: Equipment{Refrigerant: fluid, Metering: TXV},
			Readings: Readings{
				SuctionPressure: Measured(low), LiquidPressure: Measured(high),
				SuctionLine:    Measured(quantity.Fahrenheit(55)),
				LiquidLine:     Measured(quantity.Fahrenheit(98)),
				OutdoorDryBulb: Measured(quantity.Fahrenheit(92)),
			},
		}
	}
	bar, psi, kPa := quantity.BarGauge, quantity.PSIG, quantity.KilopascalsGauge
	for _, x := range []struct {
		fluid     string
		low, high float64 // bar
	}{{"R-410A", 8.1, 26.5}, {"R-454B", 7.6, 25.5}, {"R-22", 4.6, 16}, {"R-134a", 2, 9.5}} {
		if v := sound(x.fluid, bar(x.low), bar(x.high)); v.Validate() != nil {
			t.Errorf("%s: %v", x.fluid, v.Validate())
		}
		v := sound(x.fluid, psi(x.low), psi(x.high))
		_, err := Assess(v)
		wrong, ok := errors.AsType[*VisitError](err)
		if !ok || wrong.Kind != FieldContradictory || wrong.Field != "readings.liquidPressure" {
			t.Errorf("%s in bar as psi: %v", x.fluid, err)
		}
		v = sound(x.fluid, kPa(bar(x.low).PSIG()), kPa(bar(x.high).PSIG()))
		if _, err := Assess(v); err == nil {
			t.Errorf("%s in psi as kPa is taken", x.fluid)
		}
	}
	// What is in a machine that is next to empty is no matter of units.
	empty := sound("R-410A", psi(8), psi(95))
	empty.Readings.SuctionLine = Measured(quantity.Fahrenheit(74))
	if _, err := Assess(empty); err != nil {
		t.Error(err)
	}
}
