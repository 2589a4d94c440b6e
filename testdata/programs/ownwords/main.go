// Command ownwords prints an assessment in words of its own. It reads codes and quantities
// and not one sentence, so it is right in whatever language the assessment speaks.
package main

import (
	"fmt"
	"log"
	"os"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

var charge = map[satline.ChargeOutcome]string{
	satline.ChargeInBand: "leave it", satline.ChargeLow: "too little",
	satline.ChargeHigh: "too much",
	satline.ChargeOpen: "cannot tell yet", satline.ChargeNotJudged: "not to be judged",
}

func main() {
	v, err := satline.ReadVisit(os.Stdin)
	if err != nil {
		log.Fatal(err)
	}
	a, err := satline.Assess(v)
	if err != nil {
		log.Fatal(err)
	}
	for _, d := range a.Dangers {
		fmt.Println("BEWARE", d.Code, map[bool]string{true: "-- switch off"}[d.Stops])
	}
	fmt.Printf("CHARGE %s (low %.0f%%, high %.0f%%)\n", charge[a.Charge.Outcome],
		100*a.Charge.Low, 100*a.Charge.High)
	for _, f := range a.Findings {
		if f.Chance >= 0.1 {
			fmt.Printf("MAYBE  %s %.0f%%\n", f.Cause, 100*f.Chance)
		}
	}
	if sh := a.Derived.Superheat; sh != nil {
		fmt.Println("SUPERHEAT", sh.Value.Format(quantity.SI))
	}
	for i, s := range a.Plan {
		fmt.Printf(
			"%d. %s%s\n", i+1, s.Do.Code, map[bool]string{true: " (refrigerant moves)"}[s.Moves],
		)
	}
}
