package main

import (
	"fmt"
	"math"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// modelFaults are the faults of the diagnosis problems as the cycle model takes
// them. A name is part of the cause in the patterns.
var modelFaults = []struct {
	cause     string // a name or part of one in the patterns
	faults    cycle.Faults
	valveOnly bool
}{
	{"undercharge", cycle.Faults{Charge: -0.2}, false},
	{"overcharge", cycle.Faults{Charge: 0.25}, false},
	{"low-airflow", cycle.Faults{IndoorAirflow: -0.45}, false},
	{"fouled", cycle.Faults{OutdoorAirflow: -0.4}, false},
	{"restriction", cycle.Faults{LiquidRestriction: quantity.Bar(8)}, false},
	{"valves-leak", cycle.Faults{CompressorLeak: 0.35}, false},
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
	machine, err := cycle.DesignResidential(r22, quantity.Tons(3), device)
	if err != nil {
		return "", err
	}
	weather := cycle.Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(85),
		ReturnDryBulb:  quantity.Fahrenheit(77), ReturnWetBulb: quantity.Fahrenheit(65),
	}
	five := func(f cycle.Faults) ([5]float64, error) {
		o, err := machine.Solve(weather, f)
		return [5]float64{
			o.Evaporating.Fahrenheit(), o.Superheat.FahrenheitDelta(),
			o.Condensing.Sub(weather.OutdoorDryBulb).FahrenheitDelta(),
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

// doubted has the readings of a problem assessed and returns the mishap that the
// doubts name.
func doubted(p Problem) (string, error) {
	at := func(name string) quantity.Temperature {
		for _, g := range p.Given {
			if g.Name == name {
				t, err := quantity.ParseTemperature(g.Value)
				if err != nil {
					panic(err)
				}
				return t
			}
		}
		panic(name)
	}
	r22, err := refrigerant.Lookup("R-22")
	if err != nil {
		return "", err
	}
	low, err := r22.DewPressure(at("boiling (suction gauge)"))
	if err != nil {
		return "", err
	}
	high, err := r22.BubblePressure(at("condensing (liquid gauge)"))
	if err != nil {
		return "", err
	}
	sea := quantity.StandardAtmosphere
	a, err := satline.Assess(satline.Visit{
		Equipment: satline.Equipment{Refrigerant: "R-22", Metering: satline.TXV},
		Readings: satline.Readings{
			SuctionPressure: satline.Measured(low.Gauge(sea)),
			LiquidPressure:  satline.Measured(high.Gauge(sea)),
			SuctionLine:     satline.Measured(at("suction line")),
			LiquidLine:      satline.Measured(at("liquid line")),
			OutdoorDryBulb:  satline.Measured(at("outdoor air")),
			SupplyDryBulb:   satline.Measured(at("supply air")),
			ReturnDryBulb:   satline.Measured(at("return air, dry bulb")),
			ReturnWetBulb:   satline.Measured(at("return air, wet bulb")),
		},
		Scope: satline.VerdictOnly,
	})
	if err != nil {
		return "", err
	}
	cause := ""
	for _, m := range mishaps {
		for _, d := range a.Doubts {
			if d.Says.Code != fact.Code("doubt."+m.doubt) {
				continue
			}
			if cause != "" && cause != m.code {
				return "", fmt.Errorf("the doubts name %q and %q", cause, m.code)
			}
			cause = m.code
		}
	}
	return cause, nil
}
