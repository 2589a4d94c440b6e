package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// airProblem finds the humidity ratio from dry and wet bulb.
func airProblem(g *generator) (Problem, error) {
	wet := g.degrees(g.pick(58, 68, 1), g.pick(14, 20, 1))
	dry := g.fromScale(g.scale(wet) + g.pick(8, 16, 1))
	if !g.ip() {
		dry = g.fromScale(g.scale(wet) + g.pick(4, 9, 1))
	}
	atm := quantity.StandardAtmosphere
	place := "at sea level"
	if g.difficulty >= 3 {
		z := quantity.Feet(5000)
		if !g.ip() {
			z = quantity.Meters(1500)
		}
		atm = quantity.AtmosphereAt(z)
		place = "at " + elevationText(z, g.sys)
	}
	saturated, err := psychro.FromRelativeHumidity(wet, 1, atm)
	if err != nil {
		return Problem{}, err
	}
	pws := saturated.VaporPressure().Kilopascals()
	pressure := atm.Kilopascals()
	unit := "kPa"
	if g.ip() {
		pws, pressure, unit = saturated.VaporPressure().PSIA(), atm.PSIA(), "psia"
	}
	pws, pressure = math.Round(1e4*pws)/1e4, math.Round(1e3*pressure)/1e3
	ws := 0.621945 * pws / (pressure - pws)
	t, w := g.scale(dry), g.scale(wet)
	var ratio float64
	var formula string
	if g.ip() {
		ratio = ((1093-0.556*w)*ws - 0.240*(t-w)) / (1093 + 0.444*t - w)
		formula = "W = ((1093 − 0.556 t*) Ws* − 0.240 (t − t*)) / (1093 + 0.444 t − t*)"
	} else {
		ratio = ((2501-2.326*w)*ws - 1.006*(t-w)) / (2501 + 1.86*t - 4.186*w)
		formula = "W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)"
	}
	grams := 1000 * ratio
	answerUnit := "g/kg dry air"
	if g.ip() {
		grams, answerUnit = 7000*ratio, "grains/lb dry air"
	}
	return Problem{
		Statement: fmt.Sprintf("Return air is at %s dry bulb and %s wet bulb %s, where the atmosphere is %s %s.", g.temperature(dry), g.temperature(wet), place, decimals(pressure, 3), unit),
		Given:     given("dry bulb", g.temperature(dry), "wet bulb", g.temperature(wet), "atmosphere", decimals(pressure, 3)+" "+unit),
		Ask:       "How much water does it carry?",
		Tables: []Table{{Caption: "Saturation pressure of water", Head: []string{g.degreeUnit(), unit},
			Rows: [][]string{{g.temperature(wet), decimals(pws, 4)}}}},
		Steps: []Step{
			step(moistAirSource+", equation 22", "Saturated at the wet bulb: Ws* = 0.621945 × %s / (%s − %s) = %s.", decimals(pws, 4), decimals(pressure, 3), decimals(pws, 4), decimals(ws, 6)),
			step(moistAirSource+", equation 33", "%s = %s.", formula, decimals(ratio, 6)),
			step(definition, "That is %s %s.", number(grams), answerUnit),
		},
		Answer: plainAnswer(grams, 0.01*grams, answerUnit),
		Wrong: []Wrong{
			{Text: number(grams*ws/ratio) + " " + answerUnit, Mistake: "the air was taken as saturated at the wet bulb"},
		},
		again: func() (float64, error) {
			a, err := psychro.FromWetBulb(dry, wet, atm)
			if g.ip() {
				return 7000 * a.HumidityRatio(), err
			}
			return 1000 * a.HumidityRatio(), err
		},
	}, nil
}

// capacityProblem turns two air states and an airflow into cooling capacity.
func capacityProblem(g *generator) (Problem, error) {
	wetIn := g.degrees(g.pick(62, 68, 1), g.pick(16, 20, 1))
	dryIn := g.degrees(g.pick(74, 80, 1), g.pick(23, 27, 1))
	dryOut := g.degrees(g.pick(54, 58, 1), g.pick(12, 14, 0.5))
	wetOut := g.fromScale(g.scale(dryOut) - 1)
	flow := quantity.CFM(g.pick(800, 1600, 100))
	if !g.ip() {
		flow = quantity.LitersPerSecond(g.pick(350, 750, 50))
	}
	in, err := psychro.FromWetBulb(dryIn, wetIn, quantity.StandardAtmosphere)
	if err != nil {
		return Problem{}, err
	}
	out, err := psychro.FromWetBulb(dryOut, wetOut, quantity.StandardAtmosphere)
	if err != nil {
		return Problem{}, err
	}
	var answer, within float64
	var text []Step
	var unit string
	if g.ip() {
		// The enthalpies of the inch-pound chart count from 0 °F; only their
		// difference matters.
		hi, ho := math.Round(100*enthalpyIP(in))/100, math.Round(100*enthalpyIP(out))/100
		answer = 4.5 * flow.CFM() * (hi - ho)
		unit = "Btu/h"
		within = 0.05 * answer
		text = []Step{
			step("psychrometric chart, sea level", "Return %s Btu/lb, supply %s Btu/lb.", decimals(hi, 2), decimals(ho, 2)),
			step("common practice at sea level: 60 min/h × 0.075 lb/ft³", "Q = 4.5 × %s CFM × (%s − %s) = %s Btu/h.", decimals(flow.CFM(), 0), decimals(hi, 2), decimals(ho, 2), decimals(answer, 0)),
		}
	} else {
		hi, ho := math.Round(10*in.Enthalpy().KilojoulesPerKilogram())/10, math.Round(10*out.Enthalpy().KilojoulesPerKilogram())/10
		v := math.Round(1000*in.SpecificVolume().CubicMetersPerKilogram()) / 1000
		answer = flow.LitersPerSecond() / 1000 / v * (hi - ho)
		unit = "kW"
		within = 0.02 * answer
		text = []Step{
			step("psychrometric chart, sea level", "Return %s kJ/kg at %s m³/kg, supply %s kJ/kg.", decimals(hi, 1), decimals(v, 3), decimals(ho, 1)),
			step(moistAirSource, "Q = %s / %s × (%s − %s) = %s kW.", decimals(flow.LitersPerSecond()/1000, 3), decimals(v, 3), decimals(hi, 1), decimals(ho, 1), decimals(answer, 2)),
		}
	}
	ans := Answer{Text: decimals(answer, 0) + " " + unit, Value: answer, Within: within, Unit: unit}
	if !g.ip() {
		ans.Text = decimals(answer, 2) + " " + unit
	}
	sensible := 1.08 * flow.CFM() * (dryIn.Fahrenheit() - dryOut.Fahrenheit())
	wrong := decimals(sensible, 0) + " Btu/h"
	if !g.ip() {
		wrong = decimals(quantity.BtuPerHour(sensible).Kilowatts(), 2) + " kW"
	}
	return Problem{
		Statement: fmt.Sprintf("At sea level %s of return air at %s dry bulb and %s wet bulb leave a coil at %s dry bulb and %s wet bulb.", flowText(flow, g.sys),
			g.temperature(dryIn), g.temperature(wetIn), g.temperature(dryOut), g.temperature(wetOut)),
		Given:  given("airflow", flowText(flow, g.sys), "return", g.temperature(dryIn)+" / "+g.temperature(wetIn)+" wet bulb", "supply", g.temperature(dryOut)+" / "+g.temperature(wetOut)+" wet bulb"),
		Ask:    "What is the total capacity?",
		Steps:  text,
		Answer: ans,
		Wrong:  []Wrong{{Text: wrong, Mistake: "only the sensible part, from the dry bulbs"}},
		again: func() (float64, error) {
			watts := float64(in.DryAirFlow(flow)) * float64(in.Enthalpy()-out.Enthalpy())
			if g.ip() {
				return quantity.Watts(watts).BtuPerHour(), nil
			}
			return watts / 1000, nil
		},
	}, nil
}

// enthalpyIP is on the inch-pound datum, 0 for dry air at 0 °F.
func enthalpyIP(a psychro.Air) float64 {
	t := a.DryBulb().Fahrenheit()
	return 0.240*t + a.HumidityRatio()*(1061+0.444*t)
}

func flowText(f quantity.VolumeFlow, sys quantity.System) string {
	if sys == quantity.IP {
		return decimals(f.CFM(), 0) + " CFM"
	}
	return decimals(f.LitersPerSecond(), 0) + " L/s"
}

// airflowProblem finds the airflow from electric heat and a temperature rise.
func airflowProblem(g *generator) (Problem, error) {
	volts, amps := 240.0, g.pick(20, 60, 5)
	rise := quantity.FahrenheitDelta(g.pick(15, 40, 5))
	if !g.ip() {
		rise = quantity.KelvinDelta(g.pick(10, 20, 2))
	}
	watts := volts * amps
	var answer float64
	var steps []Step
	unit := "CFM"
	if g.ip() {
		answer = 3.412 * watts / (1.08 * rise.FahrenheitDelta())
		steps = []Step{
			step(definition, "Heat: %s V × %s A × 3.412 = %s Btu/h.", number(volts), number(amps), decimals(3.412*watts, 0)),
			step("common practice at sea level", "Airflow: %s / (1.08 × %s) = %s CFM.", decimals(3.412*watts, 0), number(rise.FahrenheitDelta()), decimals(answer, 0)),
		}
	} else {
		unit = "L/s"
		answer = watts / (1.2 * 1.006 * rise.KelvinDelta())
		steps = []Step{
			step(definition, "Heat: %s V × %s A = %s W.", number(volts), number(amps), decimals(watts, 0)),
			step("common practice at sea level: 1.2 kg/m³ and 1.006 kJ/(kg K)", "Airflow: %s / (1.2 × 1.006 × %s) = %s L/s.", decimals(watts, 0), number(rise.KelvinDelta()), decimals(answer, 0)),
		}
	}
	return Problem{
		Statement: fmt.Sprintf("With only the electric heat on, the heater takes %s A at %s V and the air warms by %s, from a return of 70 °F (21 °C), at sea level.", number(amps), number(volts), rise.Format(g.sys)),
		Given:     given("voltage", number(volts)+" V", "current", number(amps)+" A", "temperature rise", rise.Format(g.sys)),
		Ask:       "What is the airflow?",
		Steps:     steps,
		Answer:    Answer{Text: decimals(answer, 0) + " " + unit, Value: answer, Within: 0.035 * answer, Unit: unit},
		Wrong: []Wrong{
			{Text: decimals(answer*1.732, 0) + " " + unit, Mistake: "√3 belongs to three phases; this heater is on one"},
			{Text: decimals(answer/3.412, 0) + " " + unit, Mistake: "watts were not turned into Btu/h"},
		},
		again: func() (float64, error) {
			air, err := psychro.FromHumidityRatio(quantity.Fahrenheit(70), 0.006, quantity.StandardAtmosphere)
			if err != nil {
				return 0, err
			}
			warm, err := psychro.FromHumidityRatio(quantity.Fahrenheit(70).Add(rise), 0.006, quantity.StandardAtmosphere)
			if err != nil {
				return 0, err
			}
			dryAir := watts / float64(warm.Enthalpy()-air.Enthalpy())
			flow := quantity.VolumeFlow(dryAir * float64(air.SpecificVolume()))
			if g.ip() {
				return flow.CFM(), nil
			}
			return flow.LitersPerSecond(), nil
		},
	}, nil
}
