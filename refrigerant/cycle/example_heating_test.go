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
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
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
		c := cycle.HeatingRatingConditions()
		c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
		o, err := heats.Solve(c, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f °F: evaporating %.0f °F, condensing %.0f °F, supply %.0f °F, %.0f "+
			"kBtu/h, COP %.1f\n",
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
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
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

// What a machine will do at 17 °F, by what was read of it at 44 °F.
func ExampleReversed_Fit() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
	if err != nil {
		fmt.Println(err)
		return
	}
	ordinary, err := s.Reversed(cycle.HeatingSpec{})
	if err != nil {
		fmt.Println(err)
		return
	}
	today := cycle.HeatingConditions{
		OutdoorDryBulb: quantity.Fahrenheit(44), ReturnDryBulb: quantity.Fahrenheit(70),
	}
	read := func(f float64) *quantity.Uncertain[quantity.Temperature] {
		return new(quantity.Fahrenheit(f).PlusMinus(quantity.FahrenheitDelta(0.7)))
	}
	this, err := ordinary.Fit(today, cycle.HeatingReadings{
		Evaporating: read(24), Condensing: read(108), Supply: read(97),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	cold := today
	cold.OutdoorDryBulb = quantity.Fahrenheit(17)
	for _, m := range []*cycle.Reversed{ordinary, this} {
		o, err := m.Solve(cold, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f kBtu/h, supply %.0f °F\n", o.Capacity.BtuPerHour()/1000,
			o.Supply.Fahrenheit())
	}
	// Output:
	// 28 kBtu/h, supply 92 °F
	// 26 kBtu/h, supply 90 °F
}

// How sure is that: of a machine that nobody has read, and of one that was read today.
func ExampleReversed_Predict() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
	if err != nil {
		fmt.Println(err)
		return
	}
	ordinary, err := s.Reversed(cycle.HeatingSpec{})
	if err != nil {
		fmt.Println(err)
		return
	}
	read := func(f float64) *quantity.Uncertain[quantity.Temperature] {
		return new(quantity.Fahrenheit(f).PlusMinus(quantity.FahrenheitDelta(0.7)))
	}
	today := cycle.HeatingConditions{
		OutdoorDryBulb: quantity.Fahrenheit(44), ReturnDryBulb: quantity.Fahrenheit(70),
	}
	this, err := ordinary.Fit(today, cycle.HeatingReadings{
		Evaporating: read(24), Condensing: read(108), Supply: read(97),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	cold := today
	cold.OutdoorDryBulb = quantity.Fahrenheit(17)
	for _, m := range []*cycle.Reversed{ordinary, this} {
		p, err := m.Predict(cold, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		kilo := p.Capacity.Value.BtuPerHour() / 1000
		fmt.Printf("%.0f kBtu/h ± %.0f %%\n", kilo, 100*p.Capacity.Std/float64(p.Capacity.Value))
	}
	// Output:
	// 28 kBtu/h ± 9 %
	// 26 kBtu/h ± 3 %
}
