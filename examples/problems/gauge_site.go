package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// A gaugeSite is where the gauge of a problem hangs, and what its table of
// saturation counts from: gauge pressures at sea level, or absolute ones.
type gaugeSite struct {
	atm  quantity.Pressure
	text string
	// added is the atmosphere as it is printed, which belongs to a reading before
	// a table of absolute pressures; 0 where the table is in gauge pressure.
	added float64
	unit  string // of the pressures in the table
}

// seaLevel has a table in gauge pressure.
func (g *generator) seaLevel() gaugeSite {
	return gaugeSite{atm: quantity.StandardAtmosphere, text: "at sea level", unit: g.gaugeUnit()}
}

// gaugeSite is at sea level, and from difficulty 3 on a mountain, with a table of
// absolute pressures.
func (g *generator) gaugeSite() gaugeSite {
	if g.difficulty < 3 {
		return g.seaLevel()
	}
	_, atm, place := g.place()
	s := gaugeSite{atm: atm, added: g.absolute(atm), unit: g.absoluteUnit()}
	s.text = fmt.Sprintf("%s (atmosphere %s %s)", place, g.cell(s.added), s.unit)
	return s
}

// absolute is an absolute pressure as a table prints it.
func (g *generator) absolute(p quantity.Pressure) float64 { return g.gauge(p, 0) }

// listed is a pressure as the table has it.
func (g *generator) listed(s gaugeSite, p quantity.Pressure) float64 {
	if s.added != 0 {
		return g.absolute(p)
	}
	return g.gauge(p, quantity.StandardAtmosphere)
}

// shown is what the gauge shows for a pressure of the table.
func (s gaugeSite) shown(listed float64) float64 { return math.Round(10*(listed-s.added)) / 10 }

// givenAt are the facts of a problem, with the atmosphere where the table needs it.
func (g *generator) givenAt(s gaugeSite, pairs ...string) []Given {
	if s.added != 0 {
		pairs = append(pairs, "atmosphere", g.cell(s.added)+" "+s.unit)
	}
	return given(pairs...)
}

// columnApplies says which column is right, and why, with what to do to the
// reading first.
func (g *generator) columnApplies(s gaugeSite, why, column string, shown float64) Step {
	if s.added == 0 {
		return step(
			definition,
			"%s, so the %s column applies; the table is in gauge pressure already.",
			why,
			column,
		)
	}
	absolute := g.toAbsolute(s, shown)
	return step(definition, "%s, so the %s column applies. %s", why, column, absolute.Text)
}

// toAbsolute makes a reading ready for a table of absolute pressures.
func (g *generator) toAbsolute(s gaugeSite, shown float64) Step {
	return step(
		definition,
		"The table is in absolute pressures: %s + %s %s = %s %s.",
		g.pressure(shown),
		g.cell(s.added),
		s.unit,
		g.cell(shown+s.added),
		s.unit,
	)
}

// A misread is a temperature found by a mistake with the atmosphere.
type misread struct {
	at      float64
	mistake string
}

// misreads are what comes of a reading looked up as it is in absolute pressures,
// and of a wrong atmosphere added to it.
func (g *generator) misreads(
	s gaugeSite,
	shown float64,
	lookup func(quantity.Pressure) (quantity.Temperature, error),
) (asAbsolute, wrongAtmosphere misread, err error) {
	asAbsolute.mistake = "the gauge reading was taken for an absolute pressure in a table of absolute pressures"
	wrongAtmosphere.mistake = "the atmosphere was added to the reading before a table that is in gauge pressure already"
	too := 2 * quantity.StandardAtmosphere
	if s.added != 0 {
		wrongAtmosphere.mistake = "the atmosphere of sea level was added; a gauge counts from the air around it"
		too = quantity.StandardAtmosphere
	}
	p := quantity.Pressure(g.gaugePressure(shown))
	low, err := lookup(p)
	if err != nil {
		return misread{}, misread{}, err
	}
	high, err := lookup(p + too)
	asAbsolute.at, wrongAtmosphere.at = g.scale(low), g.scale(high)
	return asAbsolute, wrongAtmosphere, err
}
