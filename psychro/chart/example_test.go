package chart_test

import (
	"bytes"
	"fmt"

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
	entering, err := psychro.FromWetBulb(quantity.Fahrenheit(78), quantity.Fahrenheit(63), c.Pressure())
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
		c.AddState("return", entering),
		c.AddState("supply", cooling.End),
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
