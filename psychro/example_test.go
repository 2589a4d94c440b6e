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
	a, err := psychro.FromWetBulb(
		quantity.Celsius(40), quantity.Celsius(20), quantity.Kilopascals(101.325),
	)
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
		a, err := psychro.FromWetBulb(
			quantity.Fahrenheit(83), quantity.Fahrenheit(69), quantity.AtmosphereAt(elevation),
		)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%4.0f ft: %.0f grains/lb, %.1f Btu/lb\n", elevation.Feet(), 7000*a.HumidityRatio(),
			a.EnthalpyIP().BtuPerPound(),
		)
	}
	// Output:
	//    0 ft: 84 grains/lb, 33.1 Btu/lb
	// 6000 ft: 111 grains/lb, 37.3 Btu/lb
}

func ExampleFromWetBulb_swapped() {
	_, err := psychro.FromWetBulb(
		quantity.Celsius(17), quantity.Celsius(27), quantity.StandardAtmosphere,
	)
	var re *psychro.RangeError
	fmt.Println(errors.As(err, &re))
	fmt.Println(err)
	// Output:
	// true
	// wet bulb: 27.0 °C (80.6 °F) is out of range; valid up to 17.0 °C (62.6 °F); evaporation cools, so a wet bulb is never above the dry bulb: are the two readings swapped?
}

// ASHRAE Handbook Fundamentals (2017), chapter 1, table 2: saturated air at
// 101.325 kPa. The table prints 0.0006373, 0.005425, 0.020173 and 0.086863 kg/kg,
// and −18.542, 18.639, 76.504 and 275.353 kJ/kg.
func ExampleSaturated_table2() {
	for _, c := range []float64{-20, 5, 25, 50} {
		a, err := psychro.RealGas.Saturated(quantity.Celsius(c), quantity.StandardAtmosphere)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%3.0f °C %.7f %8.3f\n", c, a.HumidityRatio(), a.Enthalpy().KilojoulesPerKilogram(),
		)
	}
	// Output:
	// -20 °C 0.0006373  -18.542
	//   5 °C 0.0054247   18.640
	//  25 °C 0.0201734   76.505
	//  50 °C 0.0868629  275.353
}

// ASHRAE Handbook Fundamentals (2017), chapter 1, table 3: water at saturation.
// The table prints 103.24, 872.6, 3169.7, 12351.3 and 101418.0 Pa.
func ExampleSaturation_Pressure_table3() {
	for _, c := range []float64{-20, 5, 25, 50, 100} {
		p, err := psychro.IF97.Pressure(quantity.Celsius(c))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f °C %9.2f Pa\n", c, p.Pascals())
	}
	// Output:
	// -20 °C    103.24 Pa
	//   5 °C    872.57 Pa
	//  25 °C   3169.75 Pa
	//  50 °C  12351.27 Pa
	// 100 °C 101417.98 Pa
}

func ExampleFromDewPoint() {
	a, err := psychro.FromDewPoint(
		quantity.Fahrenheit(75), quantity.Fahrenheit(55), quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f %%\n", 100*a.RelativeHumidity())
	// Output: 50 %
}

func ExampleFromRelativeHumidity() {
	a, err := psychro.FromRelativeHumidity(
		quantity.Fahrenheit(75), 0.5, quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"wet bulb %.1f °F, dew point %.1f °F\n", a.WetBulb().Fahrenheit(),
		a.DewPoint().Fahrenheit(),
	)
	_, err = psychro.FromRelativeHumidity(quantity.Fahrenheit(75), 50, quantity.StandardAtmosphere)
	fmt.Println(err)
	// Output:
	// wet bulb 62.6 °F, dew point 55.1 °F
	// relative humidity: 50 is out of range; valid from 0 to 1; it is a ratio: 50 % is 0.5
}

// Supply air of a known humidity, warmed by the duct.
func ExampleFromHumidityRatio() {
	p := quantity.StandardAtmosphere
	supply, err := psychro.FromWetBulb(quantity.Fahrenheit(55), quantity.Fahrenheit(54), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	register, err := psychro.FromHumidityRatio(quantity.Fahrenheit(58), supply.HumidityRatio(), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.0f %% at the coil, %.0f %% at the register\n", 100*supply.RelativeHumidity(),
		100*register.RelativeHumidity(),
	)
	// Output: 94 % at the coil, 84 % at the register
}

func ExampleFromEnthalpy() {
	a, err := psychro.FromEnthalpy(
		quantity.Celsius(27), quantity.KilojoulesPerKilogram(55), quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4f kg/kg\n", a.HumidityRatio())
	// Output: 0.0109 kg/kg
}

func ExampleFromWetBulbAndDewPoint() {
	a, err := psychro.FromWetBulbAndDewPoint(
		quantity.Celsius(18), quantity.Celsius(14), quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 25.1 °C dry bulb, 18.0 °C wet bulb, 101.3 kPa <nil>
}

func ExampleFromWetBulbAndRelativeHumidity() {
	a, err := psychro.FromWetBulbAndRelativeHumidity(
		quantity.Celsius(18), 0.5, quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 25.1 °C dry bulb, 18.0 °C wet bulb, 101.3 kPa <nil>
}

func ExampleFromWetBulbAndHumidityRatio() {
	a, err := psychro.FromWetBulbAndHumidityRatio(
		quantity.Celsius(18), 0.010, quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 25.0 °C dry bulb, 18.0 °C wet bulb, 101.3 kPa <nil>
}

func ExampleFromDewPointAndRelativeHumidity() {
	a, err := psychro.FromDewPointAndRelativeHumidity(
		quantity.Celsius(14), 0.5, quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 25.1 °C dry bulb, 18.0 °C wet bulb, 101.3 kPa <nil>
}

func ExampleFromHumidityRatioAndRelativeHumidity() {
	a, err := psychro.FromHumidityRatioAndRelativeHumidity(0.010, 0.5, quantity.StandardAtmosphere)
	fmt.Println(a, err)
	// Output: 25.2 °C dry bulb, 18.1 °C wet bulb, 101.3 kPa <nil>
}

func ExampleFromDewPointAndEnthalpy() {
	a, err := psychro.FromDewPointAndEnthalpy(
		quantity.Celsius(14), quantity.KilojoulesPerKilogram(51), quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 25.4 °C dry bulb, 18.1 °C wet bulb, 101.3 kPa <nil>
}

// The state at the end of a balance.
func ExampleFromEnthalpyAndHumidityRatio() {
	a, err := psychro.FromEnthalpyAndHumidityRatio(
		quantity.KilojoulesPerKilogram(50), 0.010, quantity.Kilopascals(84),
	)
	fmt.Println(a, err)
	// Output: 24.4 °C dry bulb, 15.8 °C wet bulb, 84.0 kPa <nil>
}

// Saturated air of a known enthalpy: the least that a coil must reach.
func ExampleFromEnthalpyAndRelativeHumidity() {
	a, err := psychro.FromEnthalpyAndRelativeHumidity(
		quantity.KilojoulesPerKilogram(35), 1, quantity.StandardAtmosphere,
	)
	fmt.Println(a, err)
	// Output: 12.4 °C dry bulb, 12.4 °C wet bulb, 101.3 kPa <nil>
}

// Near freezing one air has two wet bulbs, and what the wick is decides.
func ExampleAir_IcedWetBulb() {
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(5), 0.35, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	iced, ok := a.IcedWetBulb()
	fmt.Printf("water %.2f °C, ice %.2f °C %v\n", a.WetBulb().Celsius(), iced.Celsius(), ok)
	// Output: water 0.18 °C, ice -0.17 °C true
}

func ExampleAir_Format() {
	a, err := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	fmt.Println(a.Format(quantity.IP), err)
	// Output: 80.0 °F dry bulb, 67.0 °F wet bulb, 14.7 psia <nil>
}

// What a sling psychrometer shows in air of known humidity.
func ExamplePsychrometer_WetBulbIn() {
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(25), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	shown, err := psychro.Sling().WetBulbIn(a)
	fmt.Printf(
		"%.2f °C, and thermodynamic %.2f °C %v\n", shown.Celsius(), a.WetBulb().Celsius(), err,
	)
	// Output: 17.99 °C, and thermodynamic 17.89 °C <nil>
}

// A supply temperature read with the wet sock still on the probe.
func ExamplePsychrometer_CoilDoubts() {
	reading := func(dry, wet float64) psychro.Reading {
		return psychro.Reading{
			DryBulb:  quantity.Fahrenheit(dry).PlusMinus(quantity.FahrenheitDelta(0.5)),
			WetBulb:  quantity.Fahrenheit(wet).PlusMinus(quantity.FahrenheitDelta(0.5)),
			Pressure: quantity.StandardAtmosphere.PlusMinus(0),
		}
	}
	before, after := reading(76, 63), reading(54.1, 54)
	for _, d := range psychro.Sling().CoilDoubts(before, after, quantity.Fahrenheit(43)) {
		fmt.Println(d.Says().Code, d.Reading.Format(quantity.IP), d.Against.Format(quantity.IP))
		fmt.Println(d.Mend().Code)
	}
	// Output:
	// doubt.supply-reads-saturated 54.1 °F 54.0 °F
	// doubt.supply-reads-saturated.mend
}

// The rest of what one state of air answers.
func ExampleAir_DegreeOfSaturation() {
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(25), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"degree of saturation %.3f, relative humidity %.3f\n", a.DegreeOfSaturation(),
		a.RelativeHumidity(),
	)
	fmt.Println("vapor pressure", a.VaporPressure())
	fmt.Println("density of the mixture", a.Density())
	fmt.Println("volume per kilogram of dry air", a.SpecificVolume())
	// Output:
	// degree of saturation 0.492, relative humidity 0.500
	// vapor pressure 1.585 kPa
	// density of the mixture 1.177 kg/m³
	// volume per kilogram of dry air 0.8580 m³/kg
}

// Water boils where its saturation pressure meets the pressure of the place.
func ExampleSaturation_Temperature() {
	for _, feet := range []float64{0, 6000} {
		t, err := psychro.IAPWS.Temperature(quantity.AtmosphereAt(quantity.Feet(feet)))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%4.0f ft: %.1f °F\n", feet, t.Fahrenheit())
	}
	// Output:
	//    0 ft: 212.0 °F
	// 6000 ft: 201.0 °F
}

// The zero Air is none: one that was left out, say.
func ExampleAir_IsValid() {
	var room psychro.Air
	fmt.Println(room.IsValid(), room.RelativeHumidity())
	room, err := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(66), quantity.StandardAtmosphere,
	)
	fmt.Println(room.IsValid(), err)
	// Output:
	// false 0
	// true <nil>
}

func ExampleAir_WetBulbIced() {
	for _, wetBulb := range []quantity.Temperature{quantity.Celsius(2), quantity.Celsius(-2)} {
		a, err := psychro.FromWetBulb(quantity.Celsius(5), wetBulb, quantity.StandardAtmosphere)
		fmt.Println(a.WetBulb(), a.WetBulbIced(), err)
	}
	// Output:
	// 2.0 °C false <nil>
	// -2.0 °C true <nil>
}

// Inch-pound tables count the enthalpy of the air from 0 °F; this is what they print.
func ExampleAir_EnthalpyIP() {
	a, err := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	fmt.Println(a.EnthalpyIP().Format(quantity.IP), err)
	// Output: 31.47 Btu/lb <nil>
}
