package quantity_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
)

func ExampleFahrenheit() {
	wetBulb := quantity.Fahrenheit(71)
	fmt.Printf("%.1f °C\n", wetBulb.Celsius())
	// Output: 21.7 °C
}

func ExampleTemperature_Sub() {
	line, saturated := quantity.Fahrenheit(56.5), quantity.Fahrenheit(38.6)
	superheat := line.Sub(saturated)
	fmt.Println(superheat.Format(quantity.IP))
	// Output: 17.9 °F
}

// The same gauge reading is a lower absolute pressure on a mountain.
func ExampleGaugePressure_Absolute() {
	reading := quantity.PSIG(118)
	for _, elevation := range []quantity.Length{0, quantity.Feet(6000)} {
		atm := quantity.AtmosphereAt(elevation)
		fmt.Printf("%s: %.1f psia\n", elevation.Format(quantity.IP), reading.Absolute(atm).PSIA())
	}
	// Output:
	// 0.0 ft: 132.7 psia
	// 6000.0 ft: 129.8 psia
}

func ExampleParseGaugePressure() {
	p, err := quantity.ParseGaugePressure("68.5 psig")
	fmt.Println(p, err)
	_, err = quantity.ParseGaugePressure("68.5")
	fmt.Println(err)
	// Output:
	// 472.3 kPag <nil>
	// gauge pressure "68.5": the unit is missing; write a number and one of psig, kPag, barg, inHg vac, Pag
}

func ExampleParseMass() {
	m, _ := quantity.ParseMass("6 lb 4 oz")
	fmt.Printf("%.2f lb = %.3f kg\n", m.Pounds(), m.Kilograms())
	// Output: 6.25 lb = 2.835 kg
}

func ExampleUncertain() {
	var reading struct {
		WetBulb quantity.Uncertain[quantity.Temperature] `json:"wetBulb"`
	}
	err := json.Unmarshal([]byte(`{"wetBulb": "71 °F ± 0.6 °F"}`), &reading)
	fmt.Println(reading.WetBulb.Format(quantity.IP), err)
	low, high := reading.WetBulb.Interval(2)
	fmt.Println(low.Format(quantity.IP), "to", high.Format(quantity.IP))
	// Output:
	// 71.0 °F ± 0.6 °F <nil>
	// 69.8 °F to 72.2 °F
}

func ExampleRangeError() {
	var err error = &quantity.RangeError{
		Quantity: "outdoor dry bulb",
		Value:    quantity.Fahrenheit(40),
		Min:      quantity.Fahrenheit(55),
		Max:      quantity.Fahrenheit(115),
		Advice:   "weigh the charge in instead",
	}
	var re *quantity.RangeError
	fmt.Println(errors.As(err, &re), re.Value)
	// Output: true 4.4 °C
}

func ExampleInBoth() {
	fmt.Println(quantity.InBoth(quantity.Fahrenheit(71)))
	// Output: 21.7 °C (71.0 °F)
}

func ExampleAtmosphereAt() {
	fmt.Printf("%.2f psia\n", quantity.AtmosphereAt(quantity.Feet(6000)).PSIA())
	// Output: 11.78 psia
}

// What is no name of an enumeration is told apart from other errors, with what would do.
func ExampleNameError() {
	var s quantity.System
	wrong, ok := errors.AsType[*quantity.NameError](s.UnmarshalText([]byte("metric")))
	fmt.Println(ok, wrong.Given, wrong.Known)
	// Output: true metric [IP SI]
}

func ExampleElevationOf() {
	fmt.Println(quantity.ElevationOf(quantity.Kilopascals(81.2)).Format(quantity.IP))
	// Output: 5999.8 ft
}
