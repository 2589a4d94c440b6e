package satline_test

import (
	"encoding/json"
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// A reading takes the uncertainty of the visit's instruments, or states its own.
func ExampleMeasured() {
	byInstrument := satline.Measured(quantity.PSIG(118))
	stated := satline.ReadingOf(quantity.PSIG(118).PlusMinus(quantity.PSIG(0.5)))
	fmt.Println(byInstrument.Get().Format(quantity.IP))
	fmt.Println(stated.Get().Format(quantity.IP))
	// Output:
	// 118.0 psig
	// 118.0 psig ± 0.5 psi
}

// A copy of readings is one of its own, and what was not read is left out of its JSON.
func ExampleReading() {
	first := satline.Readings{SuctionLine: satline.Measured(quantity.Celsius(12))}
	second := first
	second.SuctionLine = satline.Measured(quantity.Celsius(16))
	fmt.Println(first.SuctionLine, first.LiquidLine.Taken())
	text, err := json.Marshal(second)
	fmt.Println(string(text), err)
	// Output:
	// 12.0 °C false
	// {"suctionLine":"16 °C"} <nil>
}

// What was read is taken up where it was read.
func ExampleReading_Get() {
	visit := satline.Visit{Readings: satline.Readings{
		SuctionPressure: satline.ReadingOf(quantity.PSIG(118).PlusMinus(quantity.PSIG(0.5))),
	}}
	for name, gauge := range map[string]satline.Reading[quantity.GaugePressure]{
		"suction": visit.Readings.SuctionPressure, "liquid": visit.Readings.LiquidPressure,
	} {
		if p := gauge.Get(); p != nil {
			fmt.Printf("%s %.1f psi absolute\n", name,
				p.Value.Absolute(quantity.StandardAtmosphere).PSIA())
		}
	}
	// Output: suction 132.7 psi absolute
}
