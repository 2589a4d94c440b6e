package satline_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

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
	// Output:
	// Weighed in: 6 lb 10.6 oz ± 3.1 oz, by the label 6 lb 0.0 oz, for line and parts 10.6 oz.
}
