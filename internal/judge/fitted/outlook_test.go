package fitted

import (
	"testing"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// A surface as wide as nine degrees is called neither frozen nor clear, whatever its chance.
func TestTooWideASurface(t *testing.T) {
	o := modes.Outlook{FreezeChance: 0.95}
	o.CoilSurface = quantity.Fahrenheit(20).PlusMinus(quantity.FahrenheitDelta(9))
	o.Superheat.Std = 1
	if says := says(&o, cycle.FreezeForecast{}); says[0].Code != "forecast.ice-too-wide" {
		t.Errorf("%v", says)
	}
}
