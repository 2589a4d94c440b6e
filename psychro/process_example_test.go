package psychro_test

import (
	"fmt"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// The worked examples of ASHRAE Handbook Fundamentals (2017), chapter 1, are
// given from memory. They are read from the chart, whose lines are of real air,
// so the last digit may differ.

// Example 2 (from memory): 10 m³/s of moist air, saturated at 2 °C, is heated to
// 40 °C. The chart gives 12.76 kg/s of dry air and 491 kW.
func ExampleSensibleHeatCool() {
	air, err := psychro.Saturated(quantity.Celsius(2), quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	heating, err := psychro.SensibleHeatCool(air, quantity.Celsius(40))
	if err != nil {
		fmt.Println(err)
		return
	}
	flow := air.DryAirFlow(10)
	fmt.Printf(
		"%.2f kg/s of dry air, %.0f kW\n", flow.KilogramsPerSecond(),
		heating.HeatRate(flow).Kilowatts(),
	)
	// Output: 12.74 kg/s of dry air, 491 kW
}

// Example 3 (from memory): 5 m³/s of moist air of 30 °C and 50 % relative
// humidity leaves a coil saturated at 10 °C. The chart gives 5.70 kg/s of dry
// air, 0.032 kg/s of condensate and 197 kW.
func ExampleCoolAndDehumidify() {
	air, err := psychro.FromRelativeHumidity(quantity.Celsius(30), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	cooling, err := psychro.CoolAndDehumidify(air, quantity.Celsius(10), 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	flow := air.DryAirFlow(5)
	fmt.Printf("%.2f kg/s of dry air\n", flow.KilogramsPerSecond())
	fmt.Printf("%.3f kg/s of condensate\n", -cooling.WaterRate(flow).KilogramsPerSecond())
	fmt.Printf("%.0f kW\n", -cooling.HeatRate(flow).Kilowatts())
	// Output:
	// 5.70 kg/s of dry air
	// 0.032 kg/s of condensate
	// 198 kW
}

// A coil that bypasses a fifth of the air, and what the two states tell of it.
func ExampleApparatusDewPoint() {
	p := quantity.AtmosphereAt(quantity.Feet(2000))
	entering, err := psychro.FromWetBulb(quantity.Fahrenheit(80), quantity.Fahrenheit(67), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	coil, err := psychro.CoolAndDehumidify(entering, quantity.Fahrenheit(50), 0.2)
	if err != nil {
		fmt.Println(err)
		return
	}
	leaving := coil.End
	fmt.Printf(
		"leaves at %.1f °F dry bulb, %.1f °F wet bulb\n", leaving.DryBulb().Fahrenheit(),
		leaving.WetBulb().Fahrenheit(),
	)
	adp, bypass, err := psychro.ApparatusDewPoint(entering, leaving)
	fmt.Printf("apparatus dew point %.1f °F, bypass %.2f, %v\n", adp.Fahrenheit(), bypass, err)
	// Output:
	// leaves at 56.0 °F dry bulb, 53.9 °F wet bulb
	// apparatus dew point 50.0 °F, bypass 0.20, <nil>
}

// Example 4 (from memory): 2 m³/s of outdoor air of 4 °C dry bulb and 2 °C wet
// bulb meet 6.25 m³/s of recirculated air of 25 °C and 50 %. The chart gives
// 19.5 °C dry bulb and 14.6 °C wet bulb.
func ExampleMix() {
	p := quantity.StandardAtmosphere
	outdoor, err := psychro.FromWetBulb(quantity.Celsius(4), quantity.Celsius(2), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	indoor, err := psychro.FromRelativeHumidity(quantity.Celsius(25), 0.5, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	mixed, err := psychro.Mix(
		psychro.Stream{Air: outdoor, DryAir: outdoor.DryAirFlow(2)},
		psychro.Stream{Air: indoor, DryAir: indoor.DryAirFlow(6.25)},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f °C dry bulb, %.1f °C wet bulb\n", mixed.Air.DryBulb().Celsius(),
		mixed.Air.WetBulb().Celsius(),
	)
	// Output: 19.6 °C dry bulb, 14.6 °C wet bulb
}

// Example 5 (from memory): 100 kg/min of dry air, of 20 °C dry bulb and 8 °C wet
// bulb, is brought to a dew point of 13 °C with saturated steam of 110 °C, whose
// enthalpy is 2691 kJ/kg. The chart gives 21 °C and 45.6 kg/h of steam.
func ExampleAddWater() {
	p := quantity.StandardAtmosphere
	air, err := psychro.FromWetBulb(quantity.Celsius(20), quantity.Celsius(8), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	wanted, err := psychro.Saturated(quantity.Celsius(13), p)
	if err != nil {
		fmt.Println(err)
		return
	}
	steam, err := psychro.AddWater(
		air, wanted.HumidityRatio()-air.HumidityRatio(), quantity.KilojoulesPerKilogram(2691),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f °C, %.1f kg/h of steam\n", steam.End.DryBulb().Celsius(),
		3600*steam.WaterRate(100.0/60).KilogramsPerSecond(),
	)
	// Output: 21.1 °C, 45.3 kg/h of steam
}

// The data of Example 6 (from memory; its printed result is not recalled well
// enough to quote): a room is to be kept at 25 °C dry bulb and 19 °C wet bulb.
// It gives off 9 kW of heat and 0.0015 kg/s of vapor of 2555.5 kJ/kg. Air is
// supplied at 15 °C.
func ExampleSupplyAir() {
	room, err := psychro.FromWetBulb(
		quantity.Celsius(25), quantity.Celsius(19), quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	supply, flow, err := psychro.SupplyAir(
		room, quantity.Celsius(15), quantity.Kilowatts(9), 0.0015,
		quantity.KilojoulesPerKilogram(2555.5),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f kJ/kg, dew point %.1f °C, %.3f kg/s of dry air\n",
		supply.Start.Enthalpy().KilojoulesPerKilogram(), supply.Start.DewPoint().Celsius(),
		flow.KilogramsPerSecond(),
	)
	// Output: 39.3 kJ/kg, dew point 13.4 °C, 0.880 kg/s of dry air
}

// Pads of 85 % effectiveness on a dry day.
func ExampleHumidifyAdiabatic() {
	air, err := psychro.FromRelativeHumidity(
		quantity.Fahrenheit(100), 0.15, quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	pads, err := psychro.HumidifyAdiabatic(air, 0.85)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f °F, %.0f %%\n", pads.End.DryBulb().Fahrenheit(), 100*pads.End.RelativeHumidity(),
	)
	// Output: 71.4 °F, 77 %
}

// A fan warms the air it moves: 350 W in 1,200 CFM.
func ExampleAddHeat() {
	air, err := psychro.FromRelativeHumidity(
		quantity.Fahrenheit(55), 0.95, quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	flow := air.DryAirFlow(quantity.CFM(1200))
	fan, err := psychro.AddHeat(air, quantity.SpecificEnthalpy(350/flow.KilogramsPerSecond()))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f °F\n", fan.End.DryBulb().Fahrenheit())
	// Output: 55.9 °F
}

// Spray water of 15 °C, all of it evaporated.
func ExampleLiquidEnthalpy() {
	air, err := psychro.FromRelativeHumidity(quantity.Celsius(35), 0.2, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := psychro.LiquidEnthalpy(quantity.Celsius(15), air.Pressure())
	if err != nil {
		fmt.Println(err)
		return
	}
	spray, err := psychro.AddWater(air, 0.004, h)
	fmt.Println(spray.End, err)
	// Output: 25.2 °C dry bulb, 18.8 °C wet bulb, 101.3 kPa <nil>
}
