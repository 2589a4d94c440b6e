package cycle_test

import (
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A heat pump of three tons gives less the colder it is outdoors, and needs more for it.
func ExampleReversed_Solve() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := cycle.Residential(r, quantity.Tons(3), refrigerant.TXV)
	if err != nil {
		fmt.Println(err)
		return
	}
	heats, err := s.Reversed(cycle.HeatingSpec{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, outdoor := range []float64{47, 17} {
		c := cycle.HeatingRating()
		c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
		o, err := heats.Solve(c, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f °F: evaporating %.0f °F, condensing %.0f °F, supply %.0f °F, %.0f kBtu/h, COP %.1f\n",
			outdoor, o.Evaporating.Fahrenheit(), o.Condensing.Fahrenheit(), o.Supply.Fahrenheit(),
			o.Capacity.BtuPerHour()/1000, o.COP)
	}
	// Output:
	// 47 °F: evaporating 31 °F, condensing 113 °F, supply 101 °F, 41 kBtu/h, COP 3.4
	// 17 °F: evaporating 6 °F, condensing 103 °F, supply 92 °F, 28 kBtu/h, COP 2.7
}

// Reversed puts the reversing valve over: what was the outdoor coil's heat comes indoors.
func ExampleSystem_Reversed() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := cycle.Residential(r, quantity.Tons(3), refrigerant.TXV)
	if err != nil {
		fmt.Println(err)
		return
	}
	heats, err := s.Reversed(cycle.HeatingSpec{Subcooling: quantity.FahrenheitDelta(15)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("indoor air", heats.Airflow().Format(quantity.IP))
	// Output: indoor air 1200 CFM
}
