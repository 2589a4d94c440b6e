package main

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// modelFaults are the faults of the diagnosis problems as the cycle model takes
// them. A name is part of the cause in the patterns.
var modelFaults = []struct {
	cause     string
	faults    cycle.Faults
	valveOnly bool
}{
	{"undercharge", cycle.Faults{Charge: -0.2}, false},
	{"overcharge", cycle.Faults{Charge: 0.25}, false},
	{"low indoor airflow", cycle.Faults{IndoorAirflow: -0.45}, false},
	{"fouled condenser", cycle.Faults{OutdoorAirflow: -0.4}, false},
	{"restriction", cycle.Faults{LiquidRestriction: quantity.Bar(8)}, false},
	{"leaking compressor valves", cycle.Faults{CompressorLeak: 0.35}, false},
	{"bulb", cycle.Faults{BulbOff: 0.5}, true},
}

// nearestFault solves an R-22 split system with each fault and returns the one
// whose five values move most nearly in the direction of moved, °F.
func nearestFault(valve bool, moved [5]float64) (string, error) {
	r22, err := refrigerant.Lookup("R-22")
	if err != nil {
		return "", err
	}
	device := refrigerant.FixedRestrictor
	if valve {
		device = refrigerant.TXV
	}
	machine, err := cycle.Residential(r22, quantity.Tons(3), device)
	if err != nil {
		return "", err
	}
	weather := cycle.Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(
			85,
		), ReturnDryBulb: quantity.Fahrenheit(77), ReturnWetBulb: quantity.Fahrenheit(65),
	}
	five := func(f cycle.Faults) ([5]float64, error) {
		o, err := machine.Solve(weather, f)
		return [5]float64{
			o.Evaporating.Fahrenheit(), o.Superheat.FahrenheitDelta(), o.Condensing.Sub(weather.OutdoorDryBulb).FahrenheitDelta(),
			o.Subcooling.FahrenheitDelta(), weather.ReturnDryBulb.Sub(o.Supply).FahrenheitDelta(),
		}, err
	}
	sound, err := five(cycle.Faults{})
	if err != nil {
		return "", err
	}
	// How far faults move each value as a rule; without it the superheat, which
	// moves most, would decide alone.
	usual := [5]float64{5, 10, 5, 7, 4}
	best, most := "", math.Inf(-1)
	for _, m := range modelFaults {
		if m.valveOnly && !valve {
			continue
		}
		values, err := five(m.faults)
		if err != nil {
			return "", err
		}
		dot, square := 0.0, 0.0
		for i := range values {
			d := (values[i] - sound[i]) / usual[i]
			dot += d * moved[i] / usual[i]
			square += d * d
		}
		if likeness := dot / math.Sqrt(square); likeness > most {
			best, most = m.cause, likeness
		}
	}
	return best, nil
}
