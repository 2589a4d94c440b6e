package main

import (
	"math"

	"github.com/satline/satline/refrigerant"
)

// standingTopic is about the pressure of a machine that is off, and what it says
// of air in the circuit.
var standingTopic = topic{name: "standing", forms: []form{
	{"expected", func(g *generator, d *draft) error {
		f := g.fluid()
		d.giveText("refrigerant", f.Designation())
		at := d.give("soaked", g.saturatedAt(64, 92, 18, 33), g.u.temp)
		d.noise("label-charge", "voltage")
		return d.pressureFor(f, bubble, at, nil)
	}},
	{"partial", func(g *generator, d *draft) error { return standingForm(d, "partial") }},
	{"degrees", func(g *generator, d *draft) error { return standingForm(d, "degrees") }},
	{"judge", func(g *generator, d *draft) error { return standingForm(d, "judge") }},
}}

// standingForm shows a pressure at a soaked temperature, with air in the circuit
// or without.
func standingForm(d *draft, ask string) error {
	g, f := d.g, d.g.fluid()
	d.giveText("refrigerant", f.Designation())
	at := g.saturatedAt(64, 92, 18, 33)
	p, err := f.BubblePressure(g.temperature(at))
	if err != nil {
		return err
	}
	s := d.gaugeSite()
	listed := g.listed(s, p)
	truth := g.one("air", "sound", "lost", "other")
	if ask != "judge" {
		truth = "air"
	}
	over := g.pressureAmong(12, 30, 0.1, 80, 200, 1)
	switch truth {
	case "sound":
		over = g.pressureAmong(-0.5, 0.5, 0.5, -3, 3, 3)
	case "lost":
		over = -rounded(g.pick(0.3, 0.6, 0.01)*listed, g.u.gauge.places)
	case "other":
		over = rounded(g.pick(0.5, 0.9, 0.01)*listed, g.u.gauge.places)
	}
	shown := d.give("standing-pressure", g.shown(s, listed)+over, g.u.gauge)
	d.give("soaked", at, g.u.temp)
	warm, err := f.BubbleTemperature(g.actual(s, max(shown, g.shown(s, listed))))
	if err != nil {
		return errAgain
	}
	cover := []float64{at}
	if ask == "degrees" {
		cover = append(cover, g.degrees(warm))
	}
	t, err := d.satTable(f, s, cover...)
	if err != nil {
		return err
	}
	pure := rounded(t.lookUp(bubble, at, 0), s.unit.places)
	t.how("sat", 0, bubble, at)
	d.set("pure", pure, s.unit)
	total := shown + s.added
	d.set("total", total, s.unit)
	if s.added != 0 {
		d.bound["total-sum"] = d.bound["standing-pressure"] + " + " + d.bound["atmosphere"] + " = " +
			d.bound["total"]
	}
	fits, err := refrigerant.StandingPressure(g.actual(s, shown), g.temperature(at), 1, f)
	if err != nil {
		return err
	}
	switch ask {
	case "partial":
		d.noise("label-charge", "voltage")
		u := unit{g.u.drop.symbol, g.u.drop.places, false}
		d.answer(total-pure, 0.003*pure, u)
		d.again = g.pressureNumber(fits[0].Over)
		work := func(v float64) float64 { return total - v }
		d.wrong("row-below", work(t.lookUp(bubble, at, 1)))
		d.wrong("row-above", work(t.lookUp(bubble, at, -1)))
		d.wrong("two-rows-below", work(t.lookUp(bubble, at, 2)))
		d.wrong("two-rows-above", work(t.lookUp(bubble, at, -2)))
		d.wrong("dew-column", work(t.lookUp(dew, at, 0)))
		d.wrong("atmosphere-added", work(pure)+g.pressure(s.atm))
		d.wrong("half", work(pure)/2)
		d.wrong("twice", 2*work(pure))
	case "degrees":
		d.noise("label-charge", "voltage")
		hot := rounded(t.read(bubble, total, 0), 1)
		t.how("hot", bubble, 0, total)
		d.set("hot", hot, g.u.temp)
		d.answer(hot-at, reading, g.deltaUnit())
		d.again = g.delta(fits[0].Off)
		for key, slip := range map[string]int{"row-below": 1, "row-above": -1, "two-rows-below": 2,
			"two-rows-above": -2} {
			d.wrongLater(key, t.read(bubble, total, slip)-at)
		}
		d.wrongLater("dew-column", t.read(dew, total, 0)-at)
		d.wrongLater("half", (hot-at)/2)
		d.wrongLater("twice", 2*(hot-at))
		d.later()
	case "judge":
		d.give("soak-tolerance", g.either(2, 1), g.u.delta)
		d.noise("label-charge", "voltage")
		if truth == "other" { // the refrigerant that it is, with its own fit
			if shown > g.pressureAmong(420, 420, 1, 2900, 2900, 1) {
				return errAgain
			}
		}
		off := g.delta(fits[0].Off)
		within := math.Abs(off) <= g.either(2, 1)
		if within != (truth == "sound") || truth == "air" && off > g.either(16, 9) ||
			truth == "other" && off < g.either(24, 13) {
			return errAgain
		}
		d.phrase("because", "because-"+truth)
		d.choice(truth, "air", "sound", "lost", "other")
	}
	return nil
}
