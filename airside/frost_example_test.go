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
	air, _ := psychro.FromWetBulb(quantity.Fahrenheit(74), quantity.Fahrenheit(59), quantity.AtmosphereAt(quantity.Feet(6000)))
	at := airside.Conditions{Return: air, Airflow: quantity.CFM(900), Outdoor: quantity.Fahrenheit(78)}
	plant, _ := airside.SeenAt(coil, at, quantity.Fahrenheit(35))
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
	for _, reason := range f.Reasons(quantity.IP) {
		fmt.Println(reason)
	}
	// Output:
	// near
	// the coldest surface of the coil is 33.4 °F ± 1.4 °F over refrigerant of 28.0 °F: 1.4 °F above freezing
	// the chance that it is below freezing is 15 %; a cooler evening, a lower set-point or a dirtier filter would bring it there
	// the refrigerant itself is below freezing, and only the air keeps the surface above it: by the rule that a coil ices from about 29.0 °F down, give or take 2.0 °F, the chance of ice is 68 %
}

func ExampleFindFreezeLimits() {
	plant, at := libraryUnit()
	limits, err := airside.FindFreezeLimits(plant, at)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, reason := range limits.Reasons(quantity.IP) {
		fmt.Println(reason)
	}
	// Output:
	// the coil freezes once the return air, at the same relative humidity, falls to 64.0 °F
	// the coil freezes once the airflow falls to 561 CFM
}

func ExampleFreezeRemedies() {
	plant, at := libraryUnit()
	at.Airflow, at.Outdoor = quantity.CFM(600), quantity.Fahrenheit(58)
	remedies, err := airside.FreezeRemedies(plant, at, quantity.FahrenheitDelta(3), quantity.CFM(1200), quantity.Fahrenheit(80))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range remedies {
		fmt.Printf("%-22s %s warmer\n", r.Code, r.Change.Format(quantity.IP))
	}
	// Output:
	// airflow                10.8 °F warmer
	// set-point              2.3 °F warmer
	// head-pressure-control  2.2 °F warmer
	// freeze-thermostat      0.0 °F warmer
}

func ExampleIcedSigns() {
	plant, at := libraryUnit()
	signs, err := airside.IcedSigns(plant, at, 0.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range signs[:2] {
		fmt.Printf("%s: %s, clear %s\n", s.Reading, s.Iced.Format(quantity.IP), s.Clear.Format(quantity.IP))
	}
	fmt.Println(signs[2].Shows)
	// Output:
	// suctionPressure: 21.8 °F, clear 35.0 °F
	// supplyDryBulb: 30.3 °F, clear 47.2 °F
	// superheat falls to nothing on a fixed restrictor, as with an overcharge, and frost runs down the suction line toward the compressor: liquid may be coming back
}

// Three hours of frosting, thawed with the blower.
func ExampleThaw_Time() {
	air, _ := psychro.FromWetBulb(quantity.Fahrenheit(72), quantity.Fahrenheit(60), quantity.StandardAtmosphere)
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
	fmt.Println(ice.Format(quantity.IP), "of ice: likely", thaw.Likely.Round(time.Minute), "and up to", thaw.Latest.Round(time.Minute))
	fmt.Println(thaw.Do[0])
	// Output:
	// 15.00 lb of ice: likely 25m0s and up to 1h15m0s
	// compressor off, blower on, until the last of the ice is gone from the middle of the coil and the suction line
}

// A coil whose refrigerant boils at 24 °F.
func ExampleIcingChance() {
	boils := quantity.Fahrenheit(24).PlusMinus(quantity.FahrenheitDelta(0.5))
	fmt.Printf("%s: %.0f %%\n", airside.IcingText(quantity.IP), 100*airside.IcingChance(boils))
	// Output: the rule that a coil ices from about 29.0 °F down, give or take 2.0 °F: 99 %
}
