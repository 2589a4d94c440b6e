package main

import (
	"fmt"
)

// subcoolingProblem counts the liquid line from the bubble point, and asks in
// turn for the subcooling and for the line.
func subcoolingProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(96, 116, 2), g.pick(36, 47, 1))
	if g.difficulty >= 2 {
		sat = g.degrees(g.pick(97, 115, 2), g.pick(36.5, 46.5, 1))
	}
	fall := g.either(g.pick(4, 18, 1), g.pick(2, 10, 1))
	line := g.fromScale(g.scale(sat) - fall)
	outdoor := g.fromScale(g.scale(line) - g.either(g.pick(3, 12, 1), g.pick(2, 6, 1)))
	r, err := g.gaugeReading(f, bubbleColumn, sat)
	if err != nil {
		return Problem{}, err
	}
	a := numeric(fall, reading, 1, g.deltaUnit())
	out := Problem{
		Statement: fmt.Sprintf(
			"The liquid port of an %s machine %s shows %s; the liquid line beside it is at %s, and the air entering the condenser at %s.",
			f.Designation(),
			r.site.text,
			g.pressure(r.shown),
			g.temperature(line),
			g.temperature(outdoor),
		),
		Given: g.givenAt(
			r.site,
			"refrigerant",
			f.Designation(),
			"liquid pressure",
			g.pressure(r.shown),
			"liquid line",
			g.temperature(line),
			"outdoor air",
			g.temperature(outdoor),
		),
		Ask:    "What is the subcooling?",
		Tables: []Table{r.table},
		Steps: []Step{
			g.columnApplies(r.site, "The liquid line carries liquid", "bubble", r.shown),
			step(saturationSource, "In the bubble column %s%s.", r.how, g.taken(r.how, sat)),
			step(
				definition,
				"Subcooling is the bubble temperature less the line: %s − %s = %s.",
				g.temperature(sat),
				g.temperature(line),
				a.Text,
			),
		},
		Answer: a,
		again: func() (float64, error) {
			d, err := f.Subcooling(g.gaugePressure(r.shown).Absolute(r.site.atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		if err := g.otherSide(&out, f, r.site, g.degrees(g.pick(36, 46, 1), g.pick(2, 8, 1)), "suction"); err != nil {
			return Problem{}, err
		}
	}
	if g.turn(2) == 1 {
		out.Statement = fmt.Sprintf(
			"The liquid port of an %s machine %s shows %s, and the air entering the condenser is at %s. The label asks for %s of subcooling.",
			f.Designation(),
			r.site.text,
			g.pressure(r.shown),
			g.temperature(outdoor),
			g.difference(fall),
		)
		g.askForLine(&out, "liquid", fall, line)
		if r.between {
			out.Wrong = append(
				out.Wrong,
				out.Answer.slip(r.other-fall, "the dew column was read for liquid"),
			)
		}
		out.Wrong = append(
			out.Wrong,
			out.Answer.slip(
				g.scale(sat)+fall,
				"the subcooling was added; that is how the suction line is found from a superheat",
			),
			out.Answer.slip(
				g.scale(sat),
				"the bubble temperature itself; a line at it has no subcooling",
			),
			out.Answer.slip(
				g.scale(outdoor)+fall,
				"the subcooling was added to the outdoor air; it counts from the bubble temperature",
			),
			out.Answer.slip(
				r.asAbsolute.at-fall,
				"the gauge reading was looked up as an absolute pressure",
			),
		)
		if r.site.added != 0 {
			out.Wrong = append(
				out.Wrong,
				out.Answer.slip(r.wrongAtmosphere.at-fall, r.wrongAtmosphere.mistake),
			)
		}
		return out, nil
	}
	if r.between {
		out.Wrong = append(
			out.Wrong,
			a.slip(r.other-g.scale(line), "the dew column was read for liquid"),
		)
	}
	out.Wrong = append(
		out.Wrong,
		a.slip(
			g.scale(line)-g.scale(outdoor),
			"the liquid line less the outdoor air: that is the approach",
		),
		a.slip(
			g.scale(sat)-g.scale(outdoor),
			"condensing less outdoor air; subcooling compares with the liquid line",
		),
		a.slip(-fall, "line less saturation: that is how superheat is counted, on the other side"),
		a.slip(
			r.asAbsolute.at-g.scale(line),
			"the gauge reading was looked up as an absolute pressure",
		),
	)
	if r.site.added != 0 {
		out.Wrong = append(
			out.Wrong,
			a.slip(r.wrongAtmosphere.at-g.scale(line), r.wrongAtmosphere.mistake),
		)
	}
	return out, nil
}
