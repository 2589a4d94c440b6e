// Command livesession follows gauges that send a line of JSON a second, tells when the charge
// can be judged, and prints the visit to keep. The machine stands in the code; it is invented.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"log"
	"os"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

func main() {
	session, err := satline.NewSession(satline.Visit{
		Title: "Cold Brook School, room 12 (invented)",
		Equipment: satline.Equipment{
			Refrigerant: "R-454B", Metering: satline.TXV, NominalCapacity: quantity.Tons(2.5),
			Label: satline.Label{
				Subcooling: new(
					quantity.FahrenheitDelta(9).PlusMinus(quantity.FahrenheitDelta(0.5)),
				),
			},
		},
	})
	if err != nil {
		log.Fatal(err)
	}
	said := satline.ChargeOutcome("")
	for lines := bufio.NewScanner(os.Stdin); lines.Scan(); {
		var sample satline.LogEntry
		if err := json.Unmarshal(lines.Bytes(), &sample); err != nil {
			fmt.Println("not taken:", err)
			continue
		}
		for _, x := range session.Take(sample) {
			fmt.Printf("%v: %s not taken: %s\n", x.At, x.Field, x.Why)
		}
		now, err := session.Verdict()
		if err != nil {
			fmt.Println(err)
			continue
		}
		if now.Charge.Outcome != said {
			said = now.Charge.Outcome
			fmt.Printf("%v: charge %s\n", sample.At, said)
		}
	}
	all, err := session.Assess()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(all.Headline.Text)
	kept, err := json.Marshal(session.Visit())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s\n", kept)
}
