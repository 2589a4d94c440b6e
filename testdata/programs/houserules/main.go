// Command houserules assesses a visit by the rules of a firm beside those of the trade: a
// target, a band, instruments, a fault and words of its own. Firm and figures are invented.
package main

import (
	"fmt"
	"log"
	"os"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func main() {
	v, err := satline.ReadVisit(os.Stdin)
	if err != nil {
		log.Fatal(err)
	}
	v.House = &satline.House{
		Name:       "Larch & Daughters, field manual 4",
		Subcooling: new(quantity.FahrenheitDelta(12).PlusMinus(quantity.FahrenheitDelta(1))),
		Tolerance:  quantity.FahrenheitDelta(3),
		Faults: []satline.HouseFault{
			{Name: "kinked flare behind the wall unit", Like: "liquid-line-restriction", Share: 30},
		},
	}
	if len(os.Args) > 1 {
		v.House.Holds = []satline.HouseHold{{Rule: os.Args[1]}}
	}
	v.Instruments = satline.Instruments{GaugePart: 0.005, AirflowPart: 0.04}
	a, err := satline.Assess(v)
	if err != nil {
		log.Fatal(err)
	}
	a = a.Reworded(func(f fact.Fact) (string, bool) {
		if f.Code != satline.StepReadAgain {
			return "", false
		}
		return "Fill in sheet B.", true
	})
	fmt.Println(a.Headline.Text)
	if r := a.Charge.Reading; r != nil {
		fmt.Printf("%s\n  by %v, band by %v\n", r.Says.Text, r.TargetSource, r.ToleranceSource)
	}
	for _, f := range a.Findings {
		for _, x := range f.Faults {
			fmt.Printf("  %.0f%% %s\n", 100*f.Chance*x.Chance, x.Fault)
		}
	}
	for _, s := range a.Plan {
		fmt.Println("-", s.Do.Text)
	}
}
