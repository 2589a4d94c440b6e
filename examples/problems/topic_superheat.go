package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// superheatProblem counts the suction line from the dew point.
func superheatProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(34, 48, 2), g.pick(1, 9, 1))
	rise := g.pick(4, 26, 1)
	if !g.ip() {
		rise = g.pick(2, 14, 1)
	}
	line := g.fromScale(g.scale(sat) + rise)
	p, err := f.DewPressure(sat)
	if err != nil {
		return Problem{}, err
	}
	reading := g.gauge(p, quantity.StandardAtmosphere)
	tab, err := g.saturationTable(f, sat)
	if err != nil {
		return Problem{}, err
	}
	return Problem{
		Statement: fmt.Sprintf("A %s machine at sea level shows %s at the suction port, and a clamp near the compressor reads %s on the suction line.", f.Designation(), g.pressure(reading), g.temperature(line)),
		Given:     given("refrigerant", f.Designation(), "suction pressure", g.pressure(reading), "suction line", g.temperature(line)),
		Ask:       "What is the superheat?",
		Tables:    []Table{tab},
		Steps: []Step{
			step(saturationSource, "Vapor: the dew column gives %s for %s.", g.temperature(sat), g.pressure(reading)),
			step(definition, "Superheat is the line less the dew temperature: %s − %s = %s.", g.temperature(line), g.temperature(sat), g.difference(rise)),
		},
		Answer: plainAnswer(rise, 0.4, g.deltaUnit()),
		Wrong: []Wrong{
			{Text: g.difference(-rise), Mistake: "saturation less line: that is how subcooling is counted, on the other side"},
			{Text: g.temperature(line), Mistake: "the line temperature itself; superheat is a difference"},
		},
		again: func() (float64, error) {
			d, err := f.Superheat(g.gaugePressure(reading).Absolute(quantity.StandardAtmosphere), line)
			return g.delta(d), err
		},
	}, nil
}

// subcoolingProblem counts the liquid line from the bubble point.
func subcoolingProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(96, 116, 2), g.pick(36, 47, 1))
	fall := g.pick(3, 20, 1)
	if !g.ip() {
		fall = g.pick(2, 11, 1)
	}
	line := g.fromScale(g.scale(sat) - fall)
	p, err := f.BubblePressure(sat)
	if err != nil {
		return Problem{}, err
	}
	reading := g.gauge(p, quantity.StandardAtmosphere)
	tab, err := g.saturationTable(f, sat)
	if err != nil {
		return Problem{}, err
	}
	return Problem{
		Statement: fmt.Sprintf("The liquid port of a %s machine at sea level shows %s; the liquid line beside it is at %s.", f.Designation(), g.pressure(reading), g.temperature(line)),
		Given:     given("refrigerant", f.Designation(), "liquid pressure", g.pressure(reading), "liquid line", g.temperature(line)),
		Ask:       "What is the subcooling?",
		Tables:    []Table{tab},
		Steps: []Step{
			step(saturationSource, "Liquid: the bubble column gives %s for %s.", g.temperature(sat), g.pressure(reading)),
			step(definition, "Subcooling is the bubble temperature less the line: %s − %s = %s.", g.temperature(sat), g.temperature(line), g.difference(fall)),
		},
		Answer: plainAnswer(fall, 0.4, g.deltaUnit()),
		Wrong: []Wrong{
			{Text: g.difference(-fall), Mistake: "line less saturation: that is how superheat is counted, on the other side"},
		},
		again: func() (float64, error) {
			d, err := f.Subcooling(g.gaugePressure(reading).Absolute(quantity.StandardAtmosphere), line)
			return g.delta(d), err
		},
	}, nil
}

// altitudeProblem finds what a sea-level table hides on a mountain.
func altitudeProblem(g *generator) (Problem, error) {
	f := g.fluid()
	elevation := quantity.Feet(g.pick(3000, 9000, 1000))
	if !g.ip() {
		elevation = quantity.Meters(g.pick(1000, 2800, 200))
	}
	atm := quantity.AtmosphereAt(elevation)
	short := g.gauge(quantity.StandardAtmosphere, atm)
	sat := g.degrees(g.pick(36, 46, 2), g.pick(2, 8, 1))
	p, err := f.DewPressure(sat)
	if err != nil {
		return Problem{}, err
	}
	atSea := g.gauge(p, quantity.StandardAtmosphere)
	reading := atSea + short
	rise := g.pick(6, 16, 1)
	if !g.ip() {
		rise = g.pick(3, 9, 1)
	}
	line := g.fromScale(g.scale(sat) + rise)
	tab, err := g.saturationTable(f, sat)
	if err != nil {
		return Problem{}, err
	}
	uncorrected, err := f.Superheat(g.gaugePressure(reading).Absolute(quantity.StandardAtmosphere), line)
	if err != nil {
		return Problem{}, err
	}
	return Problem{
		Statement: fmt.Sprintf("At %s above sea level the suction gauge of a %s machine shows %s and the suction line is at %s. The printed table is for sea level; the atmosphere here is %s lower.",
			elevationText(elevation, g.sys), f.Designation(), g.pressure(reading), g.temperature(line), g.pressureDifference(short)),
		Given:  given("refrigerant", f.Designation(), "elevation", elevationText(elevation, g.sys), "suction pressure", g.pressure(reading), "suction line", g.temperature(line)),
		Ask:    "What is the true superheat?",
		Tables: []Table{tab},
		Steps: []Step{
			step("ASHRAE Handbook Fundamentals, chapter 1, equation 3", "The atmosphere at %s is %s below that at sea level.", elevationText(elevation, g.sys), g.pressureDifference(short)),
			step(definition, "For the same absolute pressure a gauge at sea level would show %s − %s = %s.", g.pressure(reading), g.pressureDifference(short), g.pressure(atSea)),
			step(saturationSource, "The dew column gives %s for %s.", g.temperature(sat), g.pressure(atSea)),
			step(definition, "Superheat: %s − %s = %s.", g.temperature(line), g.temperature(sat), g.difference(rise)),
		},
		Answer: plainAnswer(rise, 0.4, g.deltaUnit()),
		Wrong:  []Wrong{{Text: g.difference(g.delta(uncorrected)), Mistake: "the gauge was read as at sea level"}},
		again: func() (float64, error) {
			d, err := f.Superheat(g.gaugePressure(reading).Absolute(atm), line)
			return g.delta(d), err
		},
	}, nil
}

func elevationText(z quantity.Length, sys quantity.System) string {
	if sys == quantity.IP {
		return decimals(z.Feet(), 0) + " ft"
	}
	return decimals(z.Meters(), 0) + " m"
}

func (g *generator) pressureDifference(v float64) string {
	if g.ip() {
		return number(v) + " psi"
	}
	return number(v) + " kPa"
}
