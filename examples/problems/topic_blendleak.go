package main

import (
	"math"

	"github.com/satline/satline/refrigerant"
)

// blendleakTopic is about a zeotropic blend that has leaked as vapor.
var blendleakTopic = topic{name: "blend-leak", glides: true, forms: []form{
	{"left", func(g *generator, d *draft) error { return leakForm(d, "left") }},
	{"pressure", func(g *generator, d *draft) error { return leakForm(d, "pressure") }},
	{"shift", func(g *generator, d *draft) error { return leakForm(d, "shift") }},
	{"gone", func(g *generator, d *draft) error { return leakForm(d, "gone") }},
}}

// leaked follows a blend that leaks vapor at 70 °F or 20 °C, by tenths.
func (g *generator) leaked(f *refrigerant.Refrigerant) ([]refrigerant.LeakStep, error) {
	if steps, ok := g.leaks[f]; ok {
		return steps, nil
	}
	steps, err := f.Leak(refrigerant.LeakCase{
		Temperature: g.temperature(g.either(70, 20)), From: refrigerant.Vapor,
		Lost: []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7},
	})
	if err == nil {
		g.leaks[f] = steps
	}
	return steps, err
}

func part(r *refrigerant.Refrigerant, name string) float64 {
	for _, c := range r.Composition() {
		if c.Designation == name {
			return c.MassFraction
		}
	}
	return 0
}

func leakForm(d *draft, ask string) error {
	g, f := d.g, d.g.glider()
	d.giveText("refrigerant", f.Designation())
	steps, err := g.leaked(f)
	if err != nil {
		return err
	}
	if len(steps) < 8 {
		return errAgain
	}
	d.give("stands", g.either(70, 20), g.u.temp)
	names := []string{}
	for _, c := range f.Composition() {
		names = append(names, c.Designation)
	}
	lost, _ := d.word("head-lost")
	gauge, _ := d.word("head-gauge")
	shift, _ := d.word("head-shift")
	u := unit{"%", 1, false}
	t := grid{d: d, units: []unit{{"%", 0, true}}}
	head := []string{lost}
	for _, n := range names {
		head = append(head, n+" %")
		t.units = append(t.units, u)
	}
	head = append(head, gauge+" ("+g.u.absolute.symbol+")", shift+" ("+g.u.delta.symbol+")")
	absolute := g.u.absolute
	t.units = append(t.units, absolute, unit{g.u.delta.symbol, 1, false})
	for _, s := range steps {
		row := []float64{math.Round(100 * s.Lost)}
		for _, n := range names {
			row = append(row, rounded(100*part(s.Remaining, n), 1))
		}
		t.rows = append(t.rows, append(row, rounded(g.pressureNumber(s.Pressure), absolute.places),
			rounded(g.delta(s.DewShift), 1)))
	}
	caption, _ := d.word("caption")
	t.print(f.Designation()+caption, head)
	at := 10 * g.pick(2, 6, 1)
	if g.atLeast(2) {
		at = 10*g.pick(2, 5, 1) + g.pick(2, 8, 1)
	}
	i := 1 + g.rng.IntN(len(names))
	exact := func(of func(refrigerant.LeakStep) float64) float64 { // read between two steps
		low := int(at / 10)
		high := min(low+1, len(steps)-1)
		share := at/10 - float64(low)
		return (1-share)*of(steps[low]) + share*of(steps[high])
	}
	misread := func(column int, work func(v float64) float64) {
		d.wrong("row-below", work(t.between(0, column, at, 1)))
		d.wrong("row-above", work(t.between(0, column, at, -1)))
		d.wrong("two-rows-below", work(t.between(0, column, at, 2)))
		d.wrong("two-rows-above", work(t.between(0, column, at, -2)))
	}
	switch ask {
	case "left":
		whole := d.give("label-charge", g.among(5, 14, 0.1, 2.2, 6.5, 0.05), g.u.mass)
		d.give("lost", at, g.u.percent)
		d.noise("outdoor-air")
		d.bound["part"] = names[i-1]
		share := t.between(0, i, at, 0) / 100
		t.how("part", 0, i, at)
		d.set("share", 100*share, u)
		left := 1 - at/100
		d.figure("left-share", left, 2)
		mass := unit{g.u.mass.symbol, 2, false}
		d.answer(whole*left*share, 0.02*whole*left*share, mass)
		d.again = whole * left * exact(func(s refrigerant.LeakStep) float64 {
			return part(s.Remaining, names[i-1])
		})
		misread(i, func(v float64) float64 { return whole * left * v / 100 })
		d.wrong("fresh-share", whole*left*t.rows[0][i]/100)
		d.wrong("of-whole", whole*share)
		d.wrong("of-lost", whole*(1-left)*share)
		other := 1 + i%len(names)
		d.wrong("other-part", whole*left*t.between(0, other, at, 0)/100)
		d.wrong("other-fresh", whole*left*t.rows[0][other]/100)
	case "pressure":
		d.give("lost", at, g.u.percent)
		d.noise("outdoor-air", "label-charge")
		column := len(names) + 1
		fresh := t.rows[0][column]
		now := t.between(0, column, at, 0)
		t.how("now", 0, column, at)
		d.set("fresh", fresh, absolute)
		d.set("now", now, unit{absolute.symbol, absolute.places + 1, true})
		drop := unit{g.u.drop.symbol, absolute.places, false}
		d.answer(fresh-now, 0.003*fresh, drop)
		d.again = g.pressureNumber(steps[0].Pressure) - exact(
			func(s refrigerant.LeakStep) float64 { return g.pressureNumber(s.Pressure) })
		misread(column, func(v float64) float64 { return fresh - v })
		d.wrong("from-first", t.rows[1][column]-now)
		d.wrong("in-proportion", fresh*at/100)
		d.wrong("half", (fresh-now)/2)
		d.wrong("twice", 2*(fresh-now))
	case "shift":
		d.give("lost", at, g.u.percent)
		shown := d.give("superheat-shown", g.among(9, 20, 0.1, 5, 11, 0.1), g.u.delta)
		d.noise("outdoor-air", "label-charge")
		column := len(names) + 2
		off := t.between(0, column, at, 0)
		t.how("off", 0, column, at)
		d.set("off", off, unit{g.u.delta.symbol, 2, true})
		d.answer(shown-off, g.either(0.2, 0.1), g.deltaUnit())
		d.again = shown - exact(func(s refrigerant.LeakStep) float64 { return g.delta(s.DewShift) })
		misread(column, func(v float64) float64 { return shown - v })
		d.wrong("added", shown+off)
		d.wrong("itself", shown)
		d.wrong("half-shift", shown-off/2)
		d.wrong("shift-twice", shown-2*off)
	case "gone":
		d.give("lost", at, g.u.percent)
		d.noise("outdoor-air", "label-charge")
		// The component whose share has fallen furthest in proportion left first.
		which, other, sign := "largest", "less-volatile", 1.0
		if g.rng.IntN(2) == 0 {
			which, other, sign = "smallest", "more-volatile", -1
		}
		most, first := math.Inf(-1), 0
		for j := range names {
			if fell := sign * t.rows[0][j+1] / t.between(0, j+1, at, 0); fell > most {
				most, first = fell, j
			}
		}
		d.bound["first"] = names[first]
		d.phrase("which", which)
		d.phrase("because", "because-"+which)
		d.Answer = Answer{Text: names[first], Words: true}
		d.rightCode = names[first]
		for j, n := range names {
			if j != first {
				d.Wrong = append(d.Wrong, Wrong{Code: n, Text: n,
					Mistake: say(d.language, other, "part", n)})
			}
		}
		for _, n := range []string{"alike", "untold"} {
			d.Wrong = append(d.Wrong, Wrong{Code: n, Text: d.must(n), Mistake: d.must("why-" + n)})
		}
	}
	return nil
}
