package satline_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// What the owner is told of a machine that lacks refrigerant, as facts to word or to lay out.
func ExampleAssessment_OwnerFacts() {
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
	found, _, next := a.OwnerFacts()
	for _, f := range append(found, next...) {
		fmt.Println(satline.Say(f, satline.English, quantity.IP))
	}
	// Output:
	// There is less refrigerant in it than there should be. Refrigerant is not used up: a leak is looked for.
	// The machine stays off until what endangers it is put right; it is run only to measure.
	// The refrigerant is taken out, the leak mended, the circuit tested and emptied of air, and the right amount weighed in.
}

// One figure of label, line and parts.
func ExampleEquipment_WeighedCharge() {
	c, err := satline.Equipment{
		Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.Split,
		Label: satline.Label{Charge: quantity.Pounds(6), FactoryLineSet: quantity.Feet(15)},
		LineSet: satline.LineSet{
			Length: quantity.Feet(35), LiquidDiameter: quantity.Inches(0.375),
		},
	}.WeighedCharge()
	if err != nil {
		panic(err)
	}
	w, err := c.Weigh()
	if err != nil {
		panic(err)
	}
	fmt.Println(satline.Say(w.Fact(), satline.English, quantity.IP))
	// Output: Weighed in: 6.66 lb ± 0.19 lb, by the label 6 lb 0.0 oz, for line and parts 10.6 oz.
}
