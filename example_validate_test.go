package satline_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// A form shows what to mend at each of its fields, all at once.
func ExampleVisit_Validate() {
	v := satline.Visit{
		Equipment: satline.Equipment{Metering: satline.TXV},
		Log: []satline.LogEntry{{Readings: satline.Readings{
			SuctionLine: satline.Measured(quantity.Fahrenheit(525)), // 52.5 was meant
		}}},
	}
	for _, p := range v.Validate() {
		fmt.Println(p.Field, "is", p.Kind)
		if r, ok := errors.AsType[*quantity.RangeError](p); ok {
			fmt.Println("  from", quantity.InBoth(r.Min), "to", quantity.InBoth(r.Max))
		}
	}
	// Output:
	// equipment.refrigerant is missing
	// log[0].suctionLine is out of range
	//   from -60.0 °C (-76.0 °F) to 100.0 °C (212.0 °F)
}
