package airside_test

import (
	"fmt"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

func ExampleTargetSplit() {
	split, err := airside.TargetSplit(quantity.Fahrenheit(80), quantity.Fahrenheit(67))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(split.Format(quantity.IP))
	_, err = airside.TargetSplit(quantity.Fahrenheit(65), quantity.Fahrenheit(55))
	fmt.Println(err)
	// Output:
	// 18.3 °F
	// return dry bulb for a target split: 18.3 °C (65.0 °F) is out of range; valid from 21.1 °C (70.0 °F) to 28.9 °C (84.0 °F); the table of target splits ends there: bring the building toward its usual temperature, or measure the airflow itself
}

func ExampleJudgeSplit() {
	std := quantity.FahrenheitDelta(0.4)
	v, err := airside.JudgeSplit(airside.SplitReadings{
		ReturnDryBulb: quantity.Fahrenheit(75).PlusMinus(std),
		ReturnWetBulb: quantity.Fahrenheit(65).PlusMinus(std),
		SupplyDryBulb: quantity.Fahrenheit(51).PlusMinus(std),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.Outcome, v.Deviation.Format(quantity.IP))
	fmt.Println("airflow first:", v.AirflowFirst())
	// Output:
	// above-target 6.8 °F ± 0.5 °F
	// airflow first: true
}

func ExampleCapacityOf() {
	p := quantity.AtmosphereAt(quantity.Feet(6000))
	entering, _ := psychro.FromWetBulb(quantity.Fahrenheit(77), quantity.Fahrenheit(65), p)
	leaving, _ := psychro.FromWetBulb(quantity.Fahrenheit(56), quantity.Fahrenheit(54), p)
	c, err := airside.CapacityOf(entering, leaving, quantity.CFM(1150))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"total %s, sensible %s, latent %s, sensible heat ratio %.2f, condensate %.1f lb/h\n",
		c.Total.Value.Format(quantity.IP), c.Sensible.Value.Format(quantity.IP),
		c.Latent.Value.Format(quantity.IP), c.SensibleHeatRatio, c.Condensate.Value.PoundsPerHour(),
	)
	// Output:
	// total 34037 Btu/h, sensible 20572 Btu/h, latent 13465 Btu/h, sensible heat ratio 0.60, condensate 12.6 lb/h
}

func ExampleMeasureCapacity() {
	reading := func(db, wb float64) airside.AirReading {
		return airside.AirReading{
			DryBulb: quantity.Fahrenheit(db).PlusMinus(quantity.FahrenheitDelta(0.6)),
			WetBulb: quantity.Fahrenheit(wb).PlusMinus(quantity.FahrenheitDelta(0.7)),
		}
	}
	c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return:     reading(77, 65),
		Supply:     reading(56, 53.5),
		Airflow:    quantity.CFM(1150).PlusMinus(quantity.CFM(60)),
		Atmosphere: quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(quantity.Pascals(800)),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("total", c.Total.Format(quantity.IP))
	worst, _ := c.Budget.Largest()
	fmt.Println("better first:", worst.Reading)
	// Output:
	// total 35400 Btu/h ± 3600 Btu/h
	// better first: returnWetBulb
}

func ExampleFactorsOf() {
	sea, _ := airside.FactorsOf(airside.StandardAir())
	fmt.Printf("sea level  %.2f %.2f %.1f\n", sea.Sensible, sea.Latent, sea.Total)
	air, _ := psychro.FromHumidityRatio(
		quantity.Fahrenheit(70), 0, quantity.AtmosphereAt(quantity.Feet(6000)),
	)
	high, _ := airside.FactorsOf(air)
	fmt.Printf("6,000 ft   %.2f %.2f %.1f\n", high.Sensible, high.Latent, high.Total)
	// Output:
	// sea level  1.08 0.68 4.5
	// 6,000 ft   0.87 0.54 3.6
}
