package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// reading is how far an answer from a saturation table may be off.
const reading = 0.2

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
	shown := g.gauge(dew, quantity.StandardAtmosphere)
	misread, err := f.BubbleTemperature(dew)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, at, misread)
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, twice, err := g.offByAnAtmosphere(shown, f.DewTemperature)
	if err != nil {
		return Problem{}, err
	}
	_, how, _ := g.read(tab, dewColumn, shown)
	a := numeric(g.scale(at), reading, 1, g.degreeUnit())
	p := Problem{
		Statement: fmt.Sprintf("The gauge at the suction port of a machine charged with %s shows %s, at sea level.", f.Designation(), g.pressure(shown)),
		Given:     given("refrigerant", f.Designation(), "suction pressure", g.pressure(shown)),
		Ask:       "At what temperature does the last of the refrigerant boil at this pressure?",
		Tables:    []Table{tab},
		Steps: []Step{
			step(definition, "The last of it boils at the dew point, so the dew column applies; the table is in gauge pressure already."),
			step(saturationSource, "In the dew column %s%s.", how, g.taken(how, at)),
		},
		Answer: a,
		again: func() (float64, error) {
			t, err := f.DewTemperature(g.gaugePressure(shown).Absolute(quantity.StandardAtmosphere))
			return g.scale(t), err
		},
	}
	if wrong, _, ok := g.read(tab, bubbleColumn, shown); ok {
		p.Wrong = append(p.Wrong, a.slip(wrong, "the bubble column was read; what leaves an evaporator is vapor, and its column is the dew column"))
	}
	p.Wrong = append(p.Wrong,
		a.slip(asAbsolute, "the gauge reading was taken for an absolute pressure in a table of absolute pressures"),
		a.slip(twice, "the atmosphere was added to the reading before a table that is in gauge pressure already"),
		a.slip(g.scale(at)+g.either(2, 1), "the reading slipped by a row; lay a ruler under it"),
	)
	return p, nil
}

// offByAnAtmosphere looks a reading up as if it were absolute, and with the
// atmosphere added twice.
func (g *generator) offByAnAtmosphere(shown float64, lookup func(quantity.Pressure) (quantity.Temperature, error)) (less, more float64, err error) {
	p := g.gaugePressure(shown)
	low, err := lookup(quantity.Pressure(p))
	if err != nil {
		return 0, 0, err
	}
	high, err := lookup(quantity.Pressure(p) + 2*quantity.StandardAtmosphere)
	return g.scale(low), g.scale(high), err
}

// glideProblem finds the glide of a blend at a pressure.
func glideProblem(g *generator) (Problem, error) {
	f := g.widestGlide()
	at := g.degrees(g.pick(36, 48, 2), g.pick(2, 9, 1))
	bubble, err := f.BubblePressure(at)
	if err != nil {
		return Problem{}, err
	}
	shown := g.gauge(bubble, quantity.StandardAtmosphere)
	absolute := g.gaugePressure(shown).Absolute(quantity.StandardAtmosphere)
	dew, err := f.DewTemperature(absolute)
	if err != nil {
		return Problem{}, err
	}
	dewAt, err := f.DewPressure(at)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, at, dew)
	if err != nil {
		return Problem{}, err
	}
	bubbleRead, bubbleHow, _ := g.read(tab, bubbleColumn, shown)
	dewRead, dewHow, _ := g.read(tab, dewColumn, shown)
	glide := math.Round(10*(dewRead-bubbleRead)) / 10
	apart := shown - g.gauge(dewAt, quantity.StandardAtmosphere)
	a := numeric(glide, reading, 1, g.deltaUnit())
	return Problem{
		Statement: fmt.Sprintf("%s boils in an evaporator where the gauge shows %s, at sea level. Neglect the pressure drop of the coil.", f.Designation(), g.pressure(shown)),
		Given:     given("refrigerant", f.Designation(), "pressure in the evaporator", g.pressure(shown)),
		Ask:       "How large is its glide at this pressure?",
		Tables:    []Table{tab},
		Steps: []Step{
			step(saturationSource, "In the bubble column %s.", bubbleHow),
			step(saturationSource, "In the dew column %s.", dewHow),
			step(definition, "The glide is dew less bubble temperature at one pressure: %s − %s = %s.", number(dewRead), number(bubbleRead), a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(0, "the blend was taken for a pure fluid"),
			{Text: g.pressureDifference(apart), Mistake: "the difference of the two pressures in one row; glide is a difference of temperatures at one pressure"},
			a.slip(glide/2, "the mean of the two temperatures less the bubble temperature; that is half of it"),
			a.slip(-glide, "bubble less dew: the glide is never negative"),
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
