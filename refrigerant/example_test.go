package refrigerant_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// The suction gauge reads 68.5 psig at sea level and the clamp on the suction line
// at the service valve 52 °F.
func ExampleRefrigerant_Superheat() {
	r, _ := refrigerant.Lookup("R-22")
	p := quantity.PSIG(68.5).Absolute(quantity.StandardAtmosphere)
	superheat, err := r.Superheat(p, quantity.Fahrenheit(52))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f °F\n", superheat.Fahrenheit())
	// Output:
	// 12.0 °F
}

// The same gauge reading means a colder coil where the air is thin.
func ExampleRefrigerant_DewTemperature() {
	r, _ := refrigerant.Lookup("R-22")
	for _, feet := range []float64{0, 6000} {
		p := quantity.PSIG(68.5).Absolute(quantity.AtmosphereAt(quantity.Feet(feet)))
		t, err := r.DewTemperature(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%5.0f ft: %.1f °F\n", feet, t.Fahrenheit())
	}
	// Output:
	//     0 ft: 40.0 °F
	//  6000 ft: 37.9 °F
}

// A gas cooler on a hot day is above the critical pressure: there is nothing to
// subcool, and the error says so.
func ExampleRefrigerant_BubbleTemperature_supercritical() {
	r, _ := refrigerant.Lookup("R-744")
	_, err := r.BubbleTemperature(quantity.PSIA(1300))
	var out *refrigerant.RangeError
	fmt.Println(errors.As(err, &out))
	fmt.Println(out.Advice)
	// Output:
	// true
	// above the critical pressure nothing boils or condenses, and there is no subcooling or superheat: judge by the gas cooler outlet temperature and the unit's chart
}

// An ideal compressor from 10 °C of superheat at −10 °C to the pressure of 40 °C.
func ExampleRefrigerant_StateAtEntropy() {
	r, _ := refrigerant.Lookup("R-134a")
	low, _ := r.DewPressure(quantity.Celsius(-10))
	high, _ := r.DewPressure(quantity.Celsius(40))
	suction, err := r.State(low, quantity.Celsius(0))
	if err != nil {
		fmt.Println(err)
		return
	}
	discharge, err := r.StateAtEntropy(high, suction.Entropy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("discharge %.1f °C, work %.1f kJ/kg\n", discharge.Temperature.Celsius(),
		(discharge.Enthalpy - suction.Enthalpy).KilojoulesPerKilogram())
	// Output:
	// discharge 55.8 °C, work 35.6 kJ/kg
}

// Liquid at 35 °C expands to the pressure of −10 °C: part of it flashes.
func ExampleRefrigerant_StateAtEnthalpy() {
	r, _ := refrigerant.Lookup("R-134a")
	liquid, _ := r.SaturatedLiquid(quantity.Celsius(35))
	p, _ := r.DewPressure(quantity.Celsius(-10))
	s, err := r.StateAtEnthalpy(p, liquid.Enthalpy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %.0f %% vapor\n", s.Phase, 100*s.Quality)
	// Output:
	// two-phase, 30 % vapor
}

// How far a recovery cylinder of 47.7 lb water capacity may be filled.
func ExampleCylinder_SafeFill() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	f, err := c.SafeFill(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("stop at %.1f lb on the scale (%.1f lb of %v)\n", f.Gross.Pounds(), f.Net.Pounds(), r)
	fmt.Println(f.Rule)
	fmt.Println(f.Cautions[0])
	// Output:
	// stop at 69.5 lb on the scale (41.5 lb of R-22)
	// 80 % liquid by volume at 130 °F (common shipping rule; 49 CFR 173.304(b) forbids liquid-full at 131 °F)
	// weigh while filling and stop at the gross weight; an overfilled cylinder goes liquid-full as it warms and bursts
}

func ExampleCylinder_RoomFor() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	room, err := c.RoomFor(r, quantity.Pounds(61.2))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("holds %.1f lb, may take %.1f lb more\n", room.Contents.Pounds(), room.MayTake.Pounds())
	// Output:
	// holds 33.2 lb, may take 8.3 lb more
}

// Filled to the brim on a cold morning.
func ExampleCylinder_LiquidFullTemperature() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	t, err := c.LiquidFullTemperature(r, quantity.Pounds(54))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("liquid-full at %.0f °F\n", t.Fahrenheit())
	// Output:
	// liquid-full at 104 °F
}

// The cold line on the outside of the cylinder is at two fifths of its height.
func ExampleCylinder_ContentsFromLevel() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7)}
	r, _ := refrigerant.Lookup("R-22")
	m, err := c.ContentsFromLevel(r, 0.4, quantity.Fahrenheit(75))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("about %.0f lb\n", m.Pounds())
	// Output:
	// about 24 lb
}
