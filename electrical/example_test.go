package electrical_test

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

// A compressor hums and trips. The readings come as a technician's program writes them.
func ExampleJudge() {
	var r electrical.Readings
	err := strictjson.Decode([]byte(`{
		"nameplate": {"voltage": "208 V", "highVoltage": "230 V"},
		"supply": {"atRest": ["238 V"]},
		"compressor": {
			"state": "hums", "currents": ["88 A"], "ratedLoad": "17.9 A", "lockedRotor": "112 A",
			"runCapacitor": {"rated": "45 µF", "measured": "21.3 µF"}
		}
	}`), &r, strictjson.Limits{Bytes: 10000, Depth: 8, Items: 50})
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := electrical.Judge(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range report.Dangers {
		fmt.Println("danger:", d.Code)
	}
	for _, s := range report.Plan {
		fmt.Println(satline.Say(s.Do, satline.English, quantity.IP))
	}
	// Output:
	// danger: electrical.locked
	// Stop it, lock out and tag; discharge the capacitors; prove it dead.
	// Renew the compressor run capacitor: 45.0 µF, at least the same voltage rating.
	// Start it; read voltage and currents again.
}

// A run capacitor is read while it works: 4.9 A in its wire, 290 V across it.
func ExampleCapacitanceUnderLoad() {
	c, err := electrical.CapacitanceUnderLoad(
		quantity.Amperes(4.9).PlusMinus(quantity.Amperes(0.1)),
		quantity.Volts(290).PlusMinus(quantity.Volts(2)), quantity.Hertz(60),
	)
	fmt.Println(c, err)
	// Output: 44.8 µF ± 1.0 µF <nil>
}

// Three phases, and what is left of a motor's power on them.
func ExampleUnbalance() {
	u, err := electrical.Unbalance([3]quantity.Voltage{460, 467, 450})
	fmt.Println(u, err)
	power, err := electrical.Derating(u)
	fmt.Println(power, err)
	// Output:
	// 2.0 % <nil>
	// 95 % <nil>
}

func ExampleDerating() {
	power, err := electrical.Derating(quantity.Percent(3))
	fmt.Println(power, err)
	_, err = electrical.Derating(quantity.Percent(6))
	fmt.Println(err != nil)
	// Output:
	// 88 % <nil>
	// true
}

// What hangs on one part of the machine, by the part that a check is about.
func ExampleReport() {
	report, err := electrical.Judge(electrical.Readings{
		OutdoorFan: electrical.Motor{State: electrical.Silent},
		IndoorFan:  electrical.Motor{State: electrical.Runs},
		Compressor: electrical.Motor{State: electrical.Trips},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, part := range []string{
		electrical.CompressorPart, electrical.OutdoorFanPart, electrical.IndoorFanPart,
	} {
		for _, c := range report.Checks {
			if c.Part == part {
				fmt.Println(part, c.Outcome, c.Says.Code)
			}
		}
	}
	// Output: outdoor-fan wrong electrical.fan-stands
}
