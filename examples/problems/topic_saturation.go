package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// reading is how far an answer from a saturation table may be off.
const reading = 0.2

const rowSlipped = "the reading slipped by a row; lay a ruler under it"

// saturationProblem reads a temperature of boiling or condensing, or the pressure
// of a cylinder, off a table.
func saturationProblem(g *generator) (Problem, error) {
	switch g.turn(3) {
	case 1:
		return condensingProblem(g)
	case 2:
		return cylinderProblem(g)
	}
	return boilingProblem(g)
}

func boilingProblem(g *generator) (Problem, error) {
	f := g.fluid()
	at := g.degrees(g.pick(30, 50, 2), g.pick(-1, 10, 1))
	if g.difficulty >= 2 {
		at = g.degrees(g.pick(31, 49, 2), g.pick(-0.5, 9.5, 1))
	}
	r, err := g.gaugeReading(f, dewColumn, at)
	if err != nil {
		return Problem{}, err
	}
	a := numeric(g.scale(at), reading, 1, g.degreeUnit())
	p := Problem{
		Statement: fmt.Sprintf(
			"The gauge at the suction port of a machine charged with %s shows %s, %s.",
			f.Designation(),
			g.pressure(r.shown),
			r.site.text,
		),
		Given: g.givenAt(
			r.site,
			"refrigerant",
			f.Designation(),
			"suction pressure",
			g.pressure(r.shown),
		),
		Ask:    "At what temperature does the last of the refrigerant boil at this pressure?",
		Tables: []Table{r.table},
		Steps: []Step{
			g.columnApplies(r.site, "The last of it boils at the dew point", "dew", r.shown),
			step(saturationSource, "In the dew column %s%s.", r.how, g.taken(r.how, at)),
		},
		Answer: a,
		again: func() (float64, error) {
			t, err := f.DewTemperature(g.gaugePressure(r.shown).Absolute(r.site.atm))
			return g.scale(t), err
		},
	}
	if r.between {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				r.other,
				"the bubble column was read; what leaves an evaporator is vapor, and its column is the dew column",
			),
		)
	}
	p.Wrong = append(
		p.Wrong,
		a.slip(
			r.asAbsolute.at,
			r.asAbsolute.mistake,
		),
		a.slip(r.wrongAtmosphere.at, r.wrongAtmosphere.mistake),
		a.slip(g.scale(at)+g.either(2, 1), rowSlipped),
	)
	return p, nil
}

func condensingProblem(g *generator) (Problem, error) {
	f := g.fluid()
	at := g.degrees(g.pick(96, 116, 2), g.pick(36, 47, 1))
	if g.difficulty >= 2 {
		at = g.degrees(g.pick(97, 115, 2), g.pick(36.5, 46.5, 1))
	}
	r, err := g.gaugeReading(f, bubbleColumn, at)
	if err != nil {
		return Problem{}, err
	}
	a := numeric(g.scale(at), reading, 1, g.degreeUnit())
	p := Problem{
		Statement: fmt.Sprintf(
			"The gauge at the liquid port of a machine charged with %s shows %s, %s. Neglect the pressure drop of the condenser.",
			f.Designation(),
			g.pressure(r.shown),
			r.site.text,
		),
		Given: g.givenAt(
			r.site,
			"refrigerant",
			f.Designation(),
			"liquid pressure",
			g.pressure(r.shown),
		),
		Ask:    "At what temperature does the last of the refrigerant condense at this pressure?",
		Tables: []Table{r.table},
		Steps: []Step{
			g.columnApplies(
				r.site,
				"The last of it condenses at the bubble point",
				"bubble",
				r.shown,
			),
			step(saturationSource, "In the bubble column %s%s.", r.how, g.taken(r.how, at)),
		},
		Answer: a,
		again: func() (float64, error) {
			t, err := f.BubbleTemperature(g.gaugePressure(r.shown).Absolute(r.site.atm))
			return g.scale(t), err
		},
	}
	if r.between {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				r.other,
				"the dew column was read; what leaves a condenser is liquid, and its column is the bubble column",
			),
		)
	}
	p.Wrong = append(
		p.Wrong,
		a.slip(
			r.asAbsolute.at,
			r.asAbsolute.mistake,
		),
		a.slip(r.wrongAtmosphere.at, r.wrongAtmosphere.mistake),
		a.slip(g.scale(at)+g.either(2, 1), rowSlipped),
	)
	return p, nil
}

// cylinderProblem goes through the table the other way, from a temperature to a
// pressure.
func cylinderProblem(g *generator) (Problem, error) {
	f := g.fluid()
	room := g.degrees(g.pick(60, 90, 2), g.pick(16, 32, 1))
	if g.difficulty >= 2 {
		room = g.degrees(g.pick(61, 89, 2), g.pick(16.5, 31.5, 1))
	}
	site := g.gaugeSite()
	tab, err := g.saturationTable(f, site, room)
	if err != nil {
		return Problem{}, err
	}
	listed, how := g.lookUp(tab, site, bubbleColumn, g.scale(room))
	shown := listed - site.added
	dew, _ := g.lookUp(tab, site, dewColumn, g.scale(room))
	next, _ := g.lookUp(tab, site, bubbleColumn, g.scale(room)+g.either(2, 1))
	atmosphere := g.gauge(2*quantity.StandardAtmosphere, quantity.StandardAtmosphere)
	// Between rows the tables are read along a straight line, and they are rounded.
	a := numeric(shown, g.either(0.2, 2), int(g.either(1, 0)), g.gaugeUnit())
	p := Problem{
		Statement: fmt.Sprintf(
			"A cylinder of %s, as delivered and most of it liquid, has stood in a room at %s for a day, %s.",
			f.Designation(),
			g.temperature(room),
			site.text,
		),
		Given:  g.givenAt(site, "refrigerant", f.Designation(), "room", g.temperature(room)),
		Ask:    "What should a gauge on it show?",
		Tables: []Table{tab},
		Steps: []Step{
			step(
				definition,
				"The cylinder has the temperature of the room, and most of what is in it is liquid, so the bubble column applies.",
			),
			step(saturationSource, "In the bubble column %s.", how),
		},
		Answer:  a,
		Caution: "the pressure of a cylinder rises with its temperature. Never heat one with a flame, and never fill one beyond its limit.",
		Wrong: []Wrong{
			a.slip(
				dew-site.added,
				"the dew column was read; that is the pressure of the last drop, and this cylinder is full of liquid",
			),
			a.slip(next-site.added, rowSlipped),
		},
		again: func() (float64, error) {
			// The pressure at which the first bubble comes at the temperature of the
			// room, closed in on from both sides.
			low, high := quantity.StandardAtmosphere, f.Critical().Pressure
			for range 60 {
				middle := (low + high) / 2
				t, err := f.BubbleTemperature(middle)
				if err != nil {
					return 0, err
				}
				if t < room {
					low = middle
				} else {
					high = middle
				}
			}
			return g.gauge(low, site.atm), nil
		},
	}
	if site.added == 0 {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				shown+atmosphere,
				"the atmosphere was added; a gauge does not count it, and the table is in gauge pressure",
			),
			a.slip(
				shown-atmosphere,
				"the atmosphere was taken off again; the table is in gauge pressure already",
			),
		)
		return p, nil
	}
	p.Steps = append(
		p.Steps,
		step(
			definition,
			"Its pressures are absolute, and a gauge counts from the air around it: %s − %s = %s.",
			g.cell(listed),
			g.cell(site.added),
			a.Text,
		),
	)
	p.Wrong = append(
		p.Wrong,
		a.slip(listed, "the absolute pressure of the table; a gauge does not count the atmosphere"),
		a.slip(
			listed-atmosphere,
			"the atmosphere of sea level was taken off; a gauge counts from the air around it",
		),
		a.slip(shown-site.added, "the atmosphere was taken off twice"),
	)
	return p, nil
}
