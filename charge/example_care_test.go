package charge_test

import (
	"fmt"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

func ExampleRisks() {
	clamp := quantity.FahrenheitDelta(0.9)
	superheat := quantity.FahrenheitDelta(0.4).PlusMinus(clamp)
	discharge := quantity.Fahrenheit(128).PlusMinus(clamp)
	condensing := quantity.Fahrenheit(112).PlusMinus(quantity.FahrenheitDelta(0.5))
	for _, r := range charge.Risks(charge.Compressor{Superheat: &superheat,
		DischargeLine: &discharge, Condensing: &condensing}) {
		fmt.Printf("%v (grave: %v)\n", r.Says, r.Grave)
	}
	// Output:
	// danger.floodback figure=0.2 K ± 0.5 K limit=1.1 K (grave: true)
	// danger.discharge-cool figure=8.9 K limit=11.1 K (grave: false)
}

func ExampleCompressionRatio() {
	atmosphere := quantity.AtmosphereAt(quantity.Feet(6000))
	suction := quantity.PSIG(66).Absolute(atmosphere).PlusMinus(quantity.PSIA(0.6))
	discharge := quantity.PSIG(226).Absolute(atmosphere).PlusMinus(quantity.PSIA(1.5))
	ratio, std, err := charge.CompressionRatio(suction, discharge)
	fmt.Printf("%.2f ± %.2f, %v\n", ratio, std, err)
	// Output: 3.06 ± 0.03, <nil>
}
