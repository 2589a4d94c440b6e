package coldroom_test

import (
	"fmt"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func ExampleRoom_Usual() {
	box := quantity.Fahrenheit(37)
	for _, a := range []coldroom.Application{
		coldroom.WalkInCooler, coldroom.ProduceCooler, coldroom.ReachInCooler,
	} {
		u := coldroom.Room{Application: a}.Usual(&box)
		fmt.Printf("%v: %.0f °F\n", a, u.Difference.Value.Fahrenheit())
	}
	// Output:
	// walk-in cooler: 11 °F
	// produce cooler: 7 °F
	// reach-in cooler: 17 °F
}

func ExampleUsual_FoodLimit() {
	limit := coldroom.Room{Application: coldroom.WalkInCooler}.Usual(nil).FoodLimit()
	fmt.Printf("%.0f °F by the %v\n", limit.At.Fahrenheit(), limit.Source)
	// Output: 41 °F by the FDA Food Code 3-501.16(A)(2): cold holding at 41 °F (5 °C) or less
}

func ExampleRoom_PressureControl() {
	fluid, err := refrigerant.Lookup("R-404A")
	if err != nil {
		fmt.Println(err)
		return
	}
	room := coldroom.Room{Application: coldroom.WalkInCooler, PumpDown: true}
	c, err := room.PressureControl(fluid, quantity.Fahrenheit(36), quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("in at %.0f psig, out at %.0f psig\n", c.CutIn.PSIG(), c.CutOut.PSIG())
	// Output: in at 71 psig, out at 10 psig
}

func ExampleUsual_MostRun() {
	run, source := coldroom.Room{Application: coldroom.WalkInFreezer}.Usual(nil).MostRun()
	fmt.Println(run, "by", source)
	// Output: 18h0m0s by Kramer, Defrost load, ASHRAE Journal, February 2001
}
