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
		Equipment: satline.Equipment{
			Refrigerant:     "R-410A",
			Metering:        satline.FixedRestrictor,
			NominalCapacity: quantity.Tons(3),
		},
		Site: satline.Site{Elevation: new(quantity.Feet(6000))},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(108)),
			LiquidPressure:  satline.Measured(quantity.PSIG(300)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(66)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(92)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(82)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(75)),
			ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(63)),
		},
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(assessment.Headline.Text)
	for _, step := range assessment.Plan {
		fmt.Println("-", step.Do.Text)
	}
	// Output:
	// Too little refrigerant, about 25 %: above 99 %.
	// - Find the leak: oil marks, joints, valves, coils.
	// - Read on the label what is missing: charge, target.
	// - Add 10.0 oz.
	// - Let it run 15 min, then read again.
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
	visit, err := satline.ReadVisit(
		strings.NewReader(`{"equipment": {"refrigerant": "R-32", "metering": "TXV"}}`),
	)
	fmt.Println(visit.Equipment.Refrigerant, visit.Equipment.Metering, err)
	// Output: R-32 TXV <nil>
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
	fmt.Println(assessment.Charge.Why[0].Text)
	fmt.Println(assessment.WeighIn.Total.Value.Format(visit.Units))
	// Output:
	// outdoor air 48.0 °F is below 55.0 °F
	// 7.78 lb
}

// What the machine of an invented visit will do tonight.
func ExampleForecast() {
	visit := satline.Visit{
		Equipment: satline.Equipment{
			Refrigerant:     "R-410A",
			Metering:        satline.TXV,
			NominalCapacity: quantity.Tons(3),
		},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(122)),
			LiquidPressure:  satline.Measured(quantity.PSIG(340)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(52)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(95)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(88)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(75)),
			ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(63)),
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
