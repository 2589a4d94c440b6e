package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// airflowProblem finds the airflow from a known heat and a temperature rise, in
// turn of electric heat and of a furnace. From difficulty 2 on the rise has to be
// taken from two temperatures, among readings that are not needed.
func airflowProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	room := g.degrees(70, 20)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	here, unit := g.atmosphere(atm)
	// thin is how much lighter the air is than at sea level.
	thin := math.Round(1000*here/sea) / 1000
	p := Problem{Ask: "What is the airflow?"}
	var h heater
	var rise float64
	// A blower of a house moves from 600 to 2000 CFM (280 to 940 L/s).
	for flow := 0.0; flow < 600 || flow > 2000; flow = 3.412 * h.watts / (1.08 * rise * g.either(1, 1.8)) {
		if g.turn(2) == 1 {
			h, rise = g.furnace(), g.either(g.pick(40, 60, 5), g.pick(22, 32, 2))
		} else {
			h, rise = g.electricHeat(), g.either(g.pick(15, 40, 5), g.pick(8, 20, 2))
		}
	}
	p.Given, p.Steps, p.Caution = h.given, []Step{h.step}, h.caution
	supply := g.fromScale(g.scale(room) + rise)
	if g.difficulty >= 2 {
		p.Statement = fmt.Sprintf(
			"%s The air returns at %s and leaves at %s, %s, measured out of sight of the heat. The blower's own heat is left aside.",
			h.statement,
			g.temperature(room),
			g.temperature(supply),
			place,
		)
		p.Given = append(
			p.Given,
			given(
				"return air",
				g.temperature(room),
				"supply air",
				g.temperature(supply),
				"outdoor air",
				g.temperature(g.degrees(g.pick(30, 50, 1), g.pick(0, 10, 1))),
			)...)
		p.Steps = append(
			p.Steps,
			step(
				definition,
				"Temperature rise: %s − %s = %s.",
				g.temperature(supply),
				g.temperature(room),
				g.difference(rise),
			),
		)
	} else {
		p.Statement = fmt.Sprintf("%s It warms the air by %s, from %s, %s. The blower's own heat is left aside.", h.statement, g.difference(rise), g.temperature(room), place)
		p.Given = append(p.Given, Given{"temperature rise", g.difference(rise)})
	}
	factor, source := g.either(1.08, 1.21), standardAir+", times the specific heat of moist air"
	if z != 0 {
		p.Given = append(
			p.Given,
			given(
				"atmosphere",
				fixed(here, 2)+" "+unit,
				"atmosphere at sea level",
				fixed(sea, 2)+" "+unit,
			)...)
	}
	altered := decimals(factor, 2)
	if z != 0 {
		altered = decimals(factor*thin, 3)
		p.Steps = append(
			p.Steps,
			step(
				"perfect gas at one temperature",
				"The factor goes with the pressure of the atmosphere, which is %s %s at sea level: %s × %s / %s = %s.",
				fixed(sea, 2),
				unit,
				decimals(factor, 2),
				fixed(here, 2),
				fixed(sea, 2),
				altered,
			),
		)
	}
	heat := g.either(3.412, 1) * h.watts
	if h.btuh != 0 {
		heat = h.btuh
	}
	result := heat / (factor * thin * rise)
	a := numeric(result, 0.01*result, int(g.either(-1, 0)), "L/s")
	if g.ip() {
		a = numeric(result, 0.01*result, -1, "CFM")
	}
	p.Steps = append(
		p.Steps,
		step(
			source,
			"Airflow: %s / (%s × %s) = %s.",
			decimals(heat, 0),
			altered,
			number(rise),
			a.Text,
		),
	)
	p.Answer = a
	if z != 0 {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				result*thin,
				"the factor of sea level was used; thin air carries less heat, so more of it has to move",
			),
		)
	}
	p.Wrong = append(p.Wrong, a.slip(result*h.slip, h.mistake))
	if g.ip() {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				result*1.08/4.5,
				"4.5 belongs to a difference of enthalpies, 1.08 to one of temperatures",
			),
		)
		if h.btuh == 0 {
			p.Wrong = append(p.Wrong, a.slip(result/3.412, "watts were not turned into Btu/h"))
		} else {
			p.Wrong = append(p.Wrong, a.slip(result*1.08, "the factor was left out"))
		}
	} else {
		p.Wrong = append(p.Wrong,
			a.slip(result*3.412, "watts were turned into Btu/h, which the metric formula does not take"),
			a.slip(result*1.21, "the factor was left out"))
	}
	if g.difficulty >= 2 {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				result*rise/g.scale(supply),
				"divided by the supply temperature itself; what counts is how far it is above the return",
			),
		)
	}
	p.again = func() (float64, error) {
		air, err := psychro.FromHumidityRatio(room, 0.006, atm)
		if err != nil {
			return 0, err
		}
		warm, err := psychro.SensibleHeatCool(air, supply)
		if err != nil {
			return 0, err
		}
		flow := quantity.VolumeFlow(h.watts / float64(warm.Heat) * float64(air.SpecificVolume()))
		if g.ip() {
			return flow.CFM(), nil
		}
		return flow.LitersPerSecond(), nil
	}
	return p, nil
}

// A heater is what warms the air of an airflow problem, and how its heat is
// known.
type heater struct {
	statement string
	given     []Given
	step      Step
	watts     float64
	btuh      float64 // where the heat is stated in Btu/h
	slip      float64 // what the mistake makes of the airflow
	mistake   string
	caution   string
}

func (g *generator) electricHeat() heater {
	volts, amps := g.either(240, 230), g.pick(20, 60, 5)
	h := heater{
		statement: fmt.Sprintf(
			"With only the electric heat on, the single-phase heater takes %s A at %s V.",
			number(amps),
			number(volts),
		),
		given: given("voltage", number(volts)+" V", "current", number(amps)+" A"),
		watts: volts * amps, slip: math.Sqrt(3), mistake: "√3 belongs to three phases; this heater is on one",
		caution: "the terminals are live while this is measured. Only a qualified person opens the panel.",
	}
	if g.ip() {
		h.step = step(
			"definition; 1 W is 3.412 Btu/h",
			"Heat: %s V × %s A × 3.412 = %s Btu/h.",
			number(volts),
			number(amps),
			decimals(3.412*h.watts, 0),
		)
	} else {
		h.step = step(definition, "Heat: %s V × %s A = %s W.", number(volts), number(amps), decimals(h.watts, 0))
	}
	return h
}

func (g *generator) furnace() heater {
	percent := g.pick(80, 95, 5)
	h := heater{
		slip: 100 / percent, mistake: "the fuel was taken for the heat; the rest of it leaves with the flue gas",
		caution: "a furnace burns gas and gives off carbon monoxide. Only a licensed person opens or adjusts the burner.",
	}
	if g.ip() {
		input := g.pick(40, 100, 10) * 1000
		h.btuh = input * percent / 100
		h.watts = quantity.BtuPerHour(h.btuh).Watts()
		h.statement = fmt.Sprintf(
			"A gas furnace burns %s Btu/h, as clocked at the meter, and gives %s %% of it to the air.",
			number(input),
			number(percent),
		)
		h.given = given("input", number(input)+" Btu/h", "efficiency", number(percent)+" %")
		h.step = step(
			definition,
			"Heat: %s Btu/h × %s = %s Btu/h.",
			number(input),
			decimals(percent/100, 2),
			number(h.btuh),
		)
		return h
	}
	input := g.pick(12, 30, 2)
	h.watts = 1000 * input * percent / 100
	h.statement = fmt.Sprintf(
		"A gas furnace burns %s kW, as clocked at the meter, and gives %s %% of it to the air.",
		number(input),
		number(percent),
	)
	h.given = given("input", number(input)+" kW", "efficiency", number(percent)+" %")
	h.step = step(
		definition,
		"Heat: %s kW × %s × 1000 = %s W.",
		number(input),
		decimals(percent/100, 2),
		decimals(h.watts, 0),
	)
	return h
}
