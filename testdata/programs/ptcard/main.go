// Command ptcard prints a card of pressures against temperature for a refrigerant, for the
// gauges at an elevation, in both systems of units.
package main

import (
	"fmt"
	"log"
	"os"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func main() {
	if len(os.Args) != 3 {
		log.Fatal(`give a refrigerant and an elevation, as in: ptcard R-454B "5,200 ft"`)
	}
	fluid, err := refrigerant.Lookup(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	var elevation quantity.Length
	if err := elevation.UnmarshalText([]byte(os.Args[2])); err != nil {
		log.Fatal(err)
	}
	atmosphere := quantity.AtmosphereAt(elevation)
	fmt.Printf("%s, gauge at %s\n", fluid.Designation(), elevation.Format(quantity.IP))
	fmt.Printf("%10s %10s %12s %12s %12s %12s\n", "", "", "bubble", "dew", "bubble", "dew")
	for f := -20.0; f <= 140; f += 20 {
		t := quantity.Fahrenheit(f)
		bubble, err := fluid.BubblePressure(t)
		if err != nil {
			fmt.Printf("%10s: %v\n", t.Format(quantity.IP), err)
			continue
		}
		dew, err := fluid.DewPressure(t)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%10s %10s", t.Format(quantity.IP), t.Format(quantity.SI))
		for _, units := range []quantity.System{quantity.IP, quantity.SI} {
			for _, p := range []quantity.Pressure{bubble, dew} {
				fmt.Printf(" %12s", p.Gauge(atmosphere).Format(units))
			}
		}
		fmt.Println()
	}
}
