package satline_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// A coil was found frozen in the morning. The machine was read after it had thawed.
func ExampleWhyFrozen() {
	v := satline.Visit{
		Units: quantity.IP,
		Equipment: satline.Equipment{
			Refrigerant: "R-22", Metering: satline.FixedRestrictor,
			NominalCapacity: quantity.Tons(3),
		},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(68)),
			LiquidPressure:  satline.Measured(quantity.PSIG(226)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(54)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(100)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(90)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(76)),
			ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(63)),
		},
	}
	why, err := satline.WhyFrozen(v, satline.CoolNight())
	if err != nil {
		fmt.Println(err)
		return
	}
	colder := why.Together.CoilSurface.Value.Sub(why.AsRead.CoilSurface.Value)
	fmt.Printf("that night the coil is %.0f °F colder than as read\n", -colder.Fahrenheit())
	for _, c := range why.Causes {
		fmt.Printf("%s: %.0f °F colder\n", c.Code, -c.Surface.Fahrenheit())
	}
	for _, c := range why.Controls[:2] { // the third is a freeze thermostat
		fmt.Printf("%s: %.0f °F warmer\n", c.Code, c.Surface.Fahrenheit())
	}
	// Output:
	// that night the coil is 9 °F colder than as read
	// filter: 3 °F colder
	// indoor-coil: 3 °F colder
	// blower: 4 °F colder
	// set-point: 2 °F colder
	// charge: 3 °F colder
	// set-point: 1 °F warmer
	// head-pressure: 3 °F warmer
}
