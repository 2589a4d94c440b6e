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
	for _, r := range charge.Risks(charge.Compressor{Superheat: &superheat, DischargeLine: &discharge, Condensing: &condensing}) {
		fmt.Printf("%s (grave: %v): %s\n  why: %s\n  do: %s\n", r.Code, r.Grave, r.Text, r.Why, r.Do)
	}
	// Output:
	// floodback (grave: true): superheat 0.4 °F ± 0.9 °F cannot be told from none (up to 2.0 °F, or twice its uncertainty): liquid is coming back while the compressor runs
	//   why: liquid washes the oil from the bearings and dilutes it in the sump; the compressor wears out without a warning
	//   do: feel the compressor, and stop it if it is cold and sweats down to the sump; add nothing; check airflow, filter, coil and metering device before the charge
	// discharge-cool (grave: false): the discharge line is only 16.0 °F above the condensing temperature, less than 20.0 °F
	//   why: vapor that was dry when it was compressed leaves well above condensing: a cool discharge is liquid in the suction, or a clamp that reads low
	//   do: insulate the clamp and read again; then treat it as liquid coming back
}

func ExampleCompressionRatio() {
	atmosphere := quantity.AtmosphereAt(quantity.Feet(6000))
	suction := quantity.PSIG(66).Absolute(atmosphere).PlusMinus(quantity.PSIA(0.6))
	discharge := quantity.PSIG(226).Absolute(atmosphere).PlusMinus(quantity.PSIA(1.5))
	ratio, std, err := charge.CompressionRatio(suction, discharge)
	fmt.Printf("%.2f ± %.2f, %v\n", ratio, std, err)
	// Output: 3.06 ± 0.03, <nil>
}
