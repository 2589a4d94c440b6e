package main

import (
	"math"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
)

// coilTopic is about the sensible heat ratio and the bypass of a coil.
var coilTopic = topic{name: "coil", forms: []form{
	{"ratio", func(g *generator, d *draft) error { return coilForm(d, "ratio") }},
	{"latent", func(g *generator, d *draft) error { return coilForm(d, "latent") }},
	{"bypass", func(g *generator, d *draft) error { return coilForm(d, "bypass") }},
	{"leaving", func(g *generator, d *draft) error { return coilForm(d, "leaving") }},
}}

func coilForm(d *draft, ask string) error {
	g := d.g
	atm := d.place()
	dry := g.fine(g.among(73, 79, 1, 23, 26, 1))
	wet := g.fine(g.among(61, 67, 1, 16, 19, 1))
	surface := g.fine(g.among(44, 51, 1, 7, 10, 1))
	bypass := g.pick(0.08, 0.3, 0.01)
	flow := g.among(800, 1600, 25, 380, 760, 5)
	in, err := psychro.FromWetBulb(g.temperature(dry), g.temperature(wet), atm)
	if err != nil {
		return err
	}
	process, err := psychro.CoolAndDehumidify(in, g.temperature(surface), bypass)
	if err != nil {
		return err
	}
	out := rounded(g.degrees(process.End.DryBulb()), 1)
	c, err := airside.CapacityOf(in, process.End, g.flow(flow))
	if err != nil || c.SensibleHeatRatio > 0.95 || c.SensibleHeatRatio < 0.5 {
		return errAgain
	}
	u := g.u.heat.with(int(g.either(-2, 2)))
	total := rounded(g.heatNumber(c.Total.Value), u.places)
	switch ask {
	case "ratio", "latent":
		off := math.Pow10(-u.places) // of two figures of the label
		factor := d.sensibleFactor(atm)
		sensible := rounded(g.heatNumber(c.Sensible.Value), u.places)
		d.give("airflow", flow, g.u.flow)
		d.give("total", total, u)
		if g.atLeast(2) { // the sensible part from the air itself
			d.give("return-air", dry, g.u.temp)
			d.give("supply-air", out, g.u.temp)
			off = 0.035 * total // of the factor, beside the air itself
			sensible = factor * flow * (dry - out) * g.either(1, 1e-3)
			d.set("sensible", sensible, u)
			thousand := g.pairSymbol("", " / 1,000")
			d.bound["sensible-sum"] = d.bound["factor"] + " × " + d.bound["airflow"] + " × (" +
				d.bound["return-air"] + " − " + d.bound["supply-air"] + ")" + thousand + " = " +
				d.bound["sensible"]
		} else {
			d.give("sensible", sensible, u)
		}
		d.noise("outdoor-air")
		if ask == "ratio" {
			d.answer(sensible/total, off/total, g.u.ratio)
			d.most = 1
			d.again = c.SensibleHeatRatio
			d.wrong("other-part", 1-sensible/total)
			d.wrong("all-sensible", 1)
			d.wrong("counted-in-both", 2*sensible/(total+sensible))
			d.wrong("turned", total/sensible)
			d.wrong("sensible-over-latent", sensible/(total-sensible))
			d.wrong("latent-over-sensible", (total-sensible)/sensible)
			d.wrong("half-latent", (sensible+(total-sensible)/2)/total)
			d.wrong("of-sum", sensible/(total+sensible))
		} else {
			d.answer(total-sensible, off, u)
			d.again = g.heatNumber(c.Latent.Value)
			d.wrong("sensible-itself", sensible)
			d.wrong("total-itself", total)
			d.wrong("half-latent", (total-sensible)/2)
			d.wrong("half-total", total/2)
			d.wrong("twice-latent", 2*(total-sensible))
			d.wrong("in-proportion", total*(total-sensible)/sensible)
			d.wrong("of-sum", sensible*(total-sensible)/total)
		}
	case "bypass":
		d.give("entering", dry, g.u.temp)
		d.give("leaving", out, g.u.temp)
		d.give("surface", surface, g.u.temp)
		d.noise("outdoor-air", "airflow")
		factor := (out - surface) / (dry - surface)
		d.answer(100*factor, g.either(0.3, 0.6), unit{"%", 1, false})
		d.most = 100
		b, err := airside.BypassOf(in, process.End)
		if err != nil {
			return errAgain
		}
		d.again = 100 * b.Factor
		d.wrong("contact", 100*(1-factor))
		d.wrong("over-fall", 100*(out-surface)/(dry-out))
		d.wrong("of-leaving", 100*(out-surface)/out)
		d.wrong("of-entering", 100*(out-surface)/dry)
		d.wrong("degrees-ratio", 100*surface/dry)
		d.wrong("half", 50*factor)
		d.wrong("twice", 200*factor)
	case "leaving":
		d.give("entering", dry, g.u.temp)
		d.give("bypass", 100*bypass, g.u.percent)
		d.give("surface", surface, g.u.temp)
		d.noise("outdoor-air", "airflow")
		work := func(share float64) float64 { return surface + share*(dry-surface) }
		d.answer(work(bypass), g.either(0.2, 0.15), g.temperatureUnit())
		d.again = g.degrees(process.End.DryBulb())
		d.wrong("wrong-end", work(1-bypass))
		d.wrong("surface-itself", surface)
		d.wrong("below-surface", work(-bypass))
		d.wrong("mean", work(0.5))
		d.wrong("twice-bypass", work(2*bypass))
		d.wrong("half-bypass", work(bypass/2))
		d.wrong("of-entering-degrees", dry*(1-bypass))
		d.wrong("third-bypass", surface+bypass*surface)
	}
	return nil
}
