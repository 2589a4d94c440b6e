package airside_test

import (
	"fmt"
	"time"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func ExampleSplitAltitude() {
	target, _ := airside.TargetSplit(quantity.Fahrenheit(78), quantity.Fahrenheit(66))
	added, err := airside.SplitAltitude(target, quantity.AtmosphereAt(quantity.Feet(6000)))
	fmt.Println(target.Format(quantity.IP), "and", added.Format(quantity.IP), err)
	// Output:
	// 18.0 °F and 1.0 °F ± 0.5 °F <nil>
}

// The target here is not the table's but that of a coil that was fitted on an
// earlier visit, at the refrigerant temperature and airflow of this one.
func ExampleJudgeSplitAgainst() {
	p := quantity.StandardAtmosphere
	entering, _ := psychro.FromWetBulb(quantity.Fahrenheit(78), quantity.Fahrenheit(66), p)
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	expected, err := coil.Through(entering, quantity.CFM(1200), quantity.Fahrenheit(41))
	if err != nil {
		fmt.Println(err)
		return
	}
	std := quantity.FahrenheitDelta(0.4)
	v, err := airside.JudgeSplitAgainst(airside.SplitReadings{
		ReturnDryBulb: quantity.Fahrenheit(75).
			PlusMinus(std),
		ReturnWetBulb: quantity.Fahrenheit(65).
			PlusMinus(std),
		SupplyDryBulb: quantity.Fahrenheit(58.5).PlusMinus(std),
	}, expected.Split.PlusMinus(quantity.FahrenheitDelta(1)), quantity.FahrenheitDelta(2),
		fact.Source{Title: "the coil's own model", Standing: fact.Published})
	fmt.Println(v.Outcome, v.Deviation.Format(quantity.IP), err)
	// Output: below-target -4.6 °F ± 1.1 °F <nil>
}

func ExampleStandardAir() {
	fmt.Printf("%.4f lb/ft³\n", airside.StandardAir().Density().PoundsPerCubicFoot())
	// Output:
	// 0.0749 lb/ft³
}

func ExampleMeasureBypass() {
	reading := func(db, wb float64) airside.AirReading {
		return airside.AirReading{
			DryBulb: quantity.Fahrenheit(db).PlusMinus(quantity.FahrenheitDelta(0.2)),
			WetBulb: quantity.Fahrenheit(wb).PlusMinus(quantity.FahrenheitDelta(0.2)),
		}
	}
	b, err := airside.MeasureBypass(airside.CapacityReadings{
		Return:     reading(80, 67),
		Supply:     reading(58, 56),
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(800)),
	})
	fmt.Printf(
		"apparatus dew point %s, bypass %.2f ± %.2f, %v\n", b.ApparatusDewPoint.Format(quantity.IP),
		b.Factor, b.FactorStd, err,
	)
	// Output:
	// apparatus dew point 53.3 °F ± 0.7 °F, bypass 0.17 ± 0.03, <nil>
}

// More air meets less of the coil per pound.
func ExampleBypass_At() {
	b := airside.Bypass{Factor: 0.15}
	fmt.Printf("%.2f %.2f %.2f\n", b.At(0.7), b.At(1), b.At(1.3))
	// Output:
	// 0.12 0.15 0.18
}

func ExampleBypass_Leaving() {
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(64), quantity.StandardAtmosphere,
	)
	out, err := airside.Bypass{Factor: 0.15}.Leaving(air, quantity.Fahrenheit(50))
	fmt.Println(out.DryBulb().Format(quantity.IP), out.WetBulb().Format(quantity.IP), err)
	// Output:
	// 54.2 °F 52.4 °F <nil>
}

func ExampleCoil_Through() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(60), quantity.StandardAtmosphere,
	)
	pass, err := coil.Through(air, quantity.CFM(1050), quantity.Fahrenheit(40))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"leaves at %s, sensible heat ratio %.2f, %.0f %% of the coil wet\n",
		pass.Leaving.DryBulb().Format(quantity.IP), pass.Capacity.SensibleHeatRatio,
		100*pass.WetShare,
	)
	// Output:
	// leaves at 53.3 °F, sensible heat ratio 0.96, 55 % of the coil wet
}

func ExampleRefrigerantCapacity() {
	q, err := airside.RefrigerantCapacity(
		quantity.PoundsPerHour(480).PlusMinus(quantity.PoundsPerHour(20)),
		quantity.BtuPerPound(42).PlusMinus(quantity.BtuPerPound(0.4)),
		quantity.BtuPerPound(121.5).PlusMinus(quantity.BtuPerPound(0.4)),
	)
	fmt.Println(q.Format(quantity.IP), err)
	// Output:
	// 38200 Btu/h ± 1600 Btu/h <nil>
}

func ExampleGasInput_Heat() {
	heat, err := airside.GasInput{
		Metered: quantity.CubicFeet(2).
			PlusMinus(quantity.CubicFeet(0.01)),
		Elapsed: 72 * time.Second,
		HeatingValue: quantity.BtuPerCubicFoot(1000).
			PlusMinus(quantity.BtuPerCubicFoot(15)),
		Efficiency: 0.8, EfficiencyStd: 0.02,
	}.Heat()
	fmt.Println(heat.Format(quantity.IP), err)
	// Output:
	// 80000 Btu/h ± 2400 Btu/h <nil>
}

func ExampleTotalHeat() {
	fmt.Println(
		airside.TotalHeat(
			quantity.Kilowatts(9.5).PlusMinus(quantity.Kilowatts(0.1)),
			quantity.Kilowatts(0.45).PlusMinus(quantity.Kilowatts(0.06)),
		),
	)
	// Output:
	// 9.95 kW ± 0.12 kW
}

func ExampleAirflow_PerTon() {
	a := airside.Airflow{Flow: quantity.CFM(1010).PlusMinus(quantity.CFM(50))}
	fmt.Printf("%.0f CFM per ton\n", a.PerTon(quantity.Tons(3)))
	// Output:
	// 337 CFM per ton
}

func ExampleIceFrom() {
	ice, err := airside.IceFrom(quantity.PoundsPerHour(4), 5*time.Hour)
	fmt.Println(ice.Format(quantity.IP), err)
	// Output:
	// 20.00 lb <nil>
}

// The coil was seen with refrigerant of 40 °F on an 82 °F day; at night it is 60.
func ExampleCapacityLine_Run() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(66), quantity.StandardAtmosphere,
	)
	at := airside.Conditions{
		Return:  air,
		Airflow: quantity.CFM(1150),
		Outdoor: quantity.Fahrenheit(82),
	}
	plant, err := airside.NewCapacityLine(coil, at, quantity.Fahrenheit(40))
	if err != nil {
		fmt.Println(err)
		return
	}
	at.Outdoor = quantity.Fahrenheit(60)
	night, err := plant.Run(at)
	fmt.Println(night.Evaporating.Format(quantity.IP), night.Surface.Format(quantity.IP), err)
	// Output:
	// 38.0 °F 45.8 °F <nil>
}

// What was seen at one condition is a machine that can be asked about another.
func ExampleNewCapacityLine() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(78), quantity.Fahrenheit(66), quantity.StandardAtmosphere,
	)
	plant, err := airside.NewCapacityLine(
		coil,
		airside.Conditions{
			Return:  air,
			Airflow: quantity.CFM(1150),
			Outdoor: quantity.Fahrenheit(82),
		},
		quantity.Fahrenheit(40),
	)
	fmt.Println(
		plant.Capacity.Format(quantity.IP), "at", plant.Evaporating.Format(quantity.IP), err,
	)
	// Output: 40594 Btu/h at 40.0 °F <nil>
}

func ExampleNewFanCurve() {
	_, err := airside.NewFanCurve([]airside.FanPoint{
		{Static: quantity.InchesWater(0.3), Flow: quantity.CFM(1200)},
		{Static: quantity.InchesWater(0.5), Flow: quantity.CFM(1250)},
	})
	fmt.Println(err)
	// Output:
	// flow of a fan curve: 590 L/s (1250 CFM) is out of range; valid up to 566 L/s (1200 CFM); flow falls as static pressure rises; leave out what lies left of the curve's peak
}

func ExampleFilterArea() {
	area, err := airside.FilterArea(quantity.CFM(1200), airside.FilterVelocity)
	fmt.Printf("%.0f in², %v\n", area.SquareInches(), err)
	// Output:
	// 576 in², <nil>
}

// Air of 140 °F and nearly as wet is not that of a building; over a coil as cold as a
// freezer's it makes fog, and the error says what to change.
func ExampleCoil_Through_fog() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(140), quantity.Fahrenheit(136), quantity.StandardAtmosphere,
	)
	_, err := coil.Through(air, quantity.CFM(6000), quantity.Fahrenheit(-80))
	fmt.Println(err)
	// Output: refrigerant temperature: -62.2 °C (-80.0 °F) is out of range; in air so much hotter and so damp the coil makes fog, which the model does not follow; give cooler or drier air, or a refrigerant nearer to it
}

func ExampleAirflowMethod_Cautions() {
	for _, c := range airside.ByHeat.Cautions() {
		fmt.Println(c)
	}
	// Output:
	// caution.live-parts
	// caution.gas-heat
	// caution.radiation
	// caution.label-first
}

func ExampleFanCurve_StandardFlow() {
	tap, err := airside.NewFanCurve([]airside.FanPoint{
		{Static: quantity.InchesWater(0.3), Flow: quantity.CFM(1350)},
		{Static: quantity.InchesWater(0.5), Flow: quantity.CFM(1200)},
		{Static: quantity.InchesWater(0.7), Flow: quantity.CFM(1000)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	flow, err := tap.StandardFlow(quantity.InchesWater(0.6))
	fmt.Println(flow.Format(quantity.IP), err)
	_, err = tap.StandardFlow(quantity.InchesWater(0.9))
	fmt.Println(err)
	// Output:
	// 1107 CFM <nil>
	// external static pressure: 224.2 Pa (0.90 in. w.c.) is out of range; valid from 74.7 Pa (0.30 in. w.c.) to 174.4 Pa (0.70 in. w.c.); the table ends there: is the reading right, and the table that of the unit and its speed tap?
}
