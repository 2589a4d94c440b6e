package main

import (
	"math"

	"github.com/satline/satline/airside"
)

// splitTopic is about the temperature split of a coil and what it should be.
var splitTopic = topic{name: "split", forms: []form{
	{"target", func(g *generator, d *draft) error { return splitForm(d, "target") }},
	{"apart", func(g *generator, d *draft) error { return splitForm(d, "apart") }},
	{"supply", func(g *generator, d *draft) error { return splitForm(d, "supply") }},
	{"judge", func(g *generator, d *draft) error { return splitForm(d, "judge") }},
}}

func splitForm(d *draft, ask string) error {
	g := d.g
	dry := g.among(72, 80, 1, 22.5, 26.5, 0.5)
	wet := g.among(58, 68, 1, 15, 20, 0.5)
	if dry-wet < g.either(8, 4) || dry-wet > g.either(18, 10) {
		return errAgain
	}
	if g.atLeast(2) {
		wet += g.either(0.5, 0.25)
	}
	u := unit{g.u.temp.symbol, 2, true}
	d.give("return-air", dry, u)
	d.give("return-wet-bulb", wet, u)
	step := g.either(1, 0.5)
	t := grid{d: d, units: []unit{u}}
	head := []string{g.u.temp.symbol}
	var dries []float64
	for v := dry - step*g.pick(1, 2, 1); len(dries) < 4; v += step {
		dries = append(dries, v)
		head = append(head, u.number(v))
		t.units = append(t.units, unit{g.u.delta.symbol, 1, false})
	}
	first := step*math.Floor(wet/step) - step*g.pick(2, 3, 1)
	for v := first; v < first+step*7; v += step {
		row := []float64{v}
		for _, across := range dries {
			target, err := airside.TargetSplit(g.temperature(across), g.temperature(v))
			cell := rounded(g.delta(target), 1)
			if err != nil {
				cell = math.NaN()
			}
			row = append(row, cell)
		}
		t.rows = append(t.rows, row)
	}
	column := 0
	for i, v := range dries {
		if v == dry {
			column = i + 1
		}
	}
	target := t.between(0, column, wet, 0)
	exact, err := airside.TargetSplit(g.temperature(dry), g.temperature(wet))
	if err != nil || math.IsNaN(target) {
		return errAgain
	}
	target = rounded(target, 1)
	t.print(say(d.language, "caption-split", "unit", g.u.temp.symbol, "delta", g.u.delta.symbol),
		head)
	t.how("target", 0, column, wet)
	d.set("target", target, g.deltaUnit())
	right := g.delta(exact)
	off := g.fine(g.among(4, 8, 1, 2.2, 4.2, 0.5))
	if g.rng.IntN(2) == 0 {
		off = -off
	}
	supply := rounded(dry-target-off, 1)
	misread := func(work func(target float64) float64) {
		d.wrong("row-below", work(t.between(0, column, wet, 1)))
		d.wrong("row-above", work(t.between(0, column, wet, -1)))
		d.wrong("two-rows-below", work(t.between(0, column, wet, 2)))
		d.wrong("two-rows-above", work(t.between(0, column, wet, -2)))
		if column < 4 {
			d.wrong("column-right", work(t.between(0, column+1, wet, 0)))
		}
		if column > 1 {
			d.wrong("column-left", work(t.between(0, column-1, wet, 0)))
		}
	}
	noise := func() { d.noise("outdoor-air", "liquid-line") }
	within := g.either(0.2, 0.15)
	switch ask {
	case "target":
		noise()
		d.answer(target, within, g.deltaUnit())
		misread(func(v float64) float64 { return v })
		d.wrong("depression", dry-wet)
		d.again = right
	case "apart":
		d.give("supply-air", supply, g.u.temp)
		noise()
		measured := rounded(dry-supply, 2)
		d.set("measured", measured, g.u.delta.with(2))
		side, a, b := "above", "measured", "target"
		if measured < target {
			side, a, b = "below", "target", "measured"
		}
		d.phrase("side", side)
		d.bound["apart-sum"] = d.bound[a] + " − " + d.bound[b]
		d.answer(abs(measured-target), within, g.deltaUnit())
		misread(func(v float64) float64 { return abs(measured - v) })
		d.wrong("split-itself", measured)
		d.wrong("from-wet-bulb", abs(wet-supply-target))
		d.wrong("fixed-twenty", abs(measured-g.either(20, 11)))
		d.again = abs(measured - right)
	case "supply":
		noise()
		d.answer(dry-target, within, g.temperatureUnit())
		misread(func(v float64) float64 { return dry - v })
		d.wrong("from-wet-bulb", wet-target)
		d.wrong("fixed-twenty", dry-g.either(20, 11))
		d.wrong("half-split", dry-target/2)
		d.again = dry - right
	case "judge":
		return d.splitJudge(dry, wet, target, supply, noise)
	}
	return nil
}

// splitJudge asks what a split says, beside what was seen.
func (d *draft) splitJudge(dry, wet, target, supply float64, noise func()) error {
	g := d.g
	if g.rng.IntN(3) == 0 {
		supply = rounded(dry-target-g.among(-2, 2, 0.5, -1, 1, 0.5), 1)
	}
	d.give("supply-air", supply, g.u.temp)
	d.give("split-tolerance", rounded(g.delta(airside.SplitTolerance), 1), g.u.delta)
	noise()
	measured := rounded(dry-supply, 2)
	d.set("measured", measured, g.u.delta.with(2))
	v, err := airside.JudgeSplit(airside.SplitReadings{
		ReturnDryBulb: g.temperature(dry).PlusMinus(0),
		ReturnWetBulb: g.temperature(wet).PlusMinus(0),
		SupplyDryBulb: g.temperature(supply).PlusMinus(0)})
	if err != nil ||
		abs(abs(measured-target)-g.delta(airside.SplitTolerance)) < g.either(0.5, 0.3) {
		return errAgain
	}
	truth := "in-band"
	if v.High > 0.5 {
		truth = "high"
	} else if v.Low > 0.5 {
		truth = "low"
	}
	if truth != "in-band" && g.rng.IntN(2) == 0 { // with what was seen besides
		truth += "-else"
	}
	seen := map[string]string{
		"high": "seen-frost", "low": "seen-warm", "in-band": "seen-nothing",
		"high-else": "seen-probe", "low-else": "seen-leak",
	}[truth]
	d.giveText("seen", d.must(seen))
	d.phrase("because", "because-"+truth)
	d.choice(truth, "high", "low", "in-band", "high-else", "low-else")
	return nil
}
