package main

import (
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// mixingTopic is about return air and outdoor air that become one.
var mixingTopic = topic{name: "mixing", forms: []form{
	{"temperature", func(g *generator, d *draft) error { return mixingForm(d, "temperature") }},
	{"share", func(g *generator, d *draft) error { return mixingForm(d, "share") }},
	{"humidity", func(g *generator, d *draft) error { return mixingForm(d, "humidity") }},
	{"flow", func(g *generator, d *draft) error { return mixingForm(d, "flow") }},
}}

// mixingForm counts flows as standard air, so that they mix by weight.
func mixingForm(d *draft, ask string) error {
	g := d.g
	atm := d.place()
	back := d.give("return-air", g.fine(g.among(72, 78, 1, 22, 26, 1)), g.u.temp)
	out := g.fine(g.among(86, 102, 1, 30, 39, 1))
	if g.rng.IntN(2) == 0 {
		out = g.fine(g.among(18, 50, 1, -8, 10, 1))
	}
	d.give("outdoor-air", out, g.u.temp)
	humidBack, humidOut := g.among(56, 70, 1, 8, 10, 0.1), g.among(80, 120, 1, 11.5, 17, 0.1)
	if out < back {
		humidOut = g.among(8, 24, 1, 1.2, 3.2, 0.1)
	}
	if ask == "humidity" {
		d.give("humidity-return", humidBack, g.u.humidity)
		d.give("humidity-outdoor", humidOut, g.u.humidity)
	}
	total := g.among(800, 2000, 25, 380, 950, 5)
	fresh := rounded(total*g.pick(0.12, 0.45, 0.01), 0)
	share := fresh / total
	mixed := share*out + (1-share)*back
	air := func(t, w float64) (psychro.Air, error) {
		return psychro.FromHumidityRatio(g.temperature(t), w/g.whole(), atm)
	}
	returned, err := air(back, humidBack)
	if err != nil {
		return err
	}
	outside, err := air(out, humidOut)
	if err != nil {
		return errAgain
	}
	mixAt := func(share float64) (psychro.Mixture, error) {
		return psychro.Mix(psychro.Stream{Air: returned, DryAir: quantity.MassFlow(1 - share)},
			psychro.Stream{Air: outside, DryAir: quantity.MassFlow(share)})
	}
	mix, err := mixAt(share)
	if err != nil {
		return err
	}
	switch ask {
	case "temperature", "humidity":
		d.give("flow-total", total, g.u.flow)
		d.give("flow-outdoor", fresh, g.u.flow)
		d.noise("supply-air")
		d.set("flow-return", total-fresh, g.u.flow)
		a, b, u := out, back, g.temperatureUnit()
		d.again = g.degrees(mix.Air.DryBulb())
		if ask == "humidity" {
			a, b, u = humidOut, humidBack, unit{g.u.humidity.symbol, 1, false}
			d.again = g.whole() * mix.Air.HumidityRatio()
		}
		work := func(share float64) float64 { return share*a + (1-share)*b }
		right := work(share)
		d.answer(right, 0.006*abs(a-b)+0.1, u)
		d.wrong("swapped-shares", work(1-share))
		d.wrong("plain-mean", work(0.5))
		d.wrong("share-of-return", work(fresh/(total-fresh)))
		d.wrong("added-flows", work(fresh/(total+fresh)))
		d.wrong("outdoor-alone", a)
		d.wrong("return-alone", b)
		d.wrong("wrong-way", b-share*(a-b))
		d.wrong("twice-share", work(2*share))
	case "share", "flow":
		d.give("mixed-air", mixed, g.u.temp.with(1))
		mixed = rounded(mixed, 1)
		share = (mixed - back) / (out - back)
		if share < 0.08 {
			return errAgain
		}
		work := func(v float64) float64 { return 100 * v }
		d.most = 100
		u := g.u.percent.with(1)
		u.free = false
		factor := 100.0
		if ask == "flow" {
			d.give("flow-total", total, g.u.flow)
			work = func(v float64) float64 { return total * v }
			d.most = total
			u, factor = g.u.flow.with(int(g.either(-1, 0))), total
		}
		d.noise("supply-air")
		d.answer(work(share), factor*(0.01*share+0.06/abs(out-back)), u)
		d.wrong("other-share", work(1-share))
		d.wrong("over-mixed", work((mixed-back)/(out-mixed)))
		d.wrong("by-outdoor", work((mixed-back)/out))
		d.wrong("degrees-ratio", work(mixed/out))
		d.wrong("half", work(share/2))
		d.wrong("twice", work(2*share))
		d.wrong("return-twice", work((mixed-back)/(out+back)))
		d.wrong("two-mixes", work((out-mixed)/(out-back)/2))
		mix, err := mixAt(share)
		if err != nil {
			return err
		}
		d.again = factor * (share + (mixed-g.degrees(mix.Air.DryBulb()))/(out-back))
	}
	return nil
}

func abs(v float64) float64 { return max(v, -v) }
