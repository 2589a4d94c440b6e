package airside_test

import (
	"fmt"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

func ExampleJudgeStatic() {
	std := quantity.InchesWater(0.01)
	v, err := airside.JudgeStatic(airside.StaticReadings{
		Entering: quantity.InchesWater(-0.52).PlusMinus(std),
		Leaving:  quantity.InchesWater(0.26).PlusMinus(std),
		Maximum:  quantity.InchesWater(0.5),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%s, %v, %.0f %% on the return side\n", v.External.Format(quantity.IP), v.Outcome,
		100*v.ReturnShare,
	)
	_, err = airside.JudgeStatic(
		airside.StaticReadings{Entering: quantity.InchesWater(0.52).PlusMinus(std)},
	)
	fmt.Println(err)
	// Output:
	// 0.78 in. w.c. ± 0.01 in. w.c., above, 67 % on the return side
	// static pressure entering the box: 129.5 Pa (0.52 in. w.c.) is out of range; valid from -2500.0 Pa (-10.04 in. w.c.) to 0.0 Pa (0.00 in. w.c.); the blower draws on this side, so it reads below zero: write the minus sign, and see which port of the manometer is open to the room
}

// A filter whose table says 0.12 in. w.c. at 1,000 CFM.
func ExamplePartDrop_Judge() {
	v, err := airside.PartDrop{
		Part: airside.FilterPart, Rated: quantity.InchesWater(0.12), RatedFlow: quantity.CFM(1000),
		Flow: quantity.CFM(900).PlusMinus(quantity.CFM(45)), Air: mountain(74),
		Measured: quantity.InchesWater(0.31).PlusMinus(quantity.InchesWater(0.01)),
	}.Judge()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f ± %.2f times, dirty %.2f\n", v.Ratio, v.RatioStd, v.Dirty)
	// Output: 3.40 ± 0.36 times, dirty 1.00
}

// A tenth more speed: a tenth more air, a fifth more pressure, a third more
// power.
func ExampleFanLaws() {
	rho := airside.StandardAir().Density()
	p, err := airside.FanLaws(
		airside.FanPoint{
			Flow:   quantity.CFM(1000),
			Static: quantity.InchesWater(0.50),
			Power:  quantity.Watts(300),
		},
		900,
		990,
		rho,
		rho,
	)
	fmt.Println(
		p.Flow.Format(quantity.IP), p.Static.Format(quantity.IP), p.Power.Format(quantity.SI), err,
	)
	// Output:
	// 1100 CFM 0.61 in. w.c. 0.40 kW <nil>
}

// ANSI/AMCA Standard 210, fan laws (from memory): a fan that moves 10,000 CFM
// against 1 in. w.c. at 600 rpm with 3 hp, brought to 720 rpm, and then into air of
// four fifths the density.
func ExampleFanLaws_amca() {
	const horsepower = 745.7 // W
	sea := airside.StandardAir().Density()
	thin := sea * 0.8
	at := airside.FanPoint{
		Flow:   quantity.CFM(10000),
		Static: quantity.InchesWater(1),
		Power:  quantity.Watts(3 * horsepower),
	}
	for _, to := range []struct {
		rpm     airside.RPM
		density quantity.Density
	}{{720, sea}, {600, thin}} {
		p, err := airside.FanLaws(at, 600, to.rpm, sea, to.density)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%.0f CFM, %.2f in. w.c., %.2f hp\n", p.Flow.CFM(), p.Static.InchesWater(),
			p.Power.Watts()/horsepower,
		)
	}
	// Output:
	// 12000 CFM, 1.44 in. w.c., 5.18 hp
	// 10000 CFM, 0.80 in. w.c., 2.40 hp
}

func exampleBlower() *airside.FanCurve {
	var table []airside.FanPoint // an invented speed tap
	for _, p := range [][2]float64{{0.1, 1360}, {0.3, 1275}, {0.5, 1155}, {0.7, 990}, {0.9, 760}} {
		table = append(
			table, airside.FanPoint{Static: quantity.InchesWater(p[0]), Flow: quantity.CFM(p[1])},
		)
	}
	c, err := airside.NewFanCurve(table)
	if err != nil {
		fmt.Println(err)
	}
	return c
}

func ExampleFanCurve_Airflow() {
	static := quantity.InchesWater(0.62).PlusMinus(quantity.InchesWater(0.015))
	a, err := exampleBlower().Airflow(static, mountain(74), 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Flow.Format(quantity.IP))
	fmt.Println("as standard air", a.Standard.Format(quantity.IP))
	// Output:
	// 903 CFM ± 51 CFM
	// as standard air 716 CFM ± 42 CFM
}

func ExampleFanCurve_Meets() {
	at, err := exampleBlower().Meets(airside.FanPoint{Flow: quantity.CFM(1000),
		Static: quantity.InchesWater(0.55)})
	fmt.Println(at.Flow.Format(quantity.IP), at.Static.Format(quantity.IP), err)
	// Output:
	// 1062 CFM 0.62 in. w.c. <nil>
}

func ExampleFilterChoices() {
	choices, err := airside.FilterChoices(quantity.CFM(1200), airside.FilterVelocity)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range choices[:3] {
		fmt.Printf(
			"%d of %.0f × %.0f in: %s\n", c.Count, c.Width.Inches(), c.Height.Inches(),
			c.Velocity.Format(quantity.IP),
		)
	}
	// Output:
	// 2 of 16 × 20 in: 286 ft/min
	// 2 of 14 × 25 in: 261 ft/min
	// 2 of 16 × 25 in: 228 ft/min
}

func ExampleFaceVelocity() {
	v, err := airside.FaceVelocity(quantity.CFM(1200), quantity.SquareInches(19.5*24.5))
	fmt.Println(v.Format(quantity.IP), err)
	// Output:
	// 362 ft/min <nil>
}

// In the manner of ACCA Manual S (from memory): a house of 24,000 Btu/h sensible
// and 6,500 Btu/h latent gain, at sea level and at 6,000 ft.
func ExampleDesignAirflow() {
	for _, feet := range []float64{0, 6000} {
		room, _ := psychro.FromRelativeHumidity(
			quantity.Fahrenheit(75), 0.5, quantity.AtmosphereAt(quantity.Feet(feet)),
		)
		flow, err := airside.DesignAirflow(
			quantity.BtuPerHour(24000), quantity.BtuPerHour(6500), room,
		)
		fmt.Printf("%4.0f ft: %s, %v\n", feet, flow.Format(quantity.IP), err)
	}
	// Output:
	// 0 ft: 1066 CFM, <nil>
	// 6000 ft: 1330 CFM, <nil>
}

// In the manner of ACCA Manual D (from memory): 0.5 in. w.c. less coil, filter
// and registers, over 220 ft of effective length.
func ExampleFrictionRate() {
	rate, err := airside.FrictionRate(
		quantity.InchesWater(0.5),
		[]quantity.StaticPressure{
			quantity.InchesWater(0.18), quantity.InchesWater(0.10), quantity.InchesWater(0.06),
		},
		quantity.Feet(220),
	)
	fmt.Printf("%.3f in. w.c. per 100 ft, %v\n", rate.InchesWater(), err)
	// Output:
	// 0.073 in. w.c. per 100 ft, <nil>
}

// ASHRAE Handbook Fundamentals, chapter 1, example of moist air cooling (from
// memory): 5 m³/s of air of 30 °C and 50 % leaves saturated at 10 °C; the chart
// gives 5.70 kg/s of dry air and 197 kW.
func ExampleCapacityOf_fundamentals() {
	entering, _ := psychro.FromRelativeHumidity(
		quantity.Celsius(30), 0.5, quantity.StandardAtmosphere,
	)
	leaving, _ := psychro.Saturated(quantity.Celsius(10), quantity.StandardAtmosphere)
	c, err := airside.CapacityOf(entering, leaving, quantity.CubicMetersPerSecond(5))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.2f kg/s of dry air, %.0f kW, of which %.0f kW sensible\n",
		c.DryAir.Value.KilogramsPerSecond(), c.Total.Value.Kilowatts(),
		c.Sensible.Value.Kilowatts(),
	)
	// Output:
	// 5.70 kg/s of dry air, 198 kW, of which 116 kW sensible
}
