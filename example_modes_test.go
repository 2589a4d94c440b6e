package satline_test

import (
	"fmt"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
)

// A heat pump that heats at 17 °F: the mode is stated, and what it gives in this weather is said
// beside what is wrong. The machine is invented.
func ExampleAssess_heating() {
	a, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{
			Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.SplitHeatPump,
			NominalCapacity: quantity.Tons(3),
		},
		Conditions: satline.Conditions{Mode: satline.Heating, Running: 25 * time.Minute},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(46)), // at the true suction port
			LiquidPressure:  satline.Measured(quantity.PSIG(300)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(8)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(82)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(17)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(70)),
			SupplyDryBulb:   satline.Measured(quantity.Fahrenheit(90)),
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Mode.Mode, a.Findings[0].Cause)
	for _, line := range a.Performance {
		fmt.Println(line.Text)
	}
	// Output:
	// heating sound
	// At 5.0 °F outdoors a sound one of its size gives about 18500 Btu/h, less while it frosts.
	// If it just holds the room now, 17.0 °F outdoors is its balance point: below it auxiliary heat belongs on, above it does not.
}

// A walk-in freezer that is too warm: its room says what the food is kept at, ReturnDryBulb is
// the air of the box, and BulbLine the pipe at the evaporator. Fans that were looked at and all
// turn go into the checks. The freezer is invented.
func ExampleAssess_coldRoom() {
	v := satline.Visit{
		Units: quantity.SI,
		Equipment: satline.Equipment{
			Refrigerant: "R-448A", Metering: satline.TXV,
			ColdRoom: coldroom.Room{
				Application: coldroom.WalkInFreezer, Setpoint: new(quantity.Celsius(-20)),
				Receiver: new(true), Defrost: coldroom.Electric,
			},
		},
		Conditions: satline.Conditions{Running: 25 * time.Minute},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.BarGauge(0.55)),
			LiquidPressure:  satline.Measured(quantity.BarGauge(15)),
			SuctionLine:     satline.Measured(quantity.Celsius(-14)),
			BulbLine:        satline.Measured(quantity.Celsius(-24)),
			LiquidLine:      satline.Measured(quantity.Celsius(32)),
			OutdoorDryBulb:  satline.Measured(quantity.Celsius(27)),
			ReturnDryBulb:   satline.Measured(quantity.Celsius(-14)),
		},
		Checks: []satline.Check{{Look: "cold-evaporator-fans", Found: false}},
	}
	a, err := satline.Assess(v)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Mode.Mode, a.Findings[0].Cause)
	for _, step := range a.Plan {
		fmt.Println("-", step.Do.Code)
	}
	// Output:
	// refrigeration cold-evaporator
	// - step.cold-food-frozen
	// - look.cold-coil-iced
	// - step.read-again
	// - step.cold-watch
}
