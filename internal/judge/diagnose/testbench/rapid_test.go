package testbench

import (
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func rapidTemperature(t *rapid.T, name string, low, high float64) quantity.Temperature {
	return quantity.Temperature(rapid.Float64Range(low, high).Draw(t, name))
}
