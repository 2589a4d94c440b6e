package satline_test

import (
	"fmt"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// An invented visit: an R-410A split system with a piston, in the mountains.
func ExampleAssess() {
	visit := satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-410A", Metering: satline.FixedRestrictor, NominalCapacity: quantity.Tons(3)},
		Site:      satline.Site{Elevation: new(quantity.Feet(6000))},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(108)), LiquidPressure: satline.Measured(quantity.PSIG(300)),
			SuctionLine: satline.Measured(quantity.Fahrenheit(66)), LiquidLine: satline.Measured(quantity.Fahrenheit(92)),
			OutdoorDryBulb: satline.Measured(quantity.Fahrenheit(82)),
			ReturnDryBulb:  satline.Measured(quantity.Fahrenheit(75)), ReturnWetBulb: satline.Measured(quantity.Fahrenheit(63)),
		},
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(assessment.Headline)
	fmt.Println(assessment.Charge.Outcome)
	fmt.Println(assessment.Derived.Superheat.Format(quantity.IP))
	// Output:
	// Undercharged: superheat 32.1 °F ± 0.9 °F against a target of 12.2 °F (band ±5.0 °F), more than 99 % sure.
	// undercharged
	// 32.1 °F ± 0.9 °F
}

func ExampleDecodeVisit() {
	_, err := satline.DecodeVisit([]byte(`{
	  "equipment": {"refrigerant": "R-32", "metering": "TXV"},
	  "readings": {"liquidPressure": 350}
	}`))
	fmt.Println(err)
	// Output:
	// visit: readings.liquidPressure (line 3): gauge pressure "350": the unit is missing; write a number and one of psig, kPag, barg, inHg vac, Pag, in quotes
}

func ExampleReadVisit() {
	visit, err := satline.ReadVisit(strings.NewReader(`{"equipment": {"refrigerant": "R-32", "metering": "TXV"}}`))
	fmt.Println(visit.Equipment.Refrigerant, visit.Equipment.Metering, err)
	// Output: R-32 TXV <nil>
}

// A reading takes the uncertainty of the visit's instruments, or states its own.
func ExampleMeasured() {
	byInstrument := satline.Measured(quantity.PSIG(118))
	stated := new(quantity.PSIG(118).PlusMinus(quantity.PSIG(0.5)))
	fmt.Println(byInstrument.Format(quantity.IP))
	fmt.Println(stated.Format(quantity.IP))
	// Output:
	// 118.0 psig
	// 118.0 psig ± 0.5 psi
}

func ExampleAssessment_WriteMarkdown() {
	visit, err := satline.ReadVisit(strings.NewReader(`{
	  "title": "Invented",
	  "equipment": {"refrigerant": "R-134a", "metering": "TXV"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	var report strings.Builder
	if err := assessment.WriteMarkdown(&report, satline.Owner); err != nil {
		fmt.Println(err)
	}
	found, _, _ := strings.Cut(report.String(), "\n## What comes next")
	fmt.Println(found)
	// Output:
	// # Invented
	//
	// ## What was found
	//
	// The amount of refrigerant was not measured.
}

// On a cold day no reading tells the charge, and the machine is weighed in: what
// the label says, and the liquid line beyond what the label allows for.
func ExampleAssess_weighIn() {
	visit, err := satline.ReadVisit(strings.NewReader(`{
	  "title": "Invented",
	  "equipment": {
	    "refrigerant": "R-454B", "metering": "TXV", "arrangement": "split",
	    "label": {"charge": "7 lb", "factoryLineSet": "15 ft"},
	    "lineSet": {"length": "40 ft", "liquidDiameter": "0.375 in"}
	  },
	  "readings": {"outdoorDryBulb": "48 °F"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(assessment.Charge.Reasons[0])
	fmt.Println(assessment.Charge.Instead[0])
	fmt.Println(assessment.WeighIn.Text(visit.Units))
	// Output:
	// outdoor air 48.0 °F is below 55.0 °F: the condenser is so cold that pressures, superheat and subcooling say little about the charge
	// wait for warmer air, or recover the charge and weigh in what the label says; a procedure for cold weather from the unit's maker comes before this rule
	// weigh in 7 lb 12.4 oz ± 3.6 oz: 7 lb 0.0 oz by the label, 12.4 oz more for a liquid line of another length than the label allows for (0.50 oz per foot, computed from liquid density and tube bore (ASTM B280)); only into a circuit that is empty, tight and evacuated
}

// What the machine of an invented visit will do tonight.
func ExampleForecast() {
	visit := satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-410A", Metering: satline.TXV, NominalCapacity: quantity.Tons(3)},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(122)), LiquidPressure: satline.Measured(quantity.PSIG(340)),
			SuctionLine: satline.Measured(quantity.Fahrenheit(52)), LiquidLine: satline.Measured(quantity.Fahrenheit(95)),
			OutdoorDryBulb: satline.Measured(quantity.Fahrenheit(88)),
			ReturnDryBulb:  satline.Measured(quantity.Fahrenheit(75)), ReturnWetBulb: satline.Measured(quantity.Fahrenheit(63)),
		},
	}
	outlook, err := satline.Forecast(visit, satline.CoolNight())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(outlook[0].Scenario.Name, outlook[0].FreezeChance < 0.5)
	// Output: a cool night true
}
