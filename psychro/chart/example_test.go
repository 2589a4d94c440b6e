package chart_test

import (
	"bytes"
	"fmt"
	"image"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// A coil on a chart for 6,000 feet, sized for a phone.
func Example() {
	c, err := chart.New(chart.Options{Title: "Mountain library", Elevation: quantity.Feet(6000)})
	if err != nil {
		fmt.Println(err)
		return
	}
	entering, err := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(63), c.Pressure(),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	cooling, err := psychro.CoolAndDehumidify(entering, quantity.Fahrenheit(48), 0.2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, err := range []error{
		c.AddState("return", entering), c.AddState("supply", cooling.End),
		c.AddCoil("", entering, cooling.End),
	} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	var picture bytes.Buffer
	fmt.Println(c.SVG(&picture, chart.Phone()))
	fmt.Println(c.Describe())
	// Output:
	// <nil>
	// Moist air at 11.8 psia. return: dry bulb 78.0 °F, wet bulb 63.0 °F, relative humidity 47 %. supply: dry bulb 54.0 °F, wet bulb 51.4 °F, relative humidity 85 %. apparatus dew point: dry bulb 48.0 °F, wet bulb 48.0 °F, relative humidity 100 %.
}

// A pre-heater and a spray on an SI chart, as a picture for a sharp phone screen.
func ExampleChart_AddProcess() {
	c, err := chart.New(chart.Options{System: quantity.SI})
	if err != nil {
		fmt.Println(err)
		return
	}
	outdoor, err := psychro.FromRelativeHumidity(quantity.Celsius(5), 0.6, c.Pressure())
	if err != nil {
		fmt.Println(err)
		return
	}
	heating, err := psychro.SensibleHeatCool(outdoor, quantity.Celsius(30))
	if err != nil {
		fmt.Println(err)
		return
	}
	spray, err := psychro.HumidifyAdiabatic(heating.End, 0.85)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, err := range []error{
		c.AddState("outdoor", outdoor), c.AddState("supply", spray.End),
		c.AddProcess("heater", heating), c.AddProcess("spray", spray),
	} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	var picture bytes.Buffer
	if err := c.PNG(&picture, chart.Phone(), 192); err != nil {
		fmt.Println(err)
		return
	}
	config, format, err := image.DecodeConfig(&picture)
	fmt.Println(format, config.Width, err)
	fmt.Println(c.Describe())
	// Output:
	// png 780 <nil>
	// Moist air at 101.3 kPa. outdoor: dry bulb 5.0 °C, wet bulb 2.1 °C, relative humidity 60 %. supply: dry bulb 16.3 °C, wet bulb 13.8 °C, relative humidity 77 %.
}

// Two streams that mix lie on one line with what they become.
func ExampleChart_AddPath() {
	c, err := chart.New(chart.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	indoor, err := psychro.FromWetBulb(
		quantity.Fahrenheit(75), quantity.Fahrenheit(63), c.Pressure(),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	outdoor, err := psychro.FromWetBulb(
		quantity.Fahrenheit(95), quantity.Fahrenheit(76), c.Pressure(),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	mixed, err := psychro.Mix(
		psychro.Stream{Air: indoor, DryAir: quantity.KilogramsPerSecond(0.8)},
		psychro.Stream{Air: outdoor, DryAir: quantity.KilogramsPerSecond(0.2)})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, err := range []error{
		c.AddPath("", indoor, mixed.Air, outdoor), c.AddState("mixed", mixed.Air),
	} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	var picture bytes.Buffer
	fmt.Println(c.SVG(&picture, chart.Letter()))
	fmt.Println(c.Describe())
	// Output:
	// <nil>
	// Moist air at 14.7 psia. mixed: dry bulb 79.0 °F, wet bulb 65.9 °F, relative humidity 50 %.
}
