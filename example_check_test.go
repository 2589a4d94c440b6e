package satline_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// overcharge is an invented visit: much subcooling, or a gauge that reads high.
func overcharge() satline.Visit {
	return satline.Visit{
		Equipment: satline.Equipment{
			Refrigerant: "R-454B", Metering: satline.TXV, NominalCapacity: quantity.Tons(3),
			Label: satline.Label{
				Charge:     quantity.Pounds(7),
				Subcooling: new(quantity.FahrenheitDelta(9).PlusMinus(0)),
			},
		},
		Site: satline.Site{Elevation: new(quantity.Feet(500))},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(124)),
			LiquidPressure:  satline.Measured(quantity.PSIG(400)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(60)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(97)),
			DischargeLine:   satline.Measured(quantity.Fahrenheit(176)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(92)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(76)),
			ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(64)),
			SupplyDryBulb:   satline.Measured(quantity.Fahrenheit(57)),
		},
	}
}

// The assessment asks for one look that would settle most; its answer goes into the
// visit, and the visit is assessed again.
func ExampleCheck() {
	visit := overcharge()
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	if ask := assessment.Ask; ask != nil && ask.Look != "" {
		// It was looked at, and nothing was found.
		visit.Checks = append(visit.Checks, satline.Check{Look: ask.Look, Found: false})
		if assessment, err = satline.Assess(visit); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Println(assessment.Charge.Outcome)
	// Output:
	// high
}

func ExampleLooks() {
	for _, look := range satline.Looks(satline.English, quantity.IP)[:2] {
		fmt.Printf("%s: %s, or %s?\n", look.Code, look.Found.Text, look.NotFound.Text)
	}
	// Output:
	// standing-pressure: above that of the outdoor temperature, or equal to that of the outdoor temperature?
	// liquid-line-drop: a clear drop across something, or the same all along?
}
