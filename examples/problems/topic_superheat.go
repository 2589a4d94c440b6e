package main

import (
	"fmt"
)

// superheatProblem counts the suction line from the dew point. From difficulty
// 2 on the pressure lies between two rows and the other side of the machine is
// given too, for the student to leave aside. In turn it asks for the superheat
// and for the suction line at which it is right.
func superheatProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(34, 48, 2), g.pick(1, 9, 1))
	if g.difficulty >= 2 {
		sat = g.degrees(g.pick(35, 47, 2), g.pick(1.5, 8.5, 1))
	}
	rise := g.either(g.pick(5, 26, 1), g.pick(3, 14, 1))
	line := g.fromScale(g.scale(sat) + rise)
	r, err := g.gaugeReading(f, dewColumn, sat)
	if err != nil {
		return Problem{}, err
	}
	a := numeric(rise, reading, 1, g.deltaUnit())
	out := Problem{
		Statement: fmt.Sprintf(
			"An %s machine %s shows %s at the suction port, and a clamp near the compressor reads %s on the suction line.",
			f.Designation(),
			r.site.text,
			g.pressure(r.shown),
			g.temperature(line),
		),
		Given: g.givenAt(
			r.site,
			"refrigerant",
			f.Designation(),
			"suction pressure",
			g.pressure(r.shown),
			"suction line",
			g.temperature(line),
		),
		Ask:    "What is the superheat?",
		Tables: []Table{r.table},
		Steps: []Step{
			g.columnApplies(r.site, "The suction line carries vapor", "dew", r.shown),
			step(saturationSource, "In the dew column %s%s.", r.how, g.taken(r.how, sat)),
			step(
				definition,
				"Superheat is the line less the dew temperature: %s − %s = %s.",
				g.temperature(line),
				g.temperature(sat),
				a.Text,
			),
		},
		Answer: a,
		again: func() (float64, error) {
			d, err := f.Superheat(g.gaugePressure(r.shown).Absolute(r.site.atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		if err := g.otherSide(&out, f, r.site, g.degrees(g.pick(98, 114, 1), g.pick(37, 46, 1)), "liquid"); err != nil {
			return Problem{}, err
		}
	}
	if g.turn(2) == 1 {
		out.Statement = fmt.Sprintf(
			"An %s machine %s shows %s at the suction port. It is to run at %s of superheat.",
			f.Designation(),
			r.site.text,
			g.pressure(r.shown),
			g.difference(rise),
		)
		g.askForLine(&out, "suction", rise, line)
		if r.between {
			out.Wrong = append(
				out.Wrong,
				out.Answer.slip(r.other+rise, "the bubble column was read for vapor"),
			)
		}
		out.Wrong = append(
			out.Wrong,
			out.Answer.slip(
				g.scale(sat)-rise,
				"the superheat was taken off; that is how the liquid line is found from a subcooling",
			),
			out.Answer.slip(
				g.scale(sat),
				"the dew temperature itself; a line at it has no superheat",
			),
			out.Answer.slip(
				r.asAbsolute.at+rise,
				"the gauge reading was looked up as an absolute pressure",
			),
		)
		if r.site.added != 0 {
			out.Wrong = append(
				out.Wrong,
				out.Answer.slip(r.wrongAtmosphere.at+rise, r.wrongAtmosphere.mistake),
			)
		}
		return out, nil
	}
	if r.between {
		out.Wrong = append(
			out.Wrong,
			a.slip(g.scale(line)-r.other, "the bubble column was read for vapor"),
		)
	}
	out.Wrong = append(
		out.Wrong,
		a.slip(-rise, "saturation less line: that is how subcooling is counted, on the other side"),
		a.slip(
			g.scale(line)-r.asAbsolute.at,
			"the gauge reading was looked up as an absolute pressure",
		),
		a.slip(g.scale(line), "the line temperature itself; superheat is a difference"),
	)
	if r.site.added != 0 {
		out.Wrong = append(
			out.Wrong,
			a.slip(g.scale(line)-r.wrongAtmosphere.at, r.wrongAtmosphere.mistake),
		)
	}
	if g.ip() {
		out.Wrong = append(
			out.Wrong,
			a.slip(
				r.shown-g.scale(line),
				"the temperature was taken from the pressure; the pressure has to be turned into a temperature first",
			),
		)
	}
	return out, nil
}
