package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// airProblem finds the humidity ratio, in turn from dry and wet bulb and from the
// relative humidity.
func airProblem(g *generator) (Problem, error) {
	if g.turn(2) == 1 {
		return relativeHumidityProblem(g)
	}
	return wetBulbProblem(g)
}

// dryAirUnit is how many of the unit of a humidity ratio a pound or kilogram of
// dry air takes for one of water.
func (g *generator) dryAirUnit() (whole float64, unit string) {
	if g.ip() {
		return 7000, "grains/lb of dry air"
	}
	return 1000, "g/kg of dry air"
}

// steamBetween is the saturation pressure of water as a student reads it, from
// difficulty 2 on halfway between two rows, and says how.
func (g *generator) steamBetween(
	t quantity.Temperature,
	places int,
) (v float64, how string, err error) {
	unit := g.absoluteUnit()
	low := g.fromScale(math.Floor(g.scale(t) + 1e-6))
	below, err := g.steam(low, places)
	if err != nil || math.Abs(g.scale(t)-g.scale(low)) < 1e-6 {
		return below, fmt.Sprintf(
			"At %s water has a saturation pressure of %s %s.",
			g.temperature(t),
			fixed(below, places),
			unit,
		), err
	}
	above, err := g.steam(g.fromScale(g.scale(low)+1), places)
	scale := math.Pow10(places)
	v = math.Round(scale*(below+above)/2) / scale
	return v, fmt.Sprintf(
		"%s lies halfway between two rows: (%s + %s) / 2 = %s %s.",
		g.temperature(t),
		fixed(below, places),
		fixed(above, places),
		fixed(v, places),
		unit,
	), err
}

const steamSource = "steam table of the problem, from " + moistAirSource + ", equation 6"

// relativeHumidityProblem finds the humidity ratio from the relative humidity.
func relativeHumidityProblem(g *generator) (Problem, error) {
	dry := g.degrees(g.pick(70, 80, 1), g.pick(21, 27, 1))
	if g.difficulty >= 2 {
		dry = g.fromScale(g.scale(dry) + 0.5)
	}
	percent := g.pick(30, 70, 5)
	z, atm, place := g.place()
	const places = 4
	pws, how, err := g.steamBetween(dry, places)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.steamTable(
		g.fromScale(math.Floor(g.scale(dry)+1e-6)),
		g.fromScale(math.Ceil(g.scale(dry)-1e-6)),
		places,
	)
	if err != nil {
		return Problem{}, err
	}
	pressure, unit := g.atmosphere(atm)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	whole, answerUnit := g.dryAirUnit()
	ratio := func(pw, p float64) float64 { return whole * 0.621945 * pw / (p - pw) }
	pw := math.Round(1e4*pws*percent/100) / 1e4
	a := numeric(ratio(pw, pressure), 0.01*ratio(pw, pressure), 1, answerUnit)
	p := Problem{
		Statement: fmt.Sprintf(
			"The air of a room is at %s dry bulb and %s %% relative humidity %s, where the atmosphere is %s %s.",
			g.temperature(dry),
			number(percent),
			place,
			fixed(pressure, 2),
			unit,
		),
		Given: given(
			"dry bulb",
			g.temperature(dry),
			"relative humidity",
			number(percent)+" %",
			"atmosphere",
			fixed(pressure, 2)+" "+unit,
		),
		Ask:       "What is its humidity ratio, in " + answerUnit + "?",
		Tables:    []Table{tab},
		Air:       true,
		Elevation: z,
		plot: func(c *chart.Chart) error {
			air, err := psychro.FromRelativeHumidity(dry, percent/100, atm)
			if err != nil {
				return err
			}
			return c.AddState("room", air)
		},
		Steps: []Step{
			step(steamSource, "%s", how),
			step(
				definition,
				"The vapor has %s %% of that: %s × %s = %s %s.",
				number(percent),
				decimals(percent/100, 2),
				fixed(pws, places),
				fixed(pw, 4),
				unit,
			),
			step(
				moistAirSource+", equation 20",
				"W = %s × 0.621945 × %s / (%s − %s) = %s.",
				decimals(whole, 0),
				fixed(pw, 4),
				fixed(pressure, 2),
				fixed(pw, 4),
				a.Text,
			),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(
				ratio(pws, pressure),
				"the air was taken as saturated; the relative humidity was left out",
			),
			a.slip(
				whole*pw/pressure,
				"the factor 0.621945 was left out; a mole of water weighs less than one of air",
			),
			a.slip(ratio(pw, pressure)*percent/100, "the relative humidity was counted twice"),
			a.slip(ratio(pws-pw, pressure), "what the air could still take up, not what it holds"),
		},
		again: func() (float64, error) {
			air, err := psychro.FromRelativeHumidity(dry, percent/100, atm)
			return whole * air.HumidityRatio(), err
		},
	}
	if pressure != sea {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				ratio(pw, sea),
				"the atmosphere of sea level was used; thin air holds more water by weight",
			),
		)
	}
	return p, nil
}

// wetBulbProblem finds the humidity ratio from dry and wet bulb.
func wetBulbProblem(g *generator) (Problem, error) {
	wet := g.degrees(g.pick(58, 68, 1), g.pick(14, 20, 1))
	if g.difficulty >= 2 {
		wet = g.fromScale(g.scale(wet) + 0.5)
	}
	dry := g.fromScale(g.scale(wet) + g.either(g.pick(8, 16, 1), g.pick(4, 9, 1)))
	z, atm, place := g.place()
	const places = 4
	pws, how, err := g.steamBetween(wet, places)
	if err != nil {
		return Problem{}, err
	}
	pdry, _, err := g.steamBetween(dry, places)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.steamTable(
		g.fromScale(math.Floor(g.scale(wet)+1e-6)),
		g.fromScale(math.Ceil(g.scale(dry)-1e-6)),
		places,
	)
	if err != nil {
		return Problem{}, err
	}
	pressure, unit := g.atmosphere(atm)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	t, w := g.scale(dry), g.scale(wet)
	saturated := func(pws, p float64) float64 { return 0.621945 * pws / (p - pws) }
	// ratio is equation 33; turn is −1 where the sign of its last term is mistaken.
	ratio := func(ws, turn float64) float64 {
		if g.ip() {
			return ((1093-0.556*w)*ws - turn*0.240*(t-w)) / (1093 + 0.444*t - w)
		}
		return ((2501-2.326*w)*ws - turn*1.006*(t-w)) / (2501 + 1.86*t - 4.186*w)
	}
	ws := math.Round(1e6*saturated(pws, pressure)) / 1e6
	filled := fmt.Sprintf(
		"((1093 − 0.556 × %s) × %s − 0.240 × (%s − %s)) / (1093 + 0.444 × %s − %s)",
		number(w),
		fixed(ws, 6),
		number(t),
		number(w),
		number(t),
		number(w),
	)
	whole, answerUnit := g.dryAirUnit()
	if !g.ip() {
		filled = fmt.Sprintf(
			"((2501 − 2.326 × %s) × %s − 1.006 × (%s − %s)) / (2501 + 1.86 × %s − 4.186 × %s)",
			number(w),
			fixed(ws, 6),
			number(t),
			number(w),
			number(t),
			number(w),
		)
	}
	answer := ratio(ws, 1)
	a := numeric(whole*answer, 0.01*whole*answer, 1, answerUnit)
	p := Problem{
		Statement: fmt.Sprintf(
			"Return air is at %s dry bulb and %s wet bulb %s, where the atmosphere is %s %s.",
			g.temperature(dry),
			g.temperature(wet),
			place,
			fixed(pressure, 2),
			unit,
		),
		Given: given(
			"dry bulb",
			g.temperature(dry),
			"wet bulb",
			g.temperature(wet),
			"atmosphere",
			fixed(pressure, 2)+" "+unit,
		),
		Ask:       "What is its humidity ratio, in " + answerUnit + "?",
		Tables:    []Table{tab},
		Air:       true,
		Elevation: z,
		plot: func(c *chart.Chart) error {
			air, err := psychro.FromWetBulb(dry, wet, atm)
			if err != nil {
				return err
			}
			return c.AddState("return", air)
		},
		Steps: []Step{
			step(steamSource, "%s", how),
			step(
				moistAirSource+", equation 21",
				"Saturated at the wet bulb t*: Ws* = 0.621945 × %s / (%s − %s) = %s.",
				fixed(pws, places),
				fixed(pressure, 2),
				fixed(pws, places),
				fixed(ws, 6),
			),
			step(
				moistAirSource+", equation 33",
				"%s = %s = %s.",
				wetBulbFormula(g.sys),
				filled,
				decimals(answer, 5),
			),
			step(
				definition,
				"That is %s × %s = %s.",
				decimals(answer, 5),
				decimals(whole, 0),
				a.Text,
			),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(whole*ws, "the air was taken as saturated at the wet bulb"),
			a.slip(
				whole*saturated(pdry, pressure),
				"the saturation pressure at the dry bulb was used: that is saturated air at the dry bulb",
			),
			a.slip(
				whole*ratio(ws, -1),
				"the term with the wet bulb depression was added; unsaturated air holds less than Ws*",
			),
		},
		again: func() (float64, error) {
			air, err := psychro.FromWetBulb(dry, wet, atm)
			return whole * air.HumidityRatio(), err
		},
	}
	if g.ip() {
		p.Wrong = append(
			p.Wrong,
			a.slip(1000*answer, "a pound has 7000 grains; 1000 is for grams and kilograms"),
		)
	} else {
		p.Wrong = append(p.Wrong, a.slip(whole*1.006*(t-w)/2501, "the wet bulb depression alone; that is how much water the air could still take up"))
	}
	if pressure != sea {
		p.Wrong = append(
			p.Wrong,
			a.slip(
				whole*ratio(saturated(pws, sea), 1),
				"the atmosphere of sea level was used; thin air holds more water by weight",
			),
		)
	}
	return p, nil
}
