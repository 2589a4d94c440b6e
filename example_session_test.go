package satline_test

import (
	"encoding/json"
	"fmt"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// From a gauge to an answer: the gauges send once a second, a hose comes off for a moment,
// and what the display shows can be asked for at any time. The machine is invented.
func ExampleSession() {
	session, err := satline.NewSession(satline.Visit{
		Title: "Reading room",
		Equipment: satline.Equipment{Refrigerant: "R-410A", Metering: satline.TXV,
			Label: satline.Label{Subcooling: new(quantity.FahrenheitDelta(10).PlusMinus(0))}},
		Site: satline.Site{Elevation: new(quantity.Feet(600))},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := session.Conditions(satline.Conditions{Running: 20 * time.Minute}); err != nil {
		fmt.Println(err)
	}
	for second := range 600 {
		sample := satline.LogEntry{At: time.Duration(second) * time.Second}
		sample.LiquidPressure = satline.Measured(quantity.PSIG(340))
		sample.LiquidLine = satline.Measured(quantity.Fahrenheit(94))
		if second%5 == 0 { // the thermometers send less often
			sample.OutdoorDryBulb = satline.Measured(quantity.Fahrenheit(85))
			sample.ReturnDryBulb = satline.Measured(quantity.Fahrenheit(75))
			sample.ReturnWetBulb = satline.Measured(quantity.Fahrenheit(63))
		}
		if second == 300 {
			sample.LiquidPressure = satline.Measured(quantity.PSIG(0))
		}
		for _, aside := range session.Take(sample) {
			fmt.Println(aside.At, aside.Field, aside.Why)
		}
	}
	shown, err := session.Verdict()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(shown.Steadiness.Course.State,
		shown.Charge.Reading.Measured.Value.Format(quantity.IP))
	saved, err := json.Marshal(session.Visit())
	if err != nil {
		fmt.Println(err)
		return
	}
	back, err := satline.DecodeVisit(saved)
	fmt.Println(len(back.Log), "entries,", err)
	// Output:
	// 5m0s liquidPressure hose off
	// settled 10.5 °F
	// 60 entries, <nil>
}

// A charging loop: what was moved and what was seen go in beside the readings, and the whole
// assessment can be asked for at any time. The machine is invented.
func ExampleSession_Move() {
	session, err := satline.NewSession(satline.Visit{
		Equipment: satline.Equipment{
			Refrigerant: "R-410A", Metering: satline.TXV,
			Label: satline.Label{Subcooling: new(quantity.FahrenheitDelta(10).PlusMinus(0))},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	add := satline.Move{At: 10 * time.Minute, Added: quantity.Ounces(6)}
	if err := session.Move(add); err != nil {
		fmt.Println(err)
	}
	if err := session.Look(satline.Check{Look: "crystal-ball"}); err != nil {
		fmt.Println("no such look")
	}
	if err := session.Look(satline.Check{Look: satline.Looks(satline.English,
		quantity.IP)[0].Code}); err != nil {
		fmt.Println(err)
	}
	whole, err := session.Assess()
	fmt.Println(len(session.Visit().Moves), len(session.Visit().Checks), whole.Charge.Outcome, err)
	// Output:
	// no such look
	// 1 1 not-judged <nil>
}
