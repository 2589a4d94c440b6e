package report_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/report"
)

// What the owner is told of a machine that lacks refrigerant, as facts to word or to lay out.
func ExampleOwnerFacts() {
	a, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-410A", Metering: satline.TXV},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(85)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(70)),
			LiquidPressure:  satline.Measured(quantity.PSIG(270)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(89)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(80)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(78)),
			ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(64)),
		},
	})
	if err != nil {
		panic(err)
	}
	found, _, next := report.OwnerFacts(a)
	for _, f := range append(found, next...) {
		fmt.Println(satline.Say(f, satline.English, quantity.IP))
	}
	// Output:
	// There is less refrigerant in it than there should be. Refrigerant is not used up: a leak is looked for.
	// The machine stays off until what endangers it is put right; it is run only to measure.
	// The refrigerant is taken out, the leak mended, the circuit tested and emptied of air, and the right amount weighed in.
}
