package quantity_test

import (
	"encoding/json"
	"flag"
	"fmt"

	"github.com/satline/satline/quantity"
)

// A number without a unit is refused, in text and in JSON.
func ExampleParseTemperature() {
	for _, text := range []string{"71 °F", "71F", "16.7 C", "71"} {
		t, err := quantity.ParseTemperature(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(t.Format(quantity.IP))
	}
	// Output:
	// 71.0 °F
	// 71.0 °F
	// 62.1 °F
	// temperature "71": the unit is missing; write a number and one of °C, °F, K
}

func ExampleTemperature_Format() {
	t := quantity.Fahrenheit(71)
	fmt.Println(t.Format(quantity.IP), "is", t.Format(quantity.SI))
	// Output: 71.0 °F is 21.7 °C
}

func ExampleTemperature_PlusMinus() {
	wetBulb := quantity.Fahrenheit(71).PlusMinus(quantity.FahrenheitDelta(0.7))
	low, high := wetBulb.Interval(2)
	fmt.Println(wetBulb.Format(quantity.IP), "lies between", low.Format(quantity.IP), "and",
		high.Format(quantity.IP))
	// Output: 71.0 °F ± 0.7 °F lies between 69.6 °F and 72.4 °F
}

// The same pressure, on a gauge at sea level and on one at 6,000 ft.
func ExamplePressure_Gauge() {
	p := quantity.PSIA(83.2)
	fmt.Printf("%.1f psig\n", p.Gauge(quantity.StandardAtmosphere).PSIG())
	fmt.Printf("%.1f psig\n", p.Gauge(quantity.AtmosphereAt(quantity.Feet(6000))).PSIG())
	// Output:
	// 68.5 psig
	// 71.4 psig
}

func ExampleTons() {
	p := quantity.Tons(3)
	fmt.Printf("%.0f Btu/h, %.2f kW\n", p.BtuPerHour(), p.Watts()/1000)
	// Output: 36000 Btu/h, 10.55 kW
}

func ExampleMicrons() {
	fmt.Printf("%.1f Pa\n", quantity.Microns(500).Pascals())
	// Output: 66.7 Pa
}

// Every quantity goes into JSON as text with its unit, and serves as a flag.
func ExampleTemperature_MarshalText() {
	text, err := json.Marshal(struct {
		Supply quantity.Temperature    `json:"supply"`
		Charge quantity.Mass           `json:"charge"`
		Static quantity.StaticPressure `json:"static,omitzero"`
	}{Supply: quantity.Celsius(12.5), Charge: quantity.Kilograms(2.75)})
	fmt.Println(string(text), err)

	flags := flag.NewFlagSet("visit", flag.ContinueOnError)
	var outdoor quantity.Temperature
	flags.TextVar(&outdoor, "outdoor", quantity.Fahrenheit(95), "outdoor dry bulb")
	err = flags.Parse([]string{"-outdoor", "82 °F"})
	fmt.Println(outdoor.Format(quantity.IP), err)
	// Output:
	// {"supply":"12.5 °C","charge":"2.75 kg"} <nil>
	// 82.0 °F <nil>
}

// A data sheet states limits: within 1 °F is 0.6 °F as a standard uncertainty.
func ExampleUncertain_Rectangular() {
	reading := quantity.Fahrenheit(71).PlusMinus(quantity.FahrenheitDelta(1)).Rectangular()
	fmt.Println(reading.Format(quantity.IP))
	// Output: 71.0 °F ± 0.6 °F
}

// The line at which a superheat of 12 °F is right.
func ExampleTemperature_Add() {
	saturated := quantity.Fahrenheit(38.6)
	fmt.Println(saturated.Add(quantity.FahrenheitDelta(12)).Format(quantity.IP))
	// Output: 50.6 °F
}

func ExampleUncertain_Interval() {
	low, high := quantity.PSIG(118).PlusMinus(quantity.PSIG(0.6)).Interval(2)
	fmt.Println(low.Format(quantity.IP), "to", high.Format(quantity.IP))
	// Output: 116.8 psig to 119.2 psig
}
