package quantity_test

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// Where the doubt of a subcooling comes from, and which reading to better first.
func ExampleBudget() {
	var b quantity.Budget[quantity.TemperatureDelta]
	b.Add("liquidPressure", quantity.FahrenheitDelta(0.3))
	b.Add("liquidLine", quantity.FahrenheitDelta(0.9))
	fmt.Println(b.Std().Format(quantity.IP))
	if most, ok := b.Largest(); ok {
		fmt.Println(most.Reading, most.Contribution.Format(quantity.IP))
	}
	// Output:
	// 0.9 °F
	// liquidLine 0.9 °F
}

// A form shows what is wrong at its field, without the name that the field shows already.
func ExampleRangeError_Problem() {
	err := &quantity.RangeError{
		Quantity: "outdoor dry bulb", Value: quantity.Fahrenheit(-90),
		Min:    quantity.Fahrenheit(-40),
		Advice: "read it again",
	}
	fmt.Println(err.Problem())
	// Output: -67.8 °C (-90.0 °F) is out of range; valid from -40.0 °C (-40.0 °F) up; read it again
}
