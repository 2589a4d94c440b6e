package main

import (
	"math"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// staticTopic is about the static pressures around a blower.
var staticTopic = topic{name: "static", forms: []form{
	{"external", func(g *generator, d *draft) error { return staticForm(d, "external") }},
	{"left", func(g *generator, d *draft) error { return staticForm(d, "left") }},
	{"share", func(g *generator, d *draft) error { return staticForm(d, "share") }},
	{"filter", staticFilter},
}}

func (g *generator) static(v float64) quantity.StaticPressure {
	if g.ip() {
		return quantity.InchesWater(v)
	}
	return quantity.PascalsStatic(v)
}

func staticForm(d *draft, ask string) error {
	g, u := d.g, d.g.u.static
	back := g.among(0.12, 0.35, 0.01, 30, 90, 1)
	out := g.among(0.1, 0.4, 0.01, 25, 100, 1)
	back = -d.give("static-return", -back, u)
	out = d.give("static-supply", out, u)
	coil, filter := 0.0, 0.0
	if g.atLeast(2) { // drops that are within what was measured
		coil = d.give("drop-coil", g.among(0.1, 0.3, 0.01, 25, 75, 1), u)
		filter = d.give("drop-filter", g.among(0.05, 0.2, 0.01, 12, 50, 1), u)
	}
	sum := back + out
	if g.atLeast(3) { // for a furnace the coil on top of it is outside the box
		d.phrase("box", "box-furnace")
	} else {
		d.phrase("box", "box-handler")
	}
	d.noise("airflow", "outdoor-air")
	d.set("external", sum, u)
	limit := rounded(sum*g.pick(1.12, 1.9, 0.01), u.places)
	v, err := airside.JudgeStatic(airside.StaticReadings{
		Entering: g.static(-back).PlusMinus(0), Leaving: g.static(out).PlusMinus(0),
		Maximum: g.static(max(limit, 0.01)),
	})
	if err != nil {
		return err
	}
	external := float64(v.External.Value) / float64(g.static(1))
	d.set("return-size", back, u)
	var work func(back, out float64) float64
	switch ask {
	case "external":
		work = func(back, out float64) float64 { return out + back }
		d.answer(sum, 0, u)
		d.Answer.Within *= 2
		d.again = external
	case "left":
		d.give("static-limit", limit, u)
		work = func(back, out float64) float64 { return limit - out - back }
		d.answer(limit-sum, 0, u)
		d.Answer.Within *= 2
		d.again = limit - external
		d.wrong("limit-itself", limit)
		d.wrong("external-itself", sum)
		d.wrong("limit-added", limit+sum)
	case "share":
		work = func(back, out float64) float64 { return 100 * back / (back + out) }
		d.answer(100*back/sum, 1, g.u.percent)
		d.most = 100
		d.again = 100 * v.ReturnShare
		d.wrong("other-share", 100*out/sum)
		d.wrong("return-over-supply", 100*back/out)
		d.wrong("supply-over-return", 100*out/back)
		d.wrong("half-share", 50*back/sum)
		d.wrong("over-difference", 100*back/abs(out-back))
	}
	d.wrong("difference", work(-back, out))
	d.wrong("return-alone", work(back, 0))
	d.wrong("supply-alone", work(0, out))
	d.wrong("return-twice", work(2*back, out))
	d.wrong("supply-twice", work(back, 2*out))
	d.wrong("mean", work(back/2, out/2))
	if coil > 0 {
		d.wrong("coil-added", work(back, out+coil))
		d.wrong("coil-taken", work(back, out-coil))
		d.wrong("filter-added", work(back+filter, out))
		d.wrong("filter-taken", work(back-filter, out))
	}
	return nil
}

// staticFilter carries the drop of a filter over to another airflow: as its
// square.
func staticFilter(g *generator, d *draft) error {
	u := g.u.static
	rated := d.give("flow-rated", g.among(900, 1400, 25, 420, 660, 5), g.u.flow)
	drop := d.give("drop-rated", g.among(0.1, 0.24, 0.01, 25, 60, 1), u)
	flow := d.give("airflow", rated*g.pick(0.6, 1.6, 0.01), g.u.flow)
	if abs(flow/rated-1) < 0.15 {
		return errAgain
	}
	d.noise("outdoor-air", "return-air")
	if g.atLeast(3) { // measured with the share of a loaded filter
		d.give("loaded", g.pick(20, 60, 5), g.u.percent)
	}
	loaded := 1 + figure(d.bound["loaded"])/100
	if !g.atLeast(3) {
		loaded = 1
		d.bound["times-loaded"] = ""
	} else {
		d.bound["times-loaded"] = " × (1 + " + d.bound["loaded"] + ")"
	}
	r := flow / rated
	d.answer(drop*r*r*loaded, 0.03*drop*r*r*loaded, u)
	d.wrong("in-proportion", drop*r*loaded)
	d.wrong("cube", drop*r*r*r*loaded)
	d.wrong("root", drop*math.Sqrt(r)*loaded)
	d.wrong("unchanged", drop*loaded)
	d.wrong("turned", drop/r/r*loaded)
	d.wrong("turned-once", drop/r*loaded)
	if g.atLeast(3) {
		d.wrong("load-forgotten", drop*r*r)
		d.wrong("load-taken", drop*r*r/loaded)
	}
	after, err := airside.FanLaws(airside.FanPoint{Flow: g.flow(rated), Static: g.static(drop)},
		1000, airside.RPM(1000*r), 1.2, 1.2)
	d.again = float64(after.Static) / float64(g.static(1)) * loaded
	return err
}
