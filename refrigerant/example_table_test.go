package refrigerant_test

import (
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A program that asks for many states makes the table once.
func ExampleStateTable_At() {
	r, err := refrigerant.Lookup("R-454B")
	if err != nil {
		fmt.Println(err)
		return
	}
	table, err := r.StateTable()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, celsius := range []float64{10, 20, 30} {
		s, err := table.At(quantity.Kilopascals(800), quantity.Celsius(celsius))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(s.Phase, s.Density, s.Enthalpy, s.Entropy)
	}
	// Output:
	// vapor 24.757 kg/m³ 470.38 kJ/kg 1.9825 kJ/(kg·K)
	// vapor 23.378 kg/m³ 481.17 kJ/kg 2.0200 kJ/(kg·K)
	// vapor 22.211 kg/m³ 491.57 kJ/kg 2.0549 kJ/(kg·K)
}

// How far the table goes.
func ExampleStateTable_Range() {
	r, _ := refrigerant.Lookup("R-410A")
	table, err := r.StateTable()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(table.Range())
	// Output:
	// 70.8 kPa 4411.1 kPa
}

// An ideal compressor: from its inlet to the pressure of the condenser at equal entropy.
func ExampleStateTable_Isobar() {
	r, err := refrigerant.Lookup("R-32")
	if err != nil {
		fmt.Println(err)
		return
	}
	table, err := r.StateTable()
	if err != nil {
		fmt.Println(err)
		return
	}
	inlet, err := table.At(quantity.Kilopascals(900), quantity.Celsius(12))
	if err != nil {
		fmt.Println(err)
		return
	}
	condenser, err := table.Isobar(quantity.Kilopascals(2800))
	if err != nil {
		fmt.Println(err)
		return
	}
	outlet, err := condenser.AtEntropy(inlet.Entropy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f °C, %.1f kJ/kg of work; it condenses at %.1f °C\n", outlet.Temperature.Celsius(),
		(outlet.Enthalpy - inlet.Enthalpy).KilojoulesPerKilogram(),
		condenser.DewTemperature().Celsius(),
	)
	// Output:
	// 86.4 °C, 48.5 kJ/kg of work; it condenses at 45.1 °C
}
