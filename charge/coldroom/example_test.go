package coldroom_test

import (
	"fmt"
	"time"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/psychro"
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

// What a walk-in cooler of 10 ft by 8 ft by 8 ft takes in, and what its machine has to give.
func ExampleBox_Load() {
	air := func(fahrenheit, humidity float64) psychro.Air {
		a, err := psychro.FromRelativeHumidity(
			quantity.Fahrenheit(fahrenheit), humidity, quantity.StandardAtmosphere,
		)
		if err != nil {
			panic(err)
		}
		return a
	}
	shell, err := coldroom.Polyurethane.Conductance(quantity.SquareFeet(368), quantity.Inches(4))
	if err != nil {
		fmt.Println(err)
		return
	}
	floor, err := coldroom.Polyurethane.Conductance(quantity.SquareFeet(80), quantity.Inches(4))
	if err != nil {
		fmt.Println(err)
		return
	}
	box := coldroom.Box{
		Inside: air(36, 0.85),
		Panels: []coldroom.Panel{
			{Conductance: shell, Outside: quantity.Fahrenheit(85)},
			{Conductance: floor, Outside: quantity.Fahrenheit(60)},
		},
		Doors: []coldroom.Door{{
			Width: quantity.Inches(34), Height: quantity.Inches(76), Outside: air(80, 0.5),
			Open: 40 * time.Minute,
		}},
		Goods: []coldroom.Goods{{
			Mass: quantity.Pounds(800), Enters: quantity.Fahrenheit(50),
			SpecificHeat: quantity.BtuPerPoundRankine(0.9),
		}},
		People: 90 * time.Minute,
		Appliances: []coldroom.Appliance{
			{Power: quantity.Watts(60), On: 3 * time.Hour},
			{Power: quantity.Watts(130), On: 24 * time.Hour}, // fans of the evaporator
		},
	}
	load, err := box.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	usual := coldroom.Room{Application: coldroom.WalkInCooler}.Usual(nil)
	needs, err := usual.Needs(load.Total)
	if err != nil {
		fmt.Println(err)
		return
	}
	run, _ := usual.MostRun()
	fmt.Printf("takes in %.0f Btu/h, of it %.0f through the door\n",
		load.Total.BtuPerHour(), load.Doors.BtuPerHour())
	fmt.Printf("in %v of running the machine has to give %.0f Btu/h\n", run, needs.BtuPerHour())
	// Output:
	// takes in 4115 Btu/h, of it 2381 through the door
	// in 20h0m0s of running the machine has to give 4938 Btu/h
}

// How much to weigh into a lying receiver of 6 in by 24 in to raise its level by an inch.
func ExampleReceiver_Holds() {
	fluid, err := refrigerant.Lookup("R-448A")
	if err != nil {
		fmt.Println(err)
		return
	}
	r := coldroom.Receiver{Diameter: quantity.Inches(6), Length: quantity.Inches(24)}
	var at [2]quantity.Mass
	for i, level := range []float64{1, 2} {
		at[i], err = r.Holds(fluid, quantity.Fahrenheit(95), quantity.Inches(level))
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("%.1f lb\n", (at[1] - at[0]).Pounds())
	// Output:
	// 4.7 lb
}
