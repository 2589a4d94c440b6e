package heatpump

import (
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A machine that runs slowly is sound with what would be a weak compressor at full speed.
func TestSlowMachine(t *testing.T) {
	fluid, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	read := func(f float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Fahrenheit(f), Std: 0.5}
	}
	c := &modes.Case{Fluid: fluid}
	c.Evidence.Metering = refrigerant.EXV
	c.Input.EvaporatingDew, c.Input.CondensingBubble = read(33), read(92)
	c.Input.SuctionLine, c.Input.LiquidLine, c.Input.DischargeLine = read(40), read(82), read(128)
	c.Input.OutdoorDryBulb = read(45)
	c.Input.ReturnDryBulb, c.Input.SupplyDryBulb = read(70), read(86)
	for _, x := range []struct {
		known population.Known
		sound bool
	}{
		{population.Known{}, false},
		{population.Known{Stages: population.SingleStage}, false},
		{population.Known{Stages: population.VariableSpeed}, true},
		{population.Known{Share: 0.45}, true},
	} {
		c.Known = x.known
		if got := believe(c).of(sound); (got >= likely) != x.sound {
			t.Errorf("%+v: nothing wrong with a chance of %.2f", x.known, got)
		}
	}
}
