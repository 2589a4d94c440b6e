package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// altitudeProblem finds what a sea-level table hides on a mountain, in turn for
// the superheat and the subcooling. From difficulty 2 on the student reads the
// atmosphere off a table; at 3 the pressure lies between two rows besides, among
// readings that are not needed.
func altitudeProblem(g *generator) (Problem, error) {
	f := g.fluid()
	elevation := quantity.Feet(g.pick(3000, 9000, 1000))
	if !g.ip() {
		elevation = quantity.Meters(g.pick(1000, 2800, 200))
	}
	atm := quantity.AtmosphereAt(elevation)
	short := g.gauge(quantity.StandardAtmosphere, atm)
	// way is that of the line from saturation: up on the suction side.
	name, side, column, way := "superheat", "suction", "dew", 1.0
	sat := g.degrees(g.pick(36, 46, 2), g.pick(2, 8, 1))
	between := g.either(1, 0.5) // two rows
	apart := g.either(g.pick(6, 16, 1), g.pick(3, 9, 1))
	pressureAt, temperatureAt, count := f.DewPressure, f.DewTemperature, f.Superheat
	if g.turn(2) == 1 {
		name, side, column, way = "subcooling", "liquid", "bubble", -1
		sat = g.degrees(g.pick(96, 112, 2), g.pick(36, 44, 1))
		pressureAt, temperatureAt, count = f.BubblePressure, f.BubbleTemperature, f.Subcooling
	}
	if g.difficulty >= 3 {
		sat = g.fromScale(g.scale(sat) + between)
	}
	p, err := pressureAt(sat)
	if err != nil {
		return Problem{}, err
	}
	atSea := g.gauge(p, quantity.StandardAtmosphere)
	shown := atSea + short
	line := g.fromScale(g.scale(sat) + way*apart)
	look := func(shown float64) (float64, error) {
		t, err := temperatureAt(g.gaugePressure(shown).Absolute(quantity.StandardAtmosphere))
		return g.scale(t), err
	}
	uncorrected, err := look(shown)
	if err != nil {
		return Problem{}, err
	}
	wrongWay, err := look(shown + short)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, g.seaLevel(), sat, g.fromScale(wrongWay))
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, _, err := g.misreads(g.seaLevel(), shown, temperatureAt)
	if err != nil {
		return Problem{}, err
	}
	printed := dewColumn
	if way < 0 {
		printed = bubbleColumn
	}
	_, how, _ := g.read(tab, g.seaLevel(), printed, atSea)
	a := numeric(apart, reading, 1, g.deltaUnit())
	const atmosphereSource = moistAirSource + ", equation 3"
	from := func(sat float64) float64 { return way * (g.scale(line) - sat) }
	small, other := "smaller", "saturation less line: that is how subcooling is counted"
	first, second := g.temperature(line), g.temperature(sat)
	if way < 0 {
		small, other = "larger", "line less saturation: that is how superheat is counted"
		first, second = second, first
	}
	out := Problem{
		Statement: fmt.Sprintf(
			"At %s above sea level the %s gauge of an %s machine shows %s and the %s line is at %s. The printed table is for sea level.",
			elevationText(
				elevation,
				g.sys,
			),
			side,
			f.Designation(),
			g.pressure(shown),
			side,
			g.temperature(line),
		),
		Given: given(
			"refrigerant",
			f.Designation(),
			"elevation",
			elevationText(elevation, g.sys),
			side+" pressure",
			g.pressure(shown),
			side+" line",
			g.temperature(line),
		),
		Ask:    "What is the true " + name + "?",
		Tables: []Table{tab},
		Steps: []Step{
			step(
				atmosphereSource,
				"The atmosphere at %s is %s below that at sea level.",
				elevationText(elevation, g.sys),
				g.pressureDifference(short),
			),
			step(
				definition,
				"A gauge counts from the atmosphere around it. For the same absolute pressure one at sea level would show %s − %s = %s.",
				g.pressure(shown),
				g.pressureDifference(short),
				g.pressure(atSea),
			),
			step(saturationSource, "In the %s column %s%s.", column, how, g.taken(how, sat)),
			step(definition, "%s: %s − %s = %s.", sentence(name), first, second, a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(
				from(uncorrected),
				"the gauge was read as at sea level; the "+name+" looks "+small+" than it is",
			),
			a.slip(from(wrongWay), "the difference was added instead of taken off"),
			a.slip(
				from(asAbsolute.at),
				"a whole atmosphere was taken off instead of the difference",
			),
			a.slip(-apart, other),
		},
		again: func() (float64, error) {
			d, err := count(g.gaugePressure(shown).Absolute(atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		out.Tables = append(out.Tables, g.atmosphereTable(elevation))
		out.Steps[0].Source = "atmosphere table of the problem, from " + atmosphereSource
	}
	if g.difficulty >= 3 {
		other, side := g.degrees(g.pick(98, 114, 1), g.pick(37, 46, 1)), "liquid"
		if way < 0 {
			other, side = g.degrees(g.pick(36, 46, 1), g.pick(2, 8, 1)), "suction"
		}
		if err := g.otherSide(&out, f, gaugeSite{atm: atm}, other, side); err != nil {
			return Problem{}, err
		}
	}
	if g.difficulty == 1 {
		out.Statement += fmt.Sprintf(
			" The atmosphere here is %s lower.",
			g.pressureDifference(short),
		)
	}
	return out, nil
}
