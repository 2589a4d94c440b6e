package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/refrigerant"
)

// glideProblem finds the glide of a blend at a pressure.
func glideProblem(g *generator) (Problem, error) {
	f := g.glider()
	at := g.degrees(g.pick(36, 48, 2), g.pick(2, 9, 1))
	where := "boils in an evaporator where the gauge shows"
	name := "pressure in the evaporator"
	neglect := "coil"
	if g.turn(2) == 1 {
		at = g.degrees(g.pick(96, 112, 2), g.pick(36, 44, 1))
		where, name, neglect = "condenses where the gauge shows", "pressure in the condenser", "condenser"
	}
	if g.difficulty >= 2 {
		at = g.fromScale(g.scale(at) + g.either(1, 0.5))
	}
	bubble, err := f.BubblePressure(at)
	if err != nil {
		return Problem{}, err
	}
	site := g.gaugeSite()
	listed := g.listed(site, bubble)
	shown := site.shown(listed)
	absolute := g.gaugePressure(shown).Absolute(site.atm)
	dew, err := f.DewTemperature(absolute)
	if err != nil {
		return Problem{}, err
	}
	dewAt, err := f.DewPressure(at)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, site, at, dew)
	if err != nil {
		return Problem{}, err
	}
	bubbleRead, bubbleHow, _ := g.read(tab, site, bubbleColumn, listed)
	dewRead, dewHow, _ := g.read(tab, site, dewColumn, listed)
	glide := math.Round(10*(dewRead-bubbleRead)) / 10
	apart := listed - g.listed(site, dewAt)
	a := numeric(glide, reading, 1, g.deltaUnit())
	p := Problem{
		Statement: fmt.Sprintf(
			"%s %s %s, %s. Neglect the pressure drop of the %s.",
			f.Designation(),
			where,
			g.pressure(shown),
			site.text,
			neglect,
		),
		Given:  g.givenAt(site, "refrigerant", f.Designation(), name, g.pressure(shown)),
		Ask:    "How large is its glide at this pressure?",
		Tables: []Table{tab},
		Steps: []Step{
			step(saturationSource, "In the bubble column %s.", bubbleHow),
			step(saturationSource, "In the dew column %s.", dewHow),
			step(
				definition,
				"The glide is dew less bubble temperature at one pressure: %s − %s = %s.",
				number(dewRead),
				number(bubbleRead),
				a.Text,
			),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(0, "the blend was taken for a pure fluid"),
			{
				Text:    g.pressureDifference(apart),
				Mistake: "the difference of the two pressures in one row; glide is a difference of temperatures at one pressure",
			},
			a.slip(
				glide/2,
				"the mean of the two temperatures less the bubble temperature; that is half of it",
			),
			a.slip(-glide, "bubble less dew: the glide is never negative"),
		},
		again: func() (float64, error) {
			d, err := f.Glide(absolute)
			return g.delta(d), err
		},
	}
	if site.added != 0 {
		p.Steps = append([]Step{g.toAbsolute(site, shown)}, p.Steps...)
	}
	return p, nil
}

// glider is a refrigerant of the set that glides.
func (g *generator) glider() *refrigerant.Refrigerant {
	var gliding []*refrigerant.Refrigerant
	for _, f := range g.fluids {
		if glides(f) {
			gliding = append(gliding, f)
		}
	}
	return gliding[g.rng.IntN(len(gliding))]
}
