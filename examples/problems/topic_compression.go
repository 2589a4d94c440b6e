package main

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// compressionTopic is about the ratio of absolute pressures.
var compressionTopic = topic{name: "compression", forms: []form{
	{"ratio", func(g *generator, d *draft) error { return compressionForm(d, "ratio") }},
	{"discharge", func(g *generator, d *draft) error { return compressionForm(d, "discharge") }},
	{"suction", func(g *generator, d *draft) error { return compressionForm(d, "suction") }},
	{"rise", func(g *generator, d *draft) error { return compressionForm(d, "rise") }},
}}

func compressionForm(d *draft, ask string) error {
	g := d.g
	place := d.place()
	atm := d.give("atmosphere", g.pressureNumber(place), g.u.absolute)
	sea := g.pressure(quantity.StandardAtmosphere)
	low := g.pressureAmong(55, 130, 0.5, 380, 900, 5)
	high := g.pressureAmong(210, 400, 0.5, 1450, 2800, 5)
	ratio := rounded((high+atm)/(low+atm), 2)
	if ratio < 1.7 || ratio > 5 {
		return errAgain
	}
	exact := func(low, high float64) (float64, error) {
		r, _, err := charge.CompressionRatio((g.pascals(low) + place).PlusMinus(0),
			(g.pascals(high) + place).PlusMinus(0))
		return r, err
	}
	var work func(low, high, atm float64) float64
	var err error
	switch ask {
	case "ratio":
		low, high = d.give("suction-pressure", low, g.u.gauge), d.give("discharge", high, g.u.gauge)
		work = func(low, high, atm float64) float64 { return (high + atm) / (low + atm) }
		d.answer(work(low, high, atm), 0.01, g.u.ratio)
		d.again, err = exact(low, high)
		d.wrong("one-atmosphere", (high+atm)/low)
		d.wrong("other-atmosphere", high/(low+atm))
		d.wrong("atmospheres-off", (high-atm)/(low-atm))
		d.wrong("difference-ratio", (high-low)/(low+atm))
		d.wrong("two-atmospheres", (high+2*atm)/(low+2*atm))
	case "discharge":
		low = d.give("suction-pressure", low, g.u.gauge)
		d.give("ratio-given", ratio, g.u.ratio)
		work = func(low, _, atm float64) float64 { return ratio*(low+atm) - atm }
		d.answer(work(low, 0, atm), 0.005*high, g.u.gauge)
		var r float64
		r, err = exact(low, d.Answer.Value)
		d.again = d.Answer.Value * ratio / r
		d.wrong("left-in", ratio*(low+atm))
		d.wrong("only-taken", ratio*low-atm)
		d.wrong("added", ratio*low+atm)
		d.wrong("ratio-more", (ratio+1)*(low+atm)-atm)
		d.wrong("ratio-less", (ratio-1)*(low+atm)-atm)
	case "suction":
		high = d.give("discharge", high, g.u.gauge)
		d.give("ratio-given", ratio, g.u.ratio)
		work = func(_, high, atm float64) float64 { return (high+atm)/ratio - atm }
		d.answer(work(0, high, atm), 0.005*high, g.u.gauge)
		var r float64
		r, err = exact(d.Answer.Value, high)
		d.again = d.Answer.Value * r / ratio
		d.wrong("left-in", (high+atm)/ratio)
		d.wrong("only-taken", high/ratio-atm)
		d.wrong("added", high/ratio+atm)
		d.wrong("ratio-more", (high+atm)/(ratio+1)-atm)
		d.wrong("ratio-less", (high+atm)/(ratio-1)-atm)
	case "rise":
		more := g.pressureAmong(30, 110, 1, 200, 760, 5)
		low = d.give("suction-pressure", low, g.u.gauge)
		high = d.give("discharge", high, g.u.gauge)
		fouled := d.give("discharge-fouled", high+more, g.u.gauge)
		d.set("ratio-before", (high+atm)/(low+atm), g.u.ratio.with(3))
		d.set("ratio-after", (fouled+atm)/(low+atm), g.u.ratio.with(3))
		work = func(low, high, atm float64) float64 { return (fouled - high) / (low + atm) }
		d.answer(work(low, high, atm), 0.015, g.u.ratio)
		var before, after float64
		if before, err = exact(low, high); err == nil {
			after, err = exact(low, fouled)
		}
		d.again = after - before
		d.wrong("by-high", (fouled-high)/(high+atm))
		d.wrong("atmosphere-off", (fouled-high)/(low-atm))
		d.wrong("twice-atmosphere", (fouled-high)/(low+2*atm))
		d.wrong("two-times", 2*(fouled-high)/(low+atm))
		d.wrong("mean-low", (fouled-high)/((low+high)/2+atm))
		d.wrong("added-rise", (fouled-high+atm)/(low+atm))
	}
	d.noise("outdoor-air", "suction-line")
	d.wrong("gauge-ratio", work(low, high, 0))
	if atm != sea {
		d.wrong("sea-atmosphere", work(low, high, sea))
	}
	return err
}
