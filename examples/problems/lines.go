package main

import (
	"fmt"
	"strings"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// askForLine turns a problem that asks for a superheat or subcooling about: it
// is given, and the temperature of the line is asked for.
func (g *generator) askForLine(p *Problem, side string, apart float64, line quantity.Temperature) {
	name, place, sign, way := "superheat", "above the dew", "+", 1.0
	if side == "liquid" {
		name, place, sign, way = "subcooling", "below the bubble", "−", -1
	}
	given := p.Given[:0:0]
	for _, v := range p.Given {
		if v.Name == side+" line" {
			v = Given{name + " wanted", g.difference(apart)}
		}
		given = append(given, v)
	}
	p.Given = given
	p.Ask = fmt.Sprintf(
		"What does a clamp on the %s line show when the %s is %s?",
		side,
		name,
		g.difference(apart),
	)
	a := numeric(g.scale(line), reading, 1, g.degreeUnit())
	from := g.fromScale(g.scale(line) - way*apart)
	p.Steps[len(p.Steps)-1] = step(
		definition,
		"The line stands %s %s temperature: %s %s %s = %s.",
		g.difference(apart),
		place,
		g.temperature(from),
		sign,
		g.difference(apart),
		a.Text,
	)
	again := p.again
	p.again = func() (float64, error) {
		found, err := again()
		return g.scale(line) + way*(apart-found), err
	}
	p.Answer = a
}

// taken says what a reading between rows is taken for.
func (g *generator) taken(how string, t quantity.Temperature) string {
	if strings.HasSuffix(how, " "+g.temperature(t)) {
		return ""
	}
	return ", to the half degree " + g.temperature(t)
}

// otherSide adds readings of the other side of the machine, which the question
// does not need.
func (g *generator) otherSide(
	p *Problem,
	f *refrigerant.Refrigerant,
	site gaugeSite,
	sat quantity.Temperature,
	side string,
) error {
	look, apart := f.BubblePressure, -g.either(g.pick(6, 14, 1), g.pick(3, 8, 1))
	if side == "suction" {
		look, apart = f.DewPressure, -apart
	}
	pressure, err := look(sat)
	if err != nil {
		return err
	}
	p.Given = append(
		p.Given,
		given(
			side+" pressure",
			g.pressure(g.gauge(pressure, site.atm)),
			side+" line",
			g.temperature(g.fromScale(g.scale(sat)+apart)),
		)...)
	return nil
}
