package airside_test

import (
	"fmt"
	"time"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// mountain is room air at 6,000 ft; the elevation stands in for a barometer.
func mountain(fahrenheit float64) airside.AirAt {
	return airside.AirAt{
		DryBulb:    quantity.Fahrenheit(fahrenheit).PlusMinus(quantity.FahrenheitDelta(0.6)),
		Atmosphere: quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(quantity.Pascals(800)),
	}
}

// A furnace is clocked at its meter, and the rise read over it.
func ExampleHeatRise_Airflow() {
	heat, err := airside.GasInput{
		Metered:      quantity.CubicFeet(2).PlusMinus(quantity.CubicFeet(0.01)),
		Elapsed:      90 * time.Second,
		HeatingValue: quantity.BtuPerCubicFoot(850).PlusMinus(quantity.BtuPerCubicFoot(15)),
		Efficiency:   0.80, EfficiencyStd: 0.02,
	}.Heat()
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := airside.HeatRise{
		Heat:   heat,
		Return: mountain(68),
		Supply: quantity.Fahrenheit(122).PlusMinus(quantity.FahrenheitDelta(1)),
	}.Airflow()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("heat", heat.Format(quantity.IP))
	fmt.Println("flow", a.Flow.Format(quantity.IP))
	fmt.Println("as standard air", a.Standard.Format(quantity.IP))
	// Output:
	// heat 54400 Btu/h ± 1700 Btu/h
	// flow 1158 CFM ± 46 CFM
	// as standard air 928 CFM ± 36 CFM
}

// Strip heat at 240 V, with the blower's motor in the air stream.
func ExampleElectricInput_Heat() {
	strips, _ := airside.ElectricInput{
		Voltage: quantity.Volts(236).PlusMinus(quantity.Volts(1)),
		Current: quantity.Amperes(40.2).PlusMinus(quantity.Amperes(0.4)),
	}.Heat()
	blower, _ := airside.ElectricInput{
		Voltage: quantity.Volts(236).PlusMinus(quantity.Volts(1)),
		Current: quantity.Amperes(2.4).
			PlusMinus(quantity.Amperes(0.1)),
		PowerFactor: 0.8, PowerFactorStd: 0.1,
	}.Heat()
	heat := airside.TotalHeat(strips, blower)
	a, err := airside.HeatRise{
		Heat:   heat,
		Return: mountain(66),
		Supply: quantity.Fahrenheit(99).PlusMinus(quantity.FahrenheitDelta(0.6)),
	}.Airflow()
	fmt.Println(heat.Format(quantity.IP))
	fmt.Println(a.Flow.Format(quantity.IP), err)
	// Output:
	// 33920 Btu/h ± 410 Btu/h
	// 1177 CFM ± 36 CFM <nil>
}

func ExampleTraverse_Airflow() {
	var readings []quantity.Velocity
	for _, fpm := range []float64{
		520, 610, 640, 600, 510, 600, 700, 730, 690, 590, 620, 720, 750, 710, 610, 590, 690, 720,
		680, 580, 500, 600, 630, 590, 490,
	} {
		readings = append(readings, quantity.FeetPerMinute(fpm))
	}
	a, err := airside.Traverse{
		Velocities: readings, InstrumentStd: 0.02,
		Area: quantity.SquareInches(16 * 18).PlusMinus(quantity.SquareInches(4)), Air: mountain(72),
	}.Airflow()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Flow.Format(quantity.IP))
	// Output:
	// 1254 CFM ± 43 CFM
}

func ExampleTraversePoints() {
	points, err := airside.TraversePoints(airside.Rectangular, 5)
	fmt.Println(points, err)
	// Output:
	// [0.074 0.288 0.5 0.712 0.926] <nil>
}

// The table of a coil gives 0.25 in. w.c. at 1,200 CFM of standard air, wet.
func ExampleDropReading_Airflow() {
	a, err := airside.DropReading{
		Part: airside.CoilPart, Rated: quantity.InchesWater(0.25),
		RatedFlow: quantity.CFM(1200).PlusMinus(quantity.CFM(60)),
		Drop:      quantity.InchesWater(0.18).PlusMinus(quantity.InchesWater(0.005)),
		Air:       mountain(75),
	}.Airflow()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Flow.Format(quantity.IP))
	worst, _ := a.Budget.Largest()
	fmt.Println("better first:", worst.Reading)
	// Output:
	// 1110 CFM ± 61 CFM
	// better first: ratedFlow
}

func ExampleFanSpeedReading_Airflow() {
	a, err := airside.FanSpeedReading{
		Known: quantity.CFM(1150).
			PlusMinus(quantity.CFM(50)),
		KnownSpeed: 980, Speed: 860, SpeedStd: 2, Air: mountain(75),
	}.Airflow()
	fmt.Println(a.Flow.Format(quantity.IP), err)
	// Output:
	// 1009 CFM ± 44 CFM <nil>
}

func ExampleRefrigerantBalance_Airflow() {
	capacity, err := airside.RefrigerantCapacity(
		quantity.PoundsPerHour(480).PlusMinus(quantity.PoundsPerHour(20)),
		quantity.BtuPerPound(42).PlusMinus(quantity.BtuPerPound(0.4)),
		quantity.BtuPerPound(121.5).PlusMinus(quantity.BtuPerPound(0.4)),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	reading := func(db, wb float64) airside.AirReading {
		return airside.AirReading{
			DryBulb: quantity.Fahrenheit(db).PlusMinus(quantity.FahrenheitDelta(0.6)),
			WetBulb: quantity.Fahrenheit(wb).PlusMinus(quantity.FahrenheitDelta(0.7)),
		}
	}
	a, err := airside.RefrigerantBalance{
		Capacity: capacity, Return: reading(77, 64), Supply: reading(56, 54),
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(800)),
	}.Airflow()
	fmt.Println(a.Flow.Format(quantity.IP), err)
	// Output:
	// 1330 CFM ± 140 CFM <nil>
}

func ExampleSplitBackwards_Airflow() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	std := quantity.FahrenheitDelta(0.6)
	at := mountain(75)
	at.WetBulb = quantity.Fahrenheit(60).PlusMinus(std)
	a, err := airside.SplitBackwards{
		Coil: coil, Return: at,
		Supply: quantity.Fahrenheit(49).
			PlusMinus(std),
		Evaporating: quantity.Fahrenheit(36).PlusMinus(std),
	}.Airflow()
	fmt.Println(a.Flow.Format(quantity.IP), err)
	fmt.Println(a.Notes)
	// Output:
	// 990 CFM ± 370 CFM <nil>
	// [assumed.sides-and-rating]
}

func ExampleCombineAirflows() {
	flow := func(m airside.AirflowMethod, cfm, std float64) airside.Airflow {
		return airside.Airflow{Method: m, Standard: quantity.CFM(cfm).PlusMinus(quantity.CFM(std))}
	}
	c, err := airside.CombineAirflows(
		flow(airside.ByHeat, 1010, 45), flow(airside.ByGrid, 980, 50),
		flow(airside.BySplit, 1100, 180),
	)
	fmt.Println(c.Standard.Format(quantity.IP), c.Agree, err)
	// Output:
	// 1000 CFM ± 33 CFM true <nil>
}

func ExampleEfficiencyOf() {
	e, err := airside.EfficiencyOf(
		quantity.BtuPerHour(33500).PlusMinus(quantity.BtuPerHour(1800)),
		quantity.Kilowatts(3.1).PlusMinus(quantity.Kilowatts(0.05)),
	)
	fmt.Printf("EER %.1f ± %.1f, COP %.2f ± %.2f, %v\n", e.EER, e.EERStd, e.COP, e.COPStd, err)
	// Output:
	// EER 10.8 ± 0.6, COP 3.17 ± 0.18, <nil>
}

func ExampleClosureOf() {
	c, err := airside.ClosureOf(
		quantity.BtuPerHour(33500).PlusMinus(quantity.BtuPerHour(2600)),
		quantity.BtuPerHour(36100).PlusMinus(quantity.BtuPerHour(1500)),
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f ± %.2f, closes: %v\n", c.Relative, c.RelativeStd, c.Closes)
	fmt.Println("best", c.Best.Format(quantity.IP))
	// Output:
	// -0.07 ± 0.08, closes: true
	// best 35500 Btu/h ± 1300 Btu/h
}
