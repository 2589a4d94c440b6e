package airside_test

import (
	"fmt"
	"time"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// libraryUnit is an invented 3 ton machine seen running at 6,000 ft.
func libraryUnit() (airside.CapacityLine, airside.Conditions) {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(74), quantity.Fahrenheit(59),
		quantity.AtmosphereAt(quantity.Feet(6000)),
	)
	at := airside.Conditions{
		Return:  air,
		Airflow: quantity.CFM(900),
		Outdoor: quantity.Fahrenheit(78),
	}
	plant, _ := airside.NewCapacityLine(coil, at, quantity.Fahrenheit(35))
	return plant, at
}

func ExampleJudgeFrost() {
	coil, _ := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	at := mountain(74)
	at.WetBulb = quantity.Fahrenheit(59).PlusMinus(quantity.FahrenheitDelta(0.7))
	f, err := airside.JudgeFrost(airside.FrostReadings{
		Return: at, Airflow: quantity.CFM(900).PlusMinus(quantity.CFM(70)),
		Evaporating: quantity.Fahrenheit(28).PlusMinus(quantity.FahrenheitDelta(0.7)), Coil: coil,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Outcome)
	fmt.Printf(
		"%s above freezing, chance of ice on the surface %.2f\n", f.Margin.Format(quantity.IP),
		f.SurfaceChance,
	)
	// Output:
	// near
	// 1.4 °F ± 1.4 °F above freezing, chance of ice on the surface 0.15
}

func ExampleFindFreezeLimits() {
	plant, at := libraryUnit()
	limits, err := airside.FindFreezeLimits(plant, at)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(limits.ReturnDryBulb.Format(quantity.IP), limits.Airflow.Format(quantity.IP))
	// Output: 64.0 °F 561 CFM
}

// Three hours of frosting, thawed with the blower.
func ExampleThaw_Time() {
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(72), quantity.Fahrenheit(60), quantity.StandardAtmosphere,
	)
	ice, err := airside.IceFrom(quantity.PoundsPerHour(5), 3*time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	thaw, err := airside.Thaw{Ice: ice, Return: air, Airflow: quantity.CFM(1000)}.Time()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(
		ice.Format(quantity.IP), "of ice: likely", thaw.Likely.Round(time.Minute), "and up to",
		thaw.Latest.Round(time.Minute),
	)
	// Output: 15.00 lb of ice: likely 25m0s and up to 1h15m0s
}

// A coil whose refrigerant boils at 24 °F.
func ExampleIcingChance() {
	boils := quantity.Fahrenheit(24).PlusMinus(quantity.FahrenheitDelta(0.5))
	fmt.Printf("%.0f %%\n", 100*airside.IcingChance(boils))
	// Output: 99 %
}
