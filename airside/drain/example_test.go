package drain_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/quantity"
)

// Water under an air handler in an attic: what was looked at, and what comes next.
func ExampleJudge() {
	report, err := drain.Judge(drain.Readings{Iced: drain.No, PanFull: drain.Yes, Above: drain.Yes})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range report.Plan {
		fmt.Println(satline.Say(s, satline.English, quantity.IP))
	}
	// Output:
	// Clear the drain: suck it out at its end, flush pan and line.
	// Pour water into the pan with the blower on: it must run off.
}

func ExampleSealFor() {
	seal, err := drain.SealFor(quantity.InchesWater(0.8))
	fmt.Println(seal.Format(quantity.IP), err)
	// Output: 1.800 in <nil>
}
