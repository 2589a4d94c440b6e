package satline_test

import (
	"errors"
	"fmt"
	"math"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// An error names the field to mend; what is out of range is a *quantity.RangeError
// too.
func ExampleVisitError() {
	_, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-410A", Metering: satline.TXV},
		Readings:  satline.Readings{LiquidLine: satline.Measured(quantity.Fahrenheit(920))},
	})
	if at, ok := errors.AsType[*satline.VisitError](err); ok {
		fmt.Println(at.Field, errors.Is(err, satline.ErrVisit))
	}
	if out, ok := errors.AsType[*quantity.RangeError](err); ok {
		fmt.Println("valid up to", out.Max)
	}
	// Output:
	// readings.liquidLine true
	// valid up to 110.0 °C
}

// What an instrument may err is the visit's to say, once for all of its readings.
func ExampleDefaultInstruments() {
	in := satline.DefaultInstruments()
	in.Clamp = quantity.FahrenheitDelta(0.5)
	fmt.Printf(
		"gauge %.2f psi, clamp %.2f °F, wet bulb %.2f °F\n", in.Gauge.PSIG(), in.Clamp.Fahrenheit(),
		in.WetBulb.Fahrenheit(),
	)
	// Output: gauge 0.60 psi, clamp 0.50 °F, wet bulb 0.70 °F
}

// What follows from the readings of an invented visit, in both systems of units.
func ExampleDerived_Values() {
	assessment, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-32", Metering: satline.TXV},
		Readings: satline.Readings{
			LiquidPressure: satline.Measured(quantity.PSIG(330)),
			LiquidLine:     satline.Measured(quantity.Fahrenheit(94)),
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		for _, v := range assessment.Derived.Values() {
			fmt.Printf("%s: %s\n", v.Name, satline.Show(v, satline.English, sys))
		}
	}
	// Output:
	// condensingBubble: 100.9 °F ± 0.1 °F
	// subcooling: 6.9 °F ± 0.9 °F
	// condensingBubble: 38.3 °C ± 0.1 °C
	// subcooling: 3.8 K ± 0.5 K
}

// A site at sea level that says so is surer of its atmosphere than one that says nothing.
func ExampleSite_Atmosphere() {
	for _, site := range []satline.Site{{Elevation: new(quantity.Feet(6000))},
		{Elevation: new(quantity.Feet(0))}, {}} {
		used, err := site.Atmosphere()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s (%s)\n", used.Pressure.Format(quantity.IP), used.Source)
	}
	// Output:
	// 11.8 psia ± 0.1 psi (elevation)
	// 14.7 psia ± 0.1 psi (elevation)
	// 14.7 psia ± 0.2 psi (sea-level-assumed)
}

// A valve hunts: the log shows its superheat dip to none, whatever its mean.
func ExampleAssessment_valve() {
	visit := satline.Visit{
		Scope: satline.VerdictOnly,
		Equipment: satline.Equipment{
			Refrigerant: "R-410A", Metering: satline.TXV,
			Label: satline.Label{
				Subcooling: new(
					quantity.FahrenheitDelta(10).PlusMinus(quantity.FahrenheitDelta(1)),
				),
			},
		},
	}
	for i := range 60 {
		at := time.Duration(i) * 10 * time.Second
		swing := 7 * math.Sin(2*math.Pi*at.Seconds()/100)
		visit.Log = append(visit.Log, satline.LogEntry{At: at, Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(125)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(50 + swing)),
			LiquidPressure:  satline.Measured(quantity.PSIG(340)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(95)),
		}})
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	if hunts := assessment.Valve; hunts != nil {
		fmt.Println(hunts.Says.Text)
		fmt.Println(hunts.Course.State, "every", hunts.Course.Period.Round(time.Second))
	}
	for _, d := range assessment.Dangers {
		fmt.Println(d.Code, d.Grave)
	}
	// Output:
	// Superheat hunts between 0.5 °F and 13.8 °F, about every 98 s
	// hunting every 1m38s
	// slugging true
}

func ExampleCoolNight() {
	night := satline.CoolNight()
	fmt.Println(
		night.OutdoorDryBulb.Format(quantity.IP), night.ReturnDryBulb.Format(quantity.IP),
		night.ReturnWetBulb.Format(quantity.IP),
	)
	// Output: 60.0 °F 70.0 °F 58.0 °F
}
