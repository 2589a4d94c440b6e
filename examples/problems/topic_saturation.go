package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// saturationProblem reads an evaporating temperature off a table.
func saturationProblem(g *generator) (Problem, error) {
	f := g.fluid()
	at := g.degrees(g.pick(30, 50, 2), g.pick(-1, 10, 1))
	if g.difficulty >= 2 {
		at = g.degrees(g.pick(31, 49, 2), g.pick(-0.5, 9.5, 1))
	}
	dew, err := f.DewPressure(at)
	if err != nil {
		return Problem{}, err
	}
	bubble, err := f.BubblePressure(at)
	if err != nil {
		return Problem{}, err
	}
	reading := g.gauge(dew, quantity.StandardAtmosphere)
	tab, err := g.saturationTable(f, at)
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, err := f.DewTemperature(quantity.Pressure(g.gaugePressure(reading)))
	if err != nil {
		return Problem{}, err
	}
	p := Problem{
		Statement: fmt.Sprintf("The gauge at the suction port of a machine charged with %s shows %s, at sea level.", f.Designation(), g.pressure(reading)),
		Given:     given("refrigerant", f.Designation(), "suction pressure", g.pressure(reading)),
		Ask:       "At what temperature does the refrigerant leave the evaporator saturated?",
		Tables:    []Table{tab},
		Steps: []Step{
			step(definition, "The suction line carries vapor, so the dew column applies."),
			step(saturationSource, "In the dew column %s lies at %s%s.", g.pressure(reading), g.temperature(at), between(g.difficulty)),
		},
		Answer: plainAnswer(g.scale(at), 0.3, g.degreeUnit()),
		Wrong: []Wrong{{
			Text:    number(math.Round(10*g.scale(asAbsolute))/10) + " " + g.degreeUnit(),
			Mistake: "the gauge reading was taken for an absolute pressure",
		}},
		again: func() (float64, error) {
			t, err := f.DewTemperature(g.gaugePressure(reading).Absolute(quantity.StandardAtmosphere))
			return g.scale(t), err
		},
	}
	if wrong, err := f.BubbleTemperature(dew); err == nil && bubble.PSIA()-dew.PSIA() > 1 {
		p.Wrong = append(p.Wrong, Wrong{Text: number(math.Round(10*g.scale(wrong))/10) + " " + g.degreeUnit(), Mistake: "the bubble column was read for vapor"})
	}
	return p, nil
}

func between(difficulty int) string {
	if difficulty >= 2 {
		return ", halfway between two rows"
	}
	return ""
}

// glideProblem finds the glide of a blend at a pressure.
func glideProblem(g *generator) (Problem, error) {
	f := g.widestGlide()
	at := g.degrees(g.pick(36, 48, 2), g.pick(2, 9, 1))
	bubble, err := f.BubblePressure(at)
	if err != nil {
		return Problem{}, err
	}
	reading := g.gauge(bubble, quantity.StandardAtmosphere)
	absolute := g.gaugePressure(reading).Absolute(quantity.StandardAtmosphere)
	dew, err := f.DewTemperature(absolute)
	if err != nil {
		return Problem{}, err
	}
	low, err := g.saturationTable(f, at)
	if err != nil {
		return Problem{}, err
	}
	tables := []Table{low}
	glide := math.Round(10*(g.scale(dew)-g.scale(at))) / 10
	if glide > 6*map[bool]float64{true: 2, false: 1}[g.ip()]*0.8 {
		high, err := g.saturationTable(f, dew)
		if err != nil {
			return Problem{}, err
		}
		tables = append(tables, high)
	}
	return Problem{
		Statement: fmt.Sprintf("%s evaporates at %s on the gauge, at sea level. Neglect the pressure drop of the coil.", f.Designation(), g.pressure(reading)),
		Given:     given("refrigerant", f.Designation(), "pressure in the evaporator", g.pressure(reading)),
		Ask:       "How large is its glide at this pressure?",
		Tables:    tables,
		Steps: []Step{
			step(saturationSource, "The bubble column gives %s.", g.temperature(at)),
			step(saturationSource, "The dew column gives, between its rows, %s %s.", number(math.Round(10*g.scale(dew))/10), g.degreeUnit()),
			step(definition, "The glide is dew less bubble temperature at one pressure: %s.", g.difference(glide)),
		},
		Answer: plainAnswer(glide, 0.4, g.deltaUnit()),
		Wrong: []Wrong{
			{Text: "0 " + g.deltaUnit(), Mistake: "the blend was taken for a pure fluid"},
			{Text: g.difference(-glide), Mistake: "bubble less dew: the glide is never negative"},
		},
		again: func() (float64, error) {
			d, err := f.Glide(absolute)
			return g.delta(d), err
		},
	}, nil
}

// widestGlide is the refrigerant of the set with the largest glide.
func (g *generator) widestGlide() *refrigerant.Refrigerant {
	best, most := g.fluids[0], quantity.TemperatureDelta(-1)
	for _, f := range g.fluids {
		p, err := f.BubblePressure(quantity.Fahrenheit(40))
		if err != nil {
			continue
		}
		if glide, err := f.Glide(p); err == nil && glide > most {
			best, most = f, glide
		}
	}
	return best
}
