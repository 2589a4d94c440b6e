package refrigerant_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// The suction gauge reads 68.5 psig at sea level and the clamp on the suction line
// at the service valve 52 °F.
func ExampleRefrigerant_Superheat() {
	r, _ := refrigerant.Lookup("R-22")
	p := quantity.PSIG(68.5).Absolute(quantity.StandardAtmosphere)
	superheat, err := r.Superheat(p, quantity.Fahrenheit(52))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f °F\n", superheat.Fahrenheit())
	// Output:
	// 12.0 °F
}

// The same gauge reading means a colder coil where the air is thin.
func ExampleRefrigerant_DewTemperature() {
	r, _ := refrigerant.Lookup("R-22")
	for _, feet := range []float64{0, 6000} {
		p := quantity.PSIG(68.5).Absolute(quantity.AtmosphereAt(quantity.Feet(feet)))
		t, err := r.DewTemperature(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%5.0f ft: %.1f °F\n", feet, t.Fahrenheit())
	}
	// Output:
	//     0 ft: 40.0 °F
	//  6000 ft: 37.9 °F
}

// A gas cooler on a hot day is above the critical pressure: there is nothing to
// subcool, and the error says so.
func ExampleRefrigerant_BubbleTemperature_supercritical() {
	r, _ := refrigerant.Lookup("R-744")
	_, err := r.BubbleTemperature(quantity.PSIA(1300))
	var out *refrigerant.RangeError
	fmt.Println(errors.As(err, &out))
	fmt.Println(out.Advice)
	// Output:
	// true
	// above the critical pressure nothing boils or condenses, and there is no subcooling or superheat: judge by the gas cooler outlet temperature and the unit's chart
}

// An ideal compressor from 10 °C of superheat at −10 °C to the pressure of 40 °C.
func ExampleRefrigerant_StateAtEntropy() {
	r, _ := refrigerant.Lookup("R-134a")
	low, _ := r.DewPressure(quantity.Celsius(-10))
	high, _ := r.DewPressure(quantity.Celsius(40))
	suction, err := r.State(low, quantity.Celsius(0))
	if err != nil {
		fmt.Println(err)
		return
	}
	discharge, err := r.StateAtEntropy(high, suction.Entropy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("discharge %.1f °C, work %.1f kJ/kg\n", discharge.Temperature.Celsius(),
		(discharge.Enthalpy - suction.Enthalpy).KilojoulesPerKilogram())
	// Output:
	// discharge 55.8 °C, work 35.6 kJ/kg
}

// Liquid at 35 °C expands to the pressure of −10 °C: part of it flashes.
func ExampleRefrigerant_StateAtEnthalpy() {
	r, _ := refrigerant.Lookup("R-134a")
	liquid, _ := r.SaturatedLiquid(quantity.Celsius(35))
	p, _ := r.DewPressure(quantity.Celsius(-10))
	s, err := r.StateAtEnthalpy(p, liquid.Enthalpy)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %.0f %% vapor\n", s.Phase, 100*s.Quality)
	// Output:
	// two-phase, 30 % vapor
}

// How far a recovery cylinder of 47.7 lb water capacity may be filled.
func ExampleCylinder_SafeFill() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	f, err := c.SafeFill(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"stop at %.1f lb on the scale (%.1f lb of %v)\n", f.Gross.Pounds(), f.Net.Pounds(), r,
	)
	fmt.Printf("%s: %s\n", f.Rule, f.Source)
	fmt.Printf(
		"stamped for %.0f psig or more; liquid-full at %.0f °F\n", f.Service.PSIG(),
		f.LiquidFull.Fahrenheit(),
	)
	// Output:
	// stop at 69.5 lb on the scale (41.5 lb of R-22)
	// liquid-level: common shipping practice; 49 CFR 173.304(b) forbids liquid-full at 131 °F
	// stamped for 240 psig or more; liquid-full at 181 °F
}

// Carbon dioxide goes into a high-pressure cylinder, and how much depends on its stamp.
func ExampleCylinder_SafeFill_highPressure() {
	r, _ := refrigerant.Lookup("R-744")
	recovery := refrigerant.Cylinder{
		WaterCapacity: quantity.Pounds(47.7),
		Tare:          quantity.Pounds(28),
		Service:       quantity.PSIG(400),
	}
	_, err := recovery.SafeFill(r)
	fmt.Println("recovery cylinder refused:", err != nil)
	steel := refrigerant.Cylinder{
		WaterCapacity: quantity.Pounds(65),
		Tare:          quantity.Pounds(110),
		Service:       quantity.PSIG(2400),
	}
	f, err := steel.SafeFill(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f lb\n", f.Net.Pounds())
	// Output:
	// recovery cylinder refused: true
	// 48.4 lb
}

func ExampleCylinder_RoomFor() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	room, err := c.RoomFor(r, quantity.Pounds(61.2))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"holds %.1f lb, may take %.1f lb more\n", room.Contents.Pounds(), room.MayTake.Pounds(),
	)
	// Output:
	// holds 33.2 lb, may take 8.3 lb more
}

// Filled to the brim on a cold morning.
func ExampleCylinder_LiquidFullTemperature() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	r, _ := refrigerant.Lookup("R-22")
	t, err := c.LiquidFullTemperature(r, quantity.Pounds(54))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("liquid-full at %.0f °F\n", t.Fahrenheit())
	// Output:
	// liquid-full at 104 °F
}

// The cold line on the outside of the cylinder is at two fifths of its height.
func ExampleCylinder_ContentsFromLevel() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7)}
	r, _ := refrigerant.Lookup("R-22")
	m, err := c.ContentsFromLevel(r, 0.4, quantity.Fahrenheit(75))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("about %.0f lb\n", m.Pounds())
	// Output:
	// about 24 lb
}

// A charge of R-407C that leaks vapor from a unit that is off: what is left boils
// higher, so the chart of the fresh blend no longer holds.
func ExampleRefrigerant_Leak() {
	r, _ := refrigerant.Lookup("R-407C")
	steps, err := r.Leak(refrigerant.LeakCase{
		Temperature: quantity.Fahrenheit(75),
		From:        refrigerant.Vapor,
		Lost:        []float64{0.25, 0.5},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range steps {
		fmt.Printf(
			"%.0f %% lost: %s, bubble point %+.1f °F\n", 100*s.Lost, s.Remaining.Name(),
			s.BubbleShift.Fahrenheit(),
		)
	}
	// Output:
	// 25 % lost: R-32/R-125/R-134a (20.37/23.11/56.52), bubble point +2.7 °F
	// 50 % lost: R-32/R-125/R-134a (16.92/20.39/62.69), bubble point +6.7 °F
}

// The unit is off and has soaked at 75 °F; the gauge reads 132 psig at sea level.
func ExampleStandingPressure() {
	p := quantity.PSIG(132).Absolute(quantity.StandardAtmosphere)
	var candidates []*refrigerant.Refrigerant
	for _, designation := range []string{"R-22", "R-410A", "R-134a", "R-454B"} {
		r, _ := refrigerant.Lookup(designation)
		candidates = append(candidates, r)
	}
	fits, err := refrigerant.StandingPressure(
		p, quantity.Fahrenheit(75), quantity.FahrenheitDelta(2), candidates...,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range fits {
		fmt.Printf("%-7v %+7.1f °F  %s\n", f.Refrigerant, f.Off.Fahrenheit(), f.Fact().Code)
	}
	// Output:
	// R-22       -0.1 °F  standing-fit.fits
	// R-454B    -24.1 °F  standing-fit.below
	// R-134a    +28.7 °F  standing-fit.above
	// R-410A    -29.2 °F  standing-fit.below
}

// Superheat from the dew point, subcooling from the bubble point.
func ExampleRefrigerant_Glide() {
	for _, designation := range []string{"R-410A", "R-454B", "R-407C"} {
		r, _ := refrigerant.Lookup(designation)
		p, _ := r.BubblePressure(quantity.Fahrenheit(40))
		glide, err := r.Glide(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		class, _ := r.GlideClass()
		fmt.Printf("%s: %.1f °F, %s\n", r, glide.Fahrenheit(), class)
	}
	// Output:
	// R-410A: 0.2 °F, near-azeotropic
	// R-454B: 2.7 °F, zeotropic
	// R-407C: 10.8 °F, zeotropic
}

func ExampleRefrigerant_Subcooling() {
	r, _ := refrigerant.Lookup("R-454B")
	p := quantity.PSIG(340).Absolute(quantity.AtmosphereAt(quantity.Feet(6000)))
	subcooling, err := r.Subcooling(p, quantity.Fahrenheit(98))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f °F\n", subcooling.Fahrenheit())
	// Output:
	// 9.6 °F
}

func ExampleRefrigerant_State() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := r.State(quantity.PSIA(150), quantity.Fahrenheit(60))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Phase, s.Density, s.Enthalpy, s.Entropy)
	// Output:
	// vapor 37.816 kg/m³ 431.93 kJ/kg 1.8235 kJ/(kg·K)
}

func ExampleRefrigerant_StateAtQuality() {
	r, _ := refrigerant.Lookup("R-407C")
	for _, x := range []float64{0, 0.5, 1} {
		s, err := r.StateAtQuality(quantity.Kilopascals(500), x)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("x = %.1f: %.2f °C\n", s.Quality, s.Temperature.Celsius())
	}
	// Output:
	// x = 0.0: -3.85 °C
	// x = 0.5: -0.72 °C
	// x = 1.0: 2.36 °C
}

func ExampleRefrigerant_Critical() {
	for _, designation := range []string{"R-744", "R-410A"} {
		r, _ := refrigerant.Lookup(designation)
		c := r.Critical()
		fmt.Printf("%s: %.1f °F, %.0f psia\n", r, c.Temperature.Fahrenheit(), c.Pressure.PSIA())
	}
	// Output:
	// R-744: 87.8 °F, 1070 psia
	// R-410A: 160.4 °F, 711 psia
}

func ExampleRefrigerant_Estimated() {
	r, _ := refrigerant.Lookup("R-401A")
	estimated, why := r.Estimated()
	fmt.Println(estimated)
	fmt.Println(why)
	// Output:
	// true
	// no published fit for R-22 with R-124, R-152a with R-124; an estimate stands in, and the standard uncertainty of saturation is 0.4 K at the bubble point and 0.5 K at the dew point
}

// What an estimate leaves open widens what is made of it.
func ExampleRefrigerant_SaturationUncertainty() {
	for _, designation := range []string{"R-410A", "R-438A", "R-468A"} {
		r, err := refrigerant.Lookup(designation)
		if err != nil {
			fmt.Println(err)
			return
		}
		bubble, dew := r.SaturationUncertainty()
		fmt.Printf(
			"%v: bubble point ± %.1f K, dew point ± %.1f K\n", r, bubble.Kelvin(), dew.Kelvin(),
		)
	}
	// Output:
	// R-410A: bubble point ± 0.0 K, dew point ± 0.0 K
	// R-438A: bubble point ± 0.4 K, dew point ± 0.5 K
	// R-468A: bubble point ± 2.1 K, dew point ± 0.6 K
}

func ExampleCylinder_LiquidLevel() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7)}
	r, _ := refrigerant.Lookup("R-410A")
	for _, f := range []float64{40, 75, 110, 130} {
		level, err := c.LiquidLevel(r, quantity.Pounds(34), quantity.Fahrenheit(f))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f °F: %.0f %% liquid\n", f, 100*level)
	}
	// Output:
	//  40 °F: 61 % liquid
	//  75 °F: 65 % liquid
	// 110 °F: 71 % liquid
	// 130 °F: 77 % liquid
}

// What evaporating takes up: the vapor's enthalpy less the liquid's.
func ExampleRefrigerant_SaturatedVapor() {
	r, _ := refrigerant.Lookup("R-22")
	at := quantity.Fahrenheit(40)
	liquid, err := r.SaturatedLiquid(at)
	if err != nil {
		fmt.Println(err)
		return
	}
	vapor, err := r.SaturatedVapor(at)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%.1f Btu/lb at %.1f psia\n", (vapor.Enthalpy - liquid.Enthalpy).BtuPerPound(),
		vapor.Pressure.PSIA(),
	)
	// Output:
	// 86.6 Btu/lb at 83.3 psia
}

// The two columns of a pressure-temperature chart, gauge at sea level.
func ExampleRefrigerant_BubblePressure() {
	r, _ := refrigerant.Lookup("R-407C")
	for _, f := range []float64{40, 70, 100} {
		bubble, err := r.BubblePressure(quantity.Fahrenheit(f))
		if err != nil {
			fmt.Println(err)
			return
		}
		dew, err := r.DewPressure(quantity.Fahrenheit(f))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%3.0f °F: bubble %.1f psig, dew %.1f psig\n",
			f,
			bubble.Gauge(quantity.StandardAtmosphere).
				PSIG(),
			dew.Gauge(quantity.StandardAtmosphere).PSIG(),
		)
	}
	// Output:
	//  40 °F: bubble 80.2 psig, dew 63.2 psig
	//  70 °F: bubble 140.5 psig, dew 117.3 psig
	// 100 °F: bubble 225.5 psig, dew 196.1 psig
}

func ExampleCylinder_Contents() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	net, err := c.Contents(quantity.Pounds(61.2))
	fmt.Printf("%.1f lb %v\n", net.Pounds(), err)
	_, err = c.Contents(quantity.Pounds(25))
	fmt.Println(err)
	// Output:
	// 33.2 lb <nil>
	// gross mass of the cylinder: 11.340 kg (25.00 lb) is out of range; valid from 12.701 kg (28.00 lb) up; the scale shows less than the empty cylinder; zero the scale and read the tare (TW) on the collar again
}

// What a cubic foot holds, and how much more room the same refrigerant takes as vapor.
func ExampleRefrigerant_BubbleDensity() {
	r, _ := refrigerant.Lookup("R-410A")
	t := quantity.Fahrenheit(70)
	liquid, err := r.BubbleDensity(t)
	if err != nil {
		fmt.Println(err)
		return
	}
	vapor, err := r.DewDensity(t)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf(
		"%s, %s, %.0f times the room as vapor\n", liquid.Format(quantity.IP),
		vapor.Format(quantity.IP), liquid/vapor,
	)
	_, err = r.DewDensity(quantity.Fahrenheit(170))
	fmt.Println(err)
	// Output:
	// 67.2815 lb/ft³, 3.6670 lb/ft³, 18 times the room as vapor
	// saturation temperature of R-410A: 76.7 °C (170.0 °F) is out of range; valid from -83.7 °C (-118.6 °F) to 71.3 °C (160.4 °F); above the critical temperature it is gas at every pressure and nothing boils or condenses
}

// What evaporates in a fixed volume weighs more the warmer it is, so a compressor
// pumps more on a warm coil.
func ExampleRefrigerant_DewDensity() {
	r, _ := refrigerant.Lookup("R-22")
	for _, f := range []float64{20, 40, 50} {
		vapor, err := r.DewDensity(quantity.Fahrenheit(f))
		fmt.Printf("%.0f °F: %s %v\n", f, vapor.Format(quantity.IP), err)
	}
	// Output:
	// 20 °F: 1.0690 lb/ft³ <nil>
	// 40 °F: 1.5216 lb/ft³ <nil>
	// 50 °F: 1.7991 lb/ft³ <nil>
}

// The refrigerating effect from two lines of a table: saturated vapor leaves the
// evaporator, saturated liquid enters the expansion device.
func ExampleRefrigerant_DewEnthalpy() {
	r, _ := refrigerant.Lookup("R-22")
	vapor, err := r.DewEnthalpy(quantity.Fahrenheit(40))
	if err != nil {
		fmt.Println(err)
		return
	}
	liquid, err := r.BubbleEnthalpy(quantity.Fahrenheit(100))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println((vapor - liquid).Format(quantity.IP))
	// Output: 68.76 Btu/lb
}

func ExampleRefrigerant_DewPressure() {
	r, _ := refrigerant.Lookup("R-454B")
	p, err := r.DewPressure(quantity.Fahrenheit(40))
	fmt.Printf("%.1f psig at sea level %v\n", p.Gauge(quantity.StandardAtmosphere).PSIG(), err)
	// Output: 107.5 psig at sea level <nil>
}

// Entropy at the bubble point and the dew point, and what evaporating adds.
func ExampleRefrigerant_BubbleEntropy() {
	r, _ := refrigerant.Lookup("R-32")
	t := quantity.Fahrenheit(40)
	liquid, err1 := r.BubbleEntropy(t)
	vapor, err2 := r.DewEntropy(t)
	fmt.Println(r.Formula(), liquid, vapor, err1, err2)
	// Output: CH2F2 1.0280 kJ/(kg·K) 2.1383 kJ/(kg·K) <nil> <nil>
}

// The inside volume follows from the water capacity on the collar.
func ExampleCylinder_Volume() {
	c := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7)}
	fmt.Println(c.Volume())
	// Output: 21.68 L
}

// What has no answer says so with an error to compare with.
func Example_errors() {
	_, noBlend := refrigerant.NewBlend("none", nil)
	_, apart := refrigerant.NewBlend("wet", []refrigerant.Component{
		{Designation: "R-718", MassFraction: 0.3}, {Designation: "R-290", MassFraction: 0.7},
	})
	ammonia, _ := refrigerant.Lookup("R-717")
	_, toxic := ammonia.RoomFloor(quantity.Kilograms(2), refrigerant.OnWall)
	unlisted, _ := refrigerant.Lookup("R-444A")
	_, noLimit := unlisted.FlammabilityLimit()
	_, phase := ammonia.Leak(refrigerant.LeakCase{From: refrigerant.TwoPhase})
	fmt.Println(
		errors.Is(noBlend, refrigerant.ErrEmptyBlend), errors.Is(apart, refrigerant.ErrUnsolved),
		errors.Is(toxic, refrigerant.ErrRoomToxic),
		errors.Is(noLimit, refrigerant.ErrNoFlammabilityLimit),
		errors.Is(phase, refrigerant.ErrLeakPhase),
	)
	// Output: true true true true true
}
