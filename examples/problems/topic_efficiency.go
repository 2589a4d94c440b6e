package main

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// efficiencyTopic is about what a machine gives for the power it takes: Btu/h for
// each watt (EER) in inch-pound units, and kW for each kW (COP) in SI.
var efficiencyTopic = topic{name: "efficiency", forms: []form{
	{"ratio", func(g *generator, d *draft) error { return efficiencyForm(d, "ratio") }},
	{"power", func(g *generator, d *draft) error { return efficiencyForm(d, "power") }},
	{"capacity", func(g *generator, d *draft) error { return efficiencyForm(d, "capacity") }},
	{"season", func(g *generator, d *draft) error { return efficiencyForm(d, "season") }},
}}

func efficiencyForm(d *draft, ask string) error {
	g := d.g
	capacity := g.among(18000, 60000, 100, 5, 18, 0.1)
	watts := rounded(capacity/g.pick(7, 14, 0.1), -1)
	u := unit{"W", 0, true}
	if !g.ip() {
		watts = rounded(capacity/g.pick(2, 4.2, 0.05), 2)
		u = unit{"kW", 2, true}
	}
	d.bound["name"] = g.pairSymbol("EER", "COP")
	d.phrase("a-name", "a-"+d.bound["name"])
	ratioUnit := unit{g.pairSymbol(g.options.symbol("eer"), ""), int(g.either(1, 2)), false}
	ratio := rounded(capacity/watts, ratioUnit.places)
	of := func(capacity, power float64) (float64, error) {
		q := g.either(1, 1000) * power
		e, err := airside.EfficiencyOf(g.heat(capacity).PlusMinus(0),
			quantity.Watts(q).PlusMinus(0))
		return g.either(e.EER, e.COP), err
	}
	var err error
	var found float64
	other := g.either(3.412, 1/3.412) // the other system's ratio
	blower := 0.0
	if ask == "ratio" || ask == "capacity" || ask == "season" {
		if g.atLeast(2) { // the blower's power counts too
			blower = d.give("blower", g.among(250, 600, 10, 0.25, 0.6, 0.01), u)
			watts = d.give("outdoor-unit", watts-blower, u) + blower
			d.bound["power"] = "(" + d.bound["outdoor-unit"] + " + " + d.bound["blower"] + ")"
		} else {
			d.give("power", watts, u)
		}
	}
	switch ask {
	case "ratio":
		d.give("capacity", capacity, g.u.heat)
		d.answer(capacity/watts, 0.01*capacity/watts, ratioUnit)
		d.again, err = of(capacity, watts)
		d.wrong("with-compressor", (capacity+watts*g.either(3.412, 1))/watts)
		d.wrong("less-compressor", (capacity-watts*g.either(3.412, 1))/watts)
		d.wrong("half", capacity/watts/2)
		d.wrong("twice", 2*capacity/watts)
	case "power":
		d.give("capacity", capacity, g.u.heat)
		d.give("ratio-given", ratio, ratioUnit)
		d.answer(capacity/ratio, 0.01*capacity/ratio, u)
		found, err = of(capacity, d.Answer.Value)
		d.again = d.Answer.Value * found / ratio
		d.wrong("less-compressor", capacity/ratio*(1-1/ratio*g.either(3.412, 1)))
		d.wrong("half", capacity/ratio/2)
		d.wrong("twice", 2*capacity/ratio)
		d.wrong("rejected", capacity/ratio*(1+1/ratio*g.either(3.412, 1)))
	case "capacity":
		d.give("ratio-given", ratio, ratioUnit)
		d.answer(ratio*watts, 0.01*ratio*watts, g.u.heat.with(int(g.either(-2, 1))))
		found, err = of(d.Answer.Value, watts)
		d.again = d.Answer.Value * ratio / found
		d.wrong("less-compressor", ratio*watts-watts*g.either(3.412, 1))
		d.wrong("half", ratio*watts/2)
		d.wrong("twice", 2*ratio*watts)
		d.wrong("rejected", ratio*watts+watts*g.either(3.412, 1))
	case "season":
		better := d.give("ratio-new", ratio*g.pick(1.15, 1.7, 0.01), ratioUnit)
		d.give("ratio-given", ratio, ratioUnit)
		hours := d.give("hours", g.pick(600, 1800, 10), unit{"h", 0, true})
		kwh := unit{"kWh", 0, true}
		kilowatts := watts * g.either(1e-3, 1)
		d.set("energy", kilowatts*hours, kwh)
		d.bound["thousand"] = g.pairSymbol(" / 1,000", "")
		saved := kilowatts * hours * (1 - ratio/better)
		d.answer(saved, 0.01*kilowatts*hours, kwh)
		cooling := ratio * watts
		before, first := of(cooling, watts)
		after, second := of(cooling, watts*ratio/better)
		if err = first; err == nil {
			err = second
		}
		d.again = kilowatts * hours * (1 - before/after)
		d.wrong("used-new", kilowatts*hours*ratio/better)
		d.wrong("over-old", kilowatts*hours*(better/ratio-1))
		d.wrong("half", saved/2)
		d.wrong("twice", 2*saved)
		d.wrong("two-thirds", kilowatts*hours*(better-ratio)/(better+ratio))
	}
	d.noise("outdoor-air", "airflow")
	if blower > 0 {
		share := blower / watts
		work := map[string]func(share float64) float64{
			"ratio":    func(s float64) float64 { return d.Answer.Value / (1 - s) },
			"capacity": func(s float64) float64 { return d.Answer.Value * (1 - s) },
			"season":   func(s float64) float64 { return d.Answer.Value * (1 - s) },
		}[ask]
		d.wrong("blower-forgotten", work(share))
		d.wrong("blower-taken", work(2*share))
		d.wrong("blower-twice", work(-share))
	}
	d.wrong("other-ratio", d.Answer.Value*other)
	d.wrong("other-ratio-back", d.Answer.Value/other)
	return err
}
