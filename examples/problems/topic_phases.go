package main

import (
	"math"

	"github.com/satline/satline/electrical"
	"github.com/satline/satline/quantity"
)

// phasesTopic is about three phases that are not equal.
var phasesTopic = topic{name: "phases", forms: []form{
	{"voltage", func(g *generator, d *draft) error { return phasesForm(d, "voltage") }},
	{"current", func(g *generator, d *draft) error { return phasesForm(d, "current") }},
	{"deviation", func(g *generator, d *draft) error { return phasesForm(d, "deviation") }},
	{"derated", func(g *generator, d *draft) error { return phasesForm(d, "derated") }},
}}

func phasesForm(d *draft, ask string) error {
	g := d.g
	base := g.oneOf(208, 230, 460)
	u := g.u.volt
	var v [3]float64
	for i := range v {
		v[i] = base + g.pick(-0.03, 0.03, 0.001)*base
		if g.atLeast(2) {
			v[i] = rounded(v[i], 1)
		} else {
			v[i] = math.Round(v[i])
		}
	}
	if ask == "current" {
		base, u = g.pick(12, 40, 1), g.u.ampere
		for i := range v {
			v[i] = rounded(base*(1+g.pick(-0.12, 0.12, 0.01)), 1)
		}
	}
	names := [3]string{"phase-ab", "phase-bc", "phase-ca"}
	if ask == "current" {
		names = [3]string{"phase-a", "phase-b", "phase-c"}
	}
	for i, n := range names {
		v[i] = d.give(n, v[i], u)
	}
	mean := (v[0] + v[1] + v[2]) / 3
	off, low, high := 0.0, min(v[0], v[1], v[2]), max(v[0], v[1], v[2])
	other := math.Inf(1)
	for _, x := range v {
		off, other = max(off, math.Abs(x-mean)), min(other, math.Abs(x-mean))
	}
	middle := v[0] + v[1] + v[2] - low - high
	d.set("mean", mean, u.with(3))
	d.set("off", off, u.with(3))
	exact, err := electrical.Unbalance([3]quantity.Voltage{
		quantity.Volts(v[0]), quantity.Volts(v[1]), quantity.Volts(v[2]),
	})
	if err != nil || exact < 0.008 || exact > 0.12 || ask == "derated" && exact > 0.05 {
		return errAgain
	}
	percent := 100 * off / mean
	noise := func() {
		if g.atLeast(2) {
			d.give("nameplate", rounded(base, 0), u)
		}
		if g.atLeast(3) {
			d.noise("outdoor-air")
		}
	}
	var work func(percent float64) float64
	switch ask {
	case "voltage", "current":
		noise()
		work = func(p float64) float64 { return p }
		d.answer(percent, 0.03, unit{"%", 2, false})
		d.again = 100 * float64(exact)
	case "deviation":
		noise()
		work = func(p float64) float64 { return p * mean / 100 }
		d.answer(off, 0.05, u.with(2))
		d.Answer.Text = d.Answer.print(off)
		d.again = float64(exact) * mean
	case "derated":
		return d.derated(percent, exact, noise)
	}
	d.wrong("spread", work(100*(high-low)/mean))
	d.wrong("spread-high", work(100*(high-low)/high))
	d.wrong("half-spread", work(50*(high-low)/mean))
	d.wrong("smallest-off", work(100*other/mean))
	d.wrong("from-middle", work(100*max(high-middle, middle-low)/mean))
	d.wrong("other-side", work(100*min(high-middle, middle-low)/mean))
	d.wrong("lesser-side", work(100*min(high-mean, mean-low)/mean))
	d.wrong("twice", work(2*percent))
	d.wrong("of-low", work(100*(mean-low)/low))
	if g.atLeast(2) && ask != "current" {
		plate := rounded(base, 0)
		d.wrong("from-plate", work(100*max(math.Abs(high-plate), math.Abs(plate-low))/plate))
	}
	return nil
}

// derated asks with how much power a motor may be loaded, by a table of the imbalance of
// its voltages.
func (d *draft) derated(percent float64, exact quantity.Ratio, noise func()) error {
	g := d.g
	power := d.give("shaft-power", g.among(3, 20, 0.5, 2.2, 15, 0.1),
		unit{g.pairSymbol("hp", "kW"), 1, true})
	t := grid{d: d, units: []unit{{"%", 2, true}, {"", 3, false}}}
	for p := 0.0; p <= 5; p++ {
		factor, err := electrical.Derating(quantity.Percent(p))
		if err != nil {
			return err
		}
		t.rows = append(t.rows, []float64{p, rounded(float64(factor), 3)})
	}
	head, _ := d.word("head-unbalance")
	share, _ := d.word("head-share")
	caption, _ := d.word("caption")
	t.print(caption, []string{head, share})
	noise()
	d.set("percent", percent, unit{"%", 2, false})
	t.how("factor", 0, 1, percent)
	factor := d.figure("factor", t.between(0, 1, percent, 0), 3)
	d.answer(power*factor, 0.01*power, unit{g.pairSymbol("hp", "kW"), 2, false})
	exactFactor, err := electrical.Derating(exact)
	if err != nil {
		return err
	}
	d.again = power * float64(exactFactor)
	d.wrong("row-below", power*t.between(0, 1, percent, 1))
	d.wrong("row-above", power*t.between(0, 1, percent, -1))
	d.wrong("percent-off", power*(1-percent/100))
	d.wrong("percent-on", power*(1+percent/100))
	d.wrong("over-factor", power/factor)
	d.wrong("power-itself", power)
	d.wrong("last-row", power*t.rows[5][1])
	d.wrong("twice-percent", power*(1-2*percent/100))
	return nil
}
