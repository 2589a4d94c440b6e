package charge_test

import (
	"errors"
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func ExampleTubeOf() {
	tube, _ := charge.TubeOf(quantity.Inches(0.375), charge.Annealed)
	fmt.Printf("bore %.3f in\n", tube.Bore().Inches())
	_, err := charge.TubeOf(quantity.Inches(0.44), charge.Annealed)
	fmt.Println(err)
	// Output:
	// bore 0.311 in
	// outside diameter of a tube: 11.18 mm (0.440 in) is out of range; ASTM B280 has, in inches, 0.125, 0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 0.875, 1.125, 1.375, 1.625; measure across the outside, without insulation
}

func ExampleTubes() {
	for _, tube := range charge.Tubes(charge.Drawn)[:3] {
		fmt.Printf("%.3f in outside, %.3f in bore\n", tube.Outside.Inches(), tube.Bore().Inches())
	}
	// Output:
	// 0.250 in outside, 0.200 in bore
	// 0.375 in outside, 0.315 in bore
	// 0.500 in outside, 0.430 in bore
}

func ExampleTube_VolumeOf() {
	tube, _ := charge.TubeOf(quantity.Inches(0.375), charge.Annealed)
	fmt.Printf("%.0f mL in 25 ft\n", tube.VolumeOf(quantity.Feet(25)).Liters()*1000)
	// Output: 373 mL in 25 ft
}

func ExampleLineCharge() {
	r22, _ := refrigerant.Lookup("R-22")
	tube, _ := charge.TubeOf(quantity.Inches(0.375), charge.Annealed)
	m, _ := charge.LineCharge(r22, tube, quantity.Feet(25), quantity.Fahrenheit(95))
	fmt.Printf("%.1f oz in 25 ft of 3/8 in line\n", m.Ounces())
	// Output: 15.1 oz in 25 ft of 3/8 in line
}

func ExampleWeighedCharge_Weigh() {
	r22, _ := refrigerant.Lookup("R-22")
	tube, _ := charge.TubeOf(quantity.Inches(0.375), charge.Annealed)
	w := charge.WeighedCharge{
		Fluid:         r22,
		Label:         quantity.Pounds(7),
		FactoryLength: quantity.Feet(15),
		Length:        quantity.Feet(40).PlusMinus(quantity.Feet(1)),
		Tube:          tube,
		Device:        charge.DeviceIndoors,
		Accessories:   []charge.Accessory{{Name: "filter drier", Mass: quantity.Ounces(4)}},
	}
	out, err := w.Weigh()
	fmt.Printf(
		"%.1f oz for the line, %.1f oz for accessories: %.1f lb ± %.1f oz, %v\n", out.Line.Ounces(),
		out.Accessories.Ounces(), out.Total.Value.Pounds(), quantity.Mass(out.Total.Std).Ounces(),
		err,
	)
	fmt.Println(out.Source)
	fmt.Println(out.Fact())
	// Output:
	// 15.1 oz for the line, 4.0 oz for accessories: 8.2 lb ± 2.4 oz, <nil>
	// computed from liquid density and tube bore (ASTM B280)
	// result.weigh-in total=3.718 kg ± 0.068 kg label=3.175 kg more=0.543 kg
}

func ExampleRecoverTo() {
	for _, name := range []string{"R-22", "R-134a"} {
		fluid, _ := refrigerant.Lookup(name)
		level, _ := charge.RecoverTo(fluid, quantity.Pounds(7))
		fmt.Printf("%s, %v: to %.0f in. Hg of vacuum\n", name, level.Class, level.InchesOfVacuum)
	}
	// Output:
	// R-22, high-pressure: to 0 in. Hg of vacuum
	// R-134a, medium-pressure: to 10 in. Hg of vacuum
}

func ExampleTankRoom() {
	r22, _ := refrigerant.Lookup("R-22")
	r134a, _ := refrigerant.Lookup("R-134a")
	tank := refrigerant.Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}
	room, _ := charge.TankRoom(tank, r22, r22, quantity.Pounds(50))
	fmt.Printf("%.0f lb more\n", room.Pounds())
	_, err := charge.TankRoom(tank, r134a, r22, quantity.Pounds(50))
	if mixed, ok := errors.AsType[*charge.MixedError](err); ok {
		fmt.Println("never mix", mixed.Holds, "and", mixed.Recovered)
	}
	// Output:
	// 19 lb more
	// never mix R-134a and R-22
}

func ExampleJudgeDecay() {
	var readings []charge.Sample[quantity.Pressure]
	for m := range 13 {
		readings = append(readings, charge.Sample[quantity.Pressure]{
			At:    time.Duration(m) * time.Minute,
			Value: quantity.Microns(2400 - 2100*math.Exp(-float64(m)/3)),
		})
	}
	d, _ := charge.JudgeDecay(readings, charge.DecayLimits{})
	fmt.Println(d.Fact())
	// Output: result.decay-moisture level=320.0 Pa limit=66.7 Pa
}

// A flare of an R-32 unit, tested with nitrogen and a trace of gas under 150 psig by
// a detector that shows 3 g a year.
func ExampleJointTest_Judge() {
	const year = 365.25 * 24 * 3600
	j := charge.JointTest{
		Allowable:   quantity.PSIG(550),
		Applied:     quantity.PSIG(150),
		Sensitivity: quantity.GramsPerSecond(3 / year),
	}
	out, err := j.Judge()
	fmt.Println(out.Outcome, out.Reason, err)
	j.Applied = quantity.PSIG(100)
	out, _ = j.Judge()
	fmt.Printf("%v, %s: at least %.1f psig\n", out.Outcome, out.Reason, out.Least.PSIG())
	// Output:
	// holds no-leak-found <nil>
	// open, pressure-too-low: at least 137.5 psig
}

// Overnight the pipe cooled by 10 °F, and the gauge shows 10 psi less.
func ExamplePressureTest_Judge() {
	clamp := quantity.FahrenheitDelta(0.7)
	p := charge.PressureTest{
		Start: quantity.PSIG(500).
			PlusMinus(quantity.PSIG(0.5)),
		StartGas: quantity.Fahrenheit(80).PlusMinus(clamp),
		End: quantity.PSIG(490).
			PlusMinus(quantity.PSIG(0.5)),
		EndGas:     quantity.Fahrenheit(70).PlusMinus(clamp),
		Atmosphere: quantity.StandardAtmosphere.PlusMinus(quantity.Pascals(300)),
		Limit:      quantity.PSIG(550),
	}
	out, err := p.Judge()
	fmt.Println(out.Fact(), err)
	// Output:
	// result.pressure-holds shown=3378.4 kPag expected=3376.0 kPag detectable=17.0 kPag <nil>
}
