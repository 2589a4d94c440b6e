package psychro_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// ASHRAE Handbook Fundamentals (2017), chapter 1, Example 1 (from memory):
// moist air at 40 °C dry bulb, 20 °C wet bulb and 101.325 kPa. The example
// reads W = 6.5 g/kg, h = 56.7 kJ/kg, dew point 7 °C, 14 % and 0.896 m³/kg from
// the chart.
func ExampleFromWetBulb() {
	a, err := psychro.FromWetBulb(quantity.Celsius(40), quantity.Celsius(20), quantity.Kilopascals(101.325))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("humidity ratio    %.1f g/kg\n", 1000*a.HumidityRatio())
	fmt.Printf("enthalpy          %.1f kJ/kg\n", a.Enthalpy().KilojoulesPerKilogram())
	fmt.Printf("dew point         %.1f °C\n", a.DewPoint().Celsius())
	fmt.Printf("relative humidity %.0f %%\n", 100*a.RelativeHumidity())
	fmt.Printf("specific volume   %.3f m³/kg\n", a.SpecificVolume().CubicMetersPerKilogram())
	// Output:
	// humidity ratio    6.4 g/kg
	// enthalpy          56.7 kJ/kg
	// dew point         7.4 °C
	// relative humidity 14 %
	// specific volume   0.896 m³/kg
}

// The same two thermometers mean drier air at sea level than in the mountains.
func ExampleFromWetBulb_altitude() {
	for _, elevation := range []quantity.Length{0, quantity.Feet(6000)} {
		a, err := psychro.FromWetBulb(quantity.Fahrenheit(80), quantity.Fahrenheit(62), quantity.AtmosphereAt(elevation))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%4.0f ft: %.0f grains/lb, %.1f Btu/lb\n", elevation.Feet(), 7000*a.HumidityRatio(), a.EnthalpyIP().BtuPerPound())
	}
	// Output:
	//    0 ft: 54 grains/lb, 27.7 Btu/lb
	// 6000 ft: 75 grains/lb, 31.0 Btu/lb
}

func ExampleFromWetBulb_swapped() {
	_, err := psychro.FromWetBulb(quantity.Celsius(17), quantity.Celsius(27), quantity.StandardAtmosphere)
	var re *psychro.RangeError
	fmt.Println(errors.As(err, &re))
	fmt.Println(err)
	// Output:
	// true
	// wet bulb: 27.0 °C (80.6 °F) is out of range; valid up to 17.0 °C (62.6 °F); evaporation cools, so a wet bulb is never above the dry bulb: are the two readings swapped?
}
