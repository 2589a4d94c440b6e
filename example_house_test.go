package satline_test

import (
	"fmt"
	"log"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// houseVisit is an invented machine on an invented hill.
func houseVisit() satline.Visit {
	return satline.Visit{
		Equipment: satline.Equipment{
			Refrigerant: "R-32", Metering: satline.EXV, NominalCapacity: quantity.Tons(2),
		},
		Site: satline.Site{Elevation: new(quantity.Feet(2400))},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(122)),
			LiquidPressure:  satline.Measured(quantity.PSIG(335)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(53)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(91)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(84)),
		},
	}
}

// A firm has a target of its own where the label has none.
func ExampleHouse() {
	v := houseVisit()
	v.House = &satline.House{
		Name:       "Larch & Daughters, field manual 4",
		Subcooling: new(quantity.FahrenheitDelta(8).PlusMinus(quantity.FahrenheitDelta(1))),
		Tolerance:  quantity.FahrenheitDelta(2),
	}
	a, err := satline.Assess(v)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(a.Charge.Reading.Says.Text)
	fmt.Println(a.Charge.Reading.TargetSource.Title)
	// Output:
	// Subcooling 10.7 °F ± 0.9 °F is 2.7 °F above the target 8.0 °F (±2.0 °F, the rules of the house)
	// Larch & Daughters, field manual 4
}

// An app says steps in words of its own, and leaves the rest as it is.
func ExampleAssessment_Reworded() {
	v := houseVisit()
	v.Checks = []satline.Check{{Look: "indoor-air-path"}} // seen, and all clear
	a, err := satline.Assess(v)
	if err != nil {
		log.Fatal(err)
	}
	a = a.Reworded(func(f fact.Fact) (string, bool) {
		switch f.Code {
		case satline.StepLeave:
			return "All good. Sheet B.", true
		case satline.StepReadAgain:
			return "Back to the gauges.", true
		}
		return "", false
	})
	for _, step := range a.Plan {
		fmt.Println(step.Do.Text)
	}
	// Output:
	// All good. Sheet B.
}

// Instruments are specified as their data sheets do: half a per cent of the reading.
func ExampleInstruments() {
	v := houseVisit()
	v.Instruments = satline.Instruments{
		Gauge: quantity.PSIG(0.2), GaugePart: 0.005, Clamp: quantity.FahrenheitDelta(0.4),
	}
	a, err := satline.Assess(v)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(a.Derived.Subcooling)
	// Output:
	// 6.0 K ± 0.3 K
}

// Two persons read the same assessment, each in a language and units of their own.
func ExampleAssessment_In() {
	a, err := satline.Assess(houseVisit())
	if err != nil {
		log.Fatal(err)
	}
	for _, language := range satline.Languages() {
		in := a.In(language, quantity.SI)
		reading := in.Readings[0]
		fmt.Println(satline.Word("reading."+reading.Field, language)+":",
			satline.Show(reading.Value, language, in.Units))
	}
	// Output:
	// suction pressure: 841.2 kPag ± 4.1 kPa
	// presión de succión: 841,2 kPag ± 4,1 kPa
}
