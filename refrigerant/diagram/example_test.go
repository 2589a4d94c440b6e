package diagram_test

import (
	"bytes"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// The cycle of an R-410A machine from four readings at 6,000 feet, sized for a phone.
func Example() {
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		fmt.Println(err)
		return
	}
	atmosphere := quantity.AtmosphereAt(quantity.Feet(6000))
	low, high := quantity.PSIG(120).Absolute(atmosphere), quantity.PSIG(340).Absolute(atmosphere)
	suction, err1 := r.State(low, quantity.Fahrenheit(52))
	discharge, err2 := r.State(high, quantity.Fahrenheit(160))
	liquid, err3 := r.State(high, quantity.Fahrenheit(95))
	inlet, err4 := r.StateAtEnthalpy(low, liquid.Enthalpy)
	for _, err := range []error{err1, err2, err3, err4} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	d, err := diagram.New(r, diagram.Options{Title: "Mountain library", Atmosphere: atmosphere})
	if err != nil {
		fmt.Println(err)
		return
	}
	err = d.AddCycle(
		diagram.Mark{Label: "suction", State: suction},
		diagram.Mark{Label: "discharge", State: discharge},
		diagram.Mark{Label: "liquid", State: liquid},
		diagram.Mark{Label: "evaporator inlet", State: inlet},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	var picture bytes.Buffer
	fmt.Println(d.SVG(&picture, diagram.Phone()))
	fmt.Println(d.Describe())
	// Output:
	// <nil>
	// R-410A, gauge pressures in an atmosphere of 11.8 psia. suction: 120.0 psig, 52.0 °F, superheat 12.6 °F, 185.02 Btu/lb. discharge: 340.0 psig, 160.0 °F, superheat 55.8 °F, 201.66 Btu/lb. liquid: 340.0 psig, 95.0 °F, subcooling 9.0 °F, 110.47 Btu/lb. evaporator inlet: 120.0 psig, 39.3 °F, quality 23 %, 110.47 Btu/lb.
}

// A diagram to hang on the wall: R-290 in metric units with every family of lines.
func ExampleNew() {
	r, err := refrigerant.Lookup("R-290")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := diagram.New(
		r, diagram.Options{System: quantity.SI, Isentropes: true, Qualities: true},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	var picture bytes.Buffer
	fmt.Println(d.PNG(&picture, diagram.Letter(), 96), picture.Len() > 0)
	// Output:
	// <nil> true
}

// A state off the cycle, and the path to it: liquid that goes on cooling in its line.
func ExampleDiagram_AddPath() {
	r, err := refrigerant.Lookup("R-454B")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := diagram.New(r, diagram.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	high := quantity.PSIA(330)
	condenser, err1 := r.State(high, quantity.Fahrenheit(92))
	valve, err2 := r.State(high, quantity.Fahrenheit(84))
	for _, err := range []error{err1, err2, d.AddState("condenser outlet", condenser),
		d.AddState("valve", valve), d.AddPath("liquid line", condenser, valve)} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Println(d.Describe())
	// Output:
	// R-454B, absolute pressures. condenser outlet: 330.0 psia, 92.0 °F, subcooling 10.8 °F, 110.60 Btu/lb. valve: 330.0 psia, 84.0 °F, subcooling 18.8 °F, 107.07 Btu/lb.
}
