package quantity_test

import (
	"testing"

	"github.com/satline/satline/quantity"
)

// Two digits of an uncertainty are shown, and of the value no more than they leave known: JCGM
// 100:2008 (GUM) 7.2.6.
func TestDigitsOfWhatIsKnown(t *testing.T) {
	ip, si := quantity.Style{}, quantity.Style{System: quantity.SI}
	for _, c := range []struct{ got, want string }{
		{
			quantity.BtuPerHour(26029).PlusMinus(quantity.BtuPerHour(2155)).Styled(ip),
			"26000 Btu/h ± 2200 Btu/h",
		},
		{
			quantity.KilopascalsGauge(848.9).PlusMinus(quantity.KilopascalsGauge(15.6)).Styled(si),
			"849 kPag ± 16 kPa",
		},
		{
			quantity.Fahrenheit(41.26).PlusMinus(quantity.FahrenheitDelta(12.4)).Styled(ip),
			"41 °F ± 12 °F",
		},
		{
			quantity.Fahrenheit(41.26).PlusMinus(quantity.FahrenheitDelta(0.6)).Styled(ip),
			"41.3 °F ± 0.6 °F",
		},
		{ // who states the decimals has them
			quantity.Fahrenheit(41.26).PlusMinus(quantity.FahrenheitDelta(12.4)).Styled(ip.In("°F",
				1)),
			"41.3 °F ± 12.4 °F",
		},
	} {
		if c.got != c.want {
			t.Errorf("%s, want %s", c.got, c.want)
		}
	}
}
