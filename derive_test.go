package satline

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// What an estimate leaves open of its bubble and dew points widens what is counted from them,
// beside the instruments. Of R-410A nothing is open.
func TestEstimateWidensWhatRestsOnIt(t *testing.T) {
	for _, designation := range []string{"R-410A", "R-438A", "R-468A"} {
		v := load(t, "sound-r410a-piston")
		v.Equipment.Refrigerant = designation
		p, err := prepare(v)
		if err != nil {
			t.Fatal(err)
		}
		s, err := settle(p)
		if err != nil {
			t.Fatal(err)
		}
		r := &s.readings
		d, err := derive(p, r)
		if err != nil {
			t.Fatal(err)
		}
		bubble, dew := p.fluid.SaturationUncertainty()
		if (dew > 0) != (designation != "R-410A") {
			t.Errorf("%s: dew point ± %v", designation, dew)
		}
		// The gauge's part, by the slope between two pressures about its reading.
		gauge := func(g gaugeReading, at func(quantity.Pressure) (quantity.Temperature,
			error)) float64 {
			absolute := p.absolute(g)
			below, err := at(absolute.Value - 1000)
			if err != nil {
				t.Fatal(err)
			}
			above, err := at(absolute.Value + 1000)
			if err != nil {
				t.Fatal(err)
			}
			return float64(above.Sub(below)) / 2000 * absolute.Std
		}
		atDew := math.Hypot(gauge(r.SuctionPressure.of, p.fluid.DewTemperature), float64(dew))
		atBubble := math.Hypot(gauge(r.LiquidPressure.of, p.fluid.BubbleTemperature), float64(bubble))
		condensing := math.Hypot(gauge(r.LiquidPressure.of, p.fluid.DewTemperature), float64(dew))
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"evaporating", d.EvaporatingDew.Std, atDew},
			{"superheat", d.Superheat.Std, math.Hypot(atDew, r.SuctionLine.of.Std)},
			{"subcooling", d.Subcooling.Std, math.Hypot(atBubble, r.LiquidLine.of.Std)},
			{"over outdoor air", d.CondensingOverOutdoor.Std,
				math.Hypot((atBubble+condensing)/2, r.OutdoorDryBulb.of.Std)},
			{"approach", d.Approach.Std, math.Hypot(r.LiquidLine.of.Std, r.OutdoorDryBulb.of.Std)},
		} {
			if math.Abs(c.got/c.want-1) > 0.01 {
				t.Errorf("%s, %s: ± %g K, want %g", designation, c.name, c.got, c.want)
			}
		}
	}
}
