package airside_test

import (
	"fmt"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// A coil measured on a mild day tells what it will do with half the air.
func ExampleFitCoil() {
	p := quantity.StandardAtmosphere
	entering, _ := psychro.FromWetBulb(quantity.Fahrenheit(78), quantity.Fahrenheit(66), p)
	leaving, _ := psychro.FromWetBulb(quantity.Fahrenheit(55.5), quantity.Fahrenheit(53.5), p)
	coil, err := airside.FitCoil(entering, leaving, quantity.CFM(1150), quantity.Fahrenheit(41))
	if err != nil {
		fmt.Println(err)
		return
	}
	half, err := coil.Through(entering, quantity.CFM(575), quantity.Fahrenheit(32))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"split %s, surface from %s to %s, %.0f %% of the coil wet\n",
		half.Split.Format(quantity.IP), half.SurfaceEntering.Format(quantity.IP),
		half.Surface.Format(quantity.IP), 100*half.WetShare,
	)
	// Output:
	// split 34.1 °F, surface from 46.0 °F to 35.8 °F, 100 % of the coil wet
}

func ExampleFitCoilSplit() {
	entering, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(66), quantity.StandardAtmosphere,
	)
	coil, err := airside.FitCoilSplit(
		entering, quantity.Fahrenheit(56), quantity.CFM(1150), quantity.Fahrenheit(41),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(coil.AirSide.Format(quantity.IP))
	fmt.Println(coil.Assumed)
	// Output:
	// 1953 Btu/(h·°F)
	// assumed.sides
}

// The same CFM is fewer pounds of air at altitude, and the split is larger with
// nothing wrong.
func ExampleRatedCoil() {
	coil, err := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, feet := range []float64{0, 6000} {
		p := quantity.AtmosphereAt(quantity.Feet(feet))
		entering, _ := psychro.FromWetBulb(quantity.Fahrenheit(77), quantity.Fahrenheit(60), p)
		pass, err := coil.Through(entering, quantity.CFM(1200), quantity.Fahrenheit(40))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%4.0f ft: split %s, total %s\n", feet, pass.Split.Format(quantity.IP),
			pass.Capacity.Total.Value.Format(quantity.IP),
		)
	}
	// Output:
	// 0 ft: split 23.0 °F, total 30902 Btu/h
	// 6000 ft: split 23.9 °F, total 29461 Btu/h
}

func ExampleBypassOf() {
	p := quantity.StandardAtmosphere
	entering, _ := psychro.FromWetBulb(quantity.Fahrenheit(80), quantity.Fahrenheit(67), p)
	leaving, _ := psychro.FromWetBulb(quantity.Fahrenheit(58), quantity.Fahrenheit(56), p)
	b, err := airside.BypassOf(entering, leaving)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"apparatus dew point %s, bypass %.2f; with a quarter less air %.2f\n",
		b.ApparatusDewPoint.Value.Format(quantity.IP), b.Factor, b.At(0.75),
	)
	// Output:
	// apparatus dew point 53.3 °F, bypass 0.17; with a quarter less air 0.15
}

func ExampleCheckReturn() {
	std := quantity.FahrenheitDelta(0.6)
	evaporating := quantity.Fahrenheit(40).PlusMinus(std)
	c, err := airside.CheckReturn(airside.ReturnReadings{
		Return:      quantity.Fahrenheit(65).PlusMinus(std),
		Supply:      quantity.Fahrenheit(53).PlusMinus(std),
		Evaporating: &evaporating,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(
		c.Suspect, c.DryBulbLow.Format(quantity.IP), "to", c.DryBulbHigh.Format(quantity.IP),
	)
	// Output: true 70.0 °F to 70.9 °F
}
