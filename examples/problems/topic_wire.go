package main

import (
	"math"
)

// wireTopic is about the voltage that is lost on the way to a motor.
var wireTopic = topic{name: "wire", forms: []form{
	{"drop", func(g *generator, d *draft) error { return wireForm(d, "drop") }},
	{"percent", func(g *generator, d *draft) error { return wireForm(d, "percent") }},
	{"longest", func(g *generator, d *draft) error { return wireForm(d, "longest") }},
	{"at-motor", func(g *generator, d *draft) error { return wireForm(d, "at-motor") }},
}}

// A wire is one of copper, with its resistance for 1,000 ft at 75 °C (National
// Electrical Code, chapter 9, table 8) or for 1,000 m at 20 °C (IEC 60228, class 2), both
// as public programs reprint them; and the current that it may carry (National Electrical Code,
// table 310.16 at 75 °C; IEC 60364-5-52, method C; both from memory).
type wire struct {
	name string
	ohms float64
	amps float64
}

func (g *generator) wires() []wire {
	if g.ip() {
		return []wire{{"14 AWG", 3.07, 20}, {"12 AWG", 1.93, 25}, {"10 AWG", 1.21, 35},
			{"8 AWG", 0.764, 50}, {"6 AWG", 0.491, 65}}
	}
	return []wire{{"2.5 mm²", 7.41, 27}, {"4 mm²", 4.61, 36}, {"6 mm²", 3.08, 46},
		{"10 mm²", 1.83, 63}, {"16 mm²", 1.15, 85}}
}

func wireForm(d *draft, ask string) error {
	g := d.g
	wires := g.wires()
	i := 1 + g.rng.IntN(3)
	w := wires[i]
	size, _ := d.word("head-size")
	ohms, _ := d.word("head-ohms")
	t := Table{Head: []string{size, ohms + " " + g.pairSymbol("1,000 ft", "1,000 m")}}
	t.Caption, _ = d.word("caption")
	for _, w := range wires {
		t.Rows = append(t.Rows, []string{w.name, fixed(w.ohms, 3)})
	}
	d.giveText("size", w.name)
	length := g.among(60, 240, 5, 18, 75, 1)
	amps := d.give("current", g.pick(9, 32, 0.1), g.u.ampere)
	supply := d.give("supply", g.pick(228, 244, 1), g.u.volt)
	u := unit{g.u.volt.symbol, 2, false}
	drop := func(w wire, length, amps, ways float64) float64 {
		return ways * length * w.ohms / 1000 * amps
	}
	d.figure("ohms", w.ohms, 3)
	if g.atLeast(2) {
		d.give("locked", amps*g.pick(4.5, 6, 0.1), g.u.ampere)
	}
	if g.atLeast(3) {
		d.noise("outdoor-air")
	}
	mistaken := func(work func(w wire, ways float64) float64) {
		d.wrong("one-way", work(w, 1))
		d.wrong("root-three", work(w, 1.732))
		d.wrong("size-smaller", work(wires[i-1], 2))
		d.wrong("size-larger", work(wires[i+1], 2))
		d.wrong("four-ways", work(w, 4))
		d.wrong("three-ways", work(w, 3))
		if i > 1 {
			d.wrong("two-sizes-smaller", work(wires[i-2], 2))
		}
		if i < 3 {
			d.wrong("two-sizes-larger", work(wires[i+2], 2))
		}
	}
	if ask != "longest" {
		length = d.give("way", length, g.u.length)
	}
	lost := drop(w, length, amps, 2)
	if lost > 0.08*supply || lost < 1 || amps > w.amps {
		return errAgain
	}
	d.set("lost", lost, u)
	switch ask {
	case "drop":
		d.answer(lost, 0.01*lost, u)
		mistaken(func(w wire, ways float64) float64 { return drop(w, length, amps, ways) })
		d.again = 2 * amps * (length / 1000) * w.ohms
	case "percent":
		d.answer(100*lost/supply, 0.02*100*lost/supply, unit{"%", 2, false})
		mistaken(func(w wire, ways float64) float64 {
			return 100 * drop(w, length, amps, ways) / supply
		})
		d.again = 100 * amps * amps * 2 * (length / 1000) * w.ohms / (amps * supply)
	case "longest":
		limit := d.give("limit", g.oneOf(2, 3, 5), g.u.percent)
		d.set("may-lose", supply*limit/100, u)
		longest := func(w wire, ways float64) float64 {
			return supply * limit / 100 * 1000 / (ways * w.ohms * amps)
		}
		right := longest(w, 2)
		d.answer(right, 0.01*right, g.u.length.with(int(g.either(0, 1))))
		mistaken(longest)
		d.wrong("percent-over", supply*limit/(100+limit)*1000/(2*w.ohms*amps))
		d.again = right * limit / (100 * drop(w, right, amps, 2) / supply)
	case "at-motor":
		d.answer(supply-lost, 0.01*lost+0.05, u)
		mistaken(func(w wire, ways float64) float64 { return supply - drop(w, length, amps, ways) })
		d.wrong("added", supply+lost)
		d.wrong("added-one-way", supply+lost/2)
		d.wrong("no-drop", supply)
		d.wrong("added-twice", supply+2*lost)
		d.again = supply * (1 - math.Abs(2*length*w.ohms/1000/(supply/amps)))
	}
	d.table(t)
	return nil
}
