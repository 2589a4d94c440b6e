package live

import (
	"strconv"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// saturations are where a line boils or condenses: below least only in a machine that is next to
// empty, from usual to most in most machines. Common practice, no source.
type saturations struct{ least, usual, most quantity.Temperature }

var (
	ofSuction = saturations{
		quantity.Celsius(-40), quantity.Celsius(-35), quantity.Celsius(25),
	}
	ofLiquid = saturations{
		quantity.Celsius(-15), quantity.Celsius(5), quantity.Celsius(75),
	}
)

// readInBar asks, by path, whether a pressure in kPa was read in bar: as written next to nothing
// would be in the machine, and in bar the number is usual. The page offers kPa first where it is
// set to units of SI, and many gauges show bar.
func readInBar(v satline.Visit) map[string]string {
	out := map[string]string{}
	fluid, err := refrigerant.Lookup(v.Equipment.Refrigerant)
	if err != nil || v.Units != quantity.SI {
		return out
	}
	b, r := book{v.Language}, v.Readings
	for _, x := range []struct {
		path string
		read satline.Reading[quantity.GaugePressure]
		in   saturations
	}{
		{"readings.suctionPressure", r.SuctionPressure, ofSuction},
		{"readings.liquidPressure", r.LiquidPressure, ofLiquid},
		{"readings.dischargePressure", r.DischargePressure, ofLiquid},
	} {
		if !x.read.Taken() {
			continue
		}
		number := x.read.Get().Value.KilopascalsGauge()
		if x.in.inBar(fluid, number) {
			text := b.figures(strconv.FormatFloat(number, 'g', 4, 64))
			out[x.path] = b.sentence("doubt.bar", "value", text)
		}
	}
	return out
}

func (s saturations) inBar(fluid *refrigerant.Refrigerant, number float64) bool {
	const atm = quantity.StandardAtmosphere
	written, err := fluid.DewTemperature(quantity.KilopascalsGauge(number).Absolute(atm))
	if err != nil || written >= s.least {
		return false
	}
	meant, err := fluid.DewTemperature(quantity.BarGauge(number).Absolute(atm))
	return err == nil && meant >= s.usual && meant <= s.most
}
